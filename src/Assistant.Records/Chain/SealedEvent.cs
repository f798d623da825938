using Assistant.Records.Log;

namespace Assistant.Records.Chain;

/// <summary>An event as text, with the salt and the digest of what is personal in it: all of its place in the chain that does not hang on what stands before it.</summary>
internal sealed record SealedEvent(StoredEvent Stored, byte[] Salt, byte[] PersonalDigest)
{
    public static SealedEvent Of(StoredEvent stored)
    {
        var salt = EventChain.NewSalt();
        return new(stored, salt, EventChain.PersonalDigest(salt, stored.Personal));
    }
}
