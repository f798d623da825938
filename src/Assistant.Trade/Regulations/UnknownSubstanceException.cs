namespace Assistant.Trade.Regulations;

/// <summary>A component whose global warming potential and legal kind are not known, so that no rule can be said to apply or not.</summary>
public sealed class UnknownSubstanceException : Exception
{
    public UnknownSubstanceException()
        : this("?")
    {
    }

    public UnknownSubstanceException(string substance)
        : base($"{substance} is not in the table of global warming potentials")
    {
        Substance = substance;
    }

    public UnknownSubstanceException(string message, Exception innerException)
        : base(message, innerException)
    {
        Substance = "?";
    }

    public string Substance { get; }
}
