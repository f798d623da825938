using System.Security.Cryptography;
using System.Text;
using Assistant.Records.Storage;

namespace Assistant.Records.Signing;

/// <summary>
/// The installation's own key (HMAC-SHA-256, FIPS 198-1), kept beside its records in a file that its owner alone may read. What
/// it signs, only this installation can check; another one checks the hashes.
/// </summary>
public sealed class SigningKey
{
    private const int Length = 32;
    private const UnixFileMode OwnerOnly = UnixFileMode.UserRead | UnixFileMode.UserWrite;

    private readonly byte[] key;

    private SigningKey(byte[] key) => this.key = key;

    /// <summary>The key in that folder, made on first use.</summary>
    /// <exception cref="RecordsException">The file can not be read or made, is no key, or others may read it.</exception>
    public static SigningKey Open(string folder)
    {
        var path = Path.Combine(folder, "signing.key");
        try
        {
            if (!File.Exists(path))
            {
                Make(path);
            }

            if (!OperatingSystem.IsWindows() && (File.GetUnixFileMode(path) & ~OwnerOnly) != 0)
            {
                throw new RecordsException(RecordsFault.Unreadable, $"Others than its owner may read {path}. Set its mode to 600, or delete it: a new key is made and what the old one signed is void.");
            }

            var key = File.ReadAllBytes(path);
            return key.Length == Length ? new(key) : throw new RecordsException(RecordsFault.Unreadable, $"{path} is not a key of {Length} bytes. Restore it from a copy, or delete it: a new one is made.");
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            throw new RecordsException(RecordsFault.Unreadable, $"The key {path} can not be read or made ({failure.Message.TrimEnd('.')}).", failure);
        }
    }

    /// <summary>The signature of a text for one purpose; a signature made for another purpose does not fit.</summary>
    public byte[] Sign(string purpose, string text)
    {
        ArgumentNullException.ThrowIfNull(purpose);
        return HMACSHA256.HashData(key, Encoding.UTF8.GetBytes($"{purpose.Length}:{purpose}{text}"));
    }

    /// <summary>True where the signature fits; takes the same time whether or not it does.</summary>
    public bool Fits(string purpose, string text, ReadOnlySpan<byte> signature) => CryptographicOperations.FixedTimeEquals(Sign(purpose, text), signature);

    // Never there with a wider mode, not even for a moment, and whole or not at all.
    private static void Make(string path)
    {
        var options = new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write };
        if (!OperatingSystem.IsWindows())
        {
            options.UnixCreateMode = OwnerOnly;
        }

        var made = $"{path}.{Guid.NewGuid():N}";
        using (var file = new FileStream(made, options))
        {
            file.Write(RandomNumberGenerator.GetBytes(Length));
            file.Flush(flushToDisk: true);
        }

        try
        {
            File.Move(made, path, overwrite: false);
        }
        catch (IOException) when (File.Exists(path))
        {
            File.Delete(made);
        }
    }
}
