using Assistant.Records.Signing;

namespace Assistant.Records.People;

/// <summary>Codes and strangers' addresses under the installation's key: the database alone gives neither away.</summary>
internal sealed class AddressDigests(SigningKey key)
{
    public string OfCode(string code) => Convert.ToHexStringLower(key.Sign("enrolment-code", code));

    public string OfAddress(string channel, string address) => Convert.ToHexStringLower(key.Sign("address", $"{channel.Length}:{channel}{address.Trim()}"));
}
