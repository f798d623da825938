using Assistant.Trade.Ledgers;

namespace Assistant.Trade.Regulations;

/// <summary>From the cylinders of one service to what the leak rules count.</summary>
public static class ServiceBalance
{
    /// <summary>
    /// What one service put into an asset or took out of it on balance: refrigerant recovered for a repair and put back is not
    /// leaked, so only the difference counts. Null where it is nothing.
    /// </summary>
    /// <param name="entries">The entries of one service, over one day or more; those of other assets are left out.</param>
    /// <param name="reason">Why, where on balance refrigerant went in; <see cref="AdditionReason.Seasonal"/> also marks what on balance came out as removed for the season.</param>
    /// <returns>Dated on the local day of the last entry.</returns>
    public static ServiceEvent? Of(string assetId, IEnumerable<CylinderEntry> entries, AdditionReason reason)
    {
        var own = entries
            .Where(e => e.AssetId == assetId && e.Purpose is EntryPurpose.Charge or EntryPurpose.Recover)
            .ToList();
        var net = own.Aggregate(Grams.Zero, (sum, e) => sum - e.Gain);
        if (net == Grams.Zero)
        {
            return null;
        }

        var day = DateOnly.FromDateTime(own.MaxBy(e => e.At)!.At.DateTime);
        return net > Grams.Zero
            ? new RefrigerantAdded(day, net.ToMass(), reason)
            : new RefrigerantRemoved(day, (Grams.Zero - net).ToMass(), reason == AdditionReason.Seasonal);
    }
}
