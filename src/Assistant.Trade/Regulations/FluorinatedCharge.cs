namespace Assistant.Trade.Regulations;

/// <summary>A charge as Regulation (EU) 2024/573 measures it: by tonnes of CO2 equivalent with any annex I gas in it, else by mass.</summary>
/// <param name="Gwp">Of the mixture, by the European annexes.</param>
/// <param name="Tonnes">Tonnes of CO2 equivalent: mass times <paramref name="Gwp"/>.</param>
/// <param name="GoesByMass">True for annex II section 1 gases without an annex I gas.</param>
public sealed record FluorinatedCharge(double Gwp, double Tonnes, double Kilograms, bool GoesByMass)
{
    /// <summary>The charge of an appliance, or null where none of its components is a fluorinated gas of the regulation.</summary>
    public static FluorinatedCharge? Of(Appliance appliance)
    {
        ArgumentNullException.ThrowIfNull(appliance);
        var table = GwpTable.Shipped;
        var hasHfc = table.Contains(appliance.Composition, SubstanceKind.Hfc);
        if (!hasHfc && !table.Contains(appliance.Composition, SubstanceKind.Hfo))
        {
            return null;
        }

        var gwp = table.Of(appliance.Composition, Jurisdiction.EuropeanUnion);
        return new FluorinatedCharge(gwp, appliance.FullCharge.Tonnes * gwp, appliance.FullCharge.Kilograms, !hasHfc);
    }

    /// <summary>True at the limit and above, by the measure that holds for this charge.</summary>
    public bool Reaches(double tonnes, double kilogramsHfo) =>
        GoesByMass ? Limits.AtLeast(Kilograms, kilogramsHfo) : Limits.AtLeast(Tonnes, tonnes);
}
