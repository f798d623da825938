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
    private const string Name = "signing.key";
    private const int Length = 32;
    private const UnixFileMode OwnerOnly = UnixFileMode.UserRead | UnixFileMode.UserWrite;

    private readonly byte[] key;

    private SigningKey(byte[] key) => this.key = key;

    /// <summary>The key in that folder, made on first use. Where it is missing and another has signed already, none is made.</summary>
    /// <param name="records">Records that several programs may share: people are only ever set up with a key.</param>
    /// <exception cref="RecordsException">As <see cref="Open"/>, or the key is missing though people are set up in these records.</exception>
    public static async Task<SigningKey> OpenAsync(string folder, IRecordsDatabase records, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(records);
        return File.Exists(Path.Combine(folder, Name)) || !await records.Lookups.HasFirmsAsync(cancellation)
            ? Open(folder)
            : throw Missing(folder, "the people of these records were set up with it");
    }

    /// <summary>The key in that folder, made on first use. Where it is missing and heads signed with it are there, none is made.</summary>
    /// <exception cref="RecordsException">The file is missing though it signed already, can not be read or made, is no key, or others may read it.</exception>
    public static SigningKey Open(string folder)
    {
        var path = Path.Combine(folder, Name);
        try
        {
            if (!File.Exists(path))
            {
                if (new FileInfo(Path.Combine(folder, HeadBook.Name)) is { Exists: true, Length: > 0 })
                {
                    throw Missing(folder, $"the heads in {HeadBook.Name} were signed with it");
                }

                Make(path);
            }

            if (!OperatingSystem.IsWindows() && (File.GetUnixFileMode(path) & ~OwnerOnly) != 0)
            {
                throw new RecordsException(RecordsFault.Unreadable, $"Others than its owner may read {path}. Set its mode to 600.");
            }

            var key = File.ReadAllBytes(path);
            return key.Length == Length ? new(key) : throw new RecordsException(RecordsFault.Unreadable, $"{path} is not a key of {Length} bytes. Restore it from the backup.");
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

    // A new key would sign on as if nothing were amiss: earlier heads, links and codes would be void, and a number that sent STOP be written to.
    private static RecordsException Missing(string folder, string why) => new(
        RecordsFault.Unreadable,
        $"{Path.Combine(folder, Name)} is missing, and {why}: restore it from the backup, or from the program that shares these records (mode 600). No other was made; deploy/README.md says what to do where it is lost for good.");

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
