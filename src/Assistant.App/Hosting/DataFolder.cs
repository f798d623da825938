using Assistant.App.Commands;
using Assistant.Records.Storage;

namespace Assistant.App.Hosting;

/// <summary>The folder that holds the records, and beside them the signing key; with a database elsewhere, the key alone.</summary>
public sealed class DataFolder
{
    private readonly RecordsStore store;

    private DataFolder(string path, RecordsStore store) => (Path, this.store) = (path, store);

    public string Path { get; }

    /// <summary>The database of these records; not opened yet.</summary>
    /// <exception cref="RecordsException">The store is told in a way that can not be read.</exception>
    public IRecordsDatabase Database => store.Of(File);

    private string File => System.IO.Path.Combine(Path, "coldwalk.db");

    /// <summary>Pictures on their way, in pieces.</summary>
    public string Uploads => System.IO.Path.Combine(Path, "uploads");

    /// <summary>Up to where the rooms of the firm's chat were listened to.</summary>
    public string Rooms => System.IO.Path.Combine(Path, "rooms.json");

    /// <summary>Where records are kept when nothing is said: COLDWALK_DATA, or the user's own data folder.</summary>
    public static string Default =>
        Environment.GetEnvironmentVariable("COLDWALK_DATA") is { Length: > 0 } named ? named
        : Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData) is { Length: > 0 } local ? System.IO.Path.Combine(local, "coldwalk")
        : "coldwalk-data";

    /// <summary>The folder, made where it does not exist yet.</summary>
    /// <param name="store">Where the records are; without it, in a file in the folder.</param>
    /// <exception cref="CommandFailure">It can not be made.</exception>
    public static DataFolder Open(string? path, RecordsStore? store = null)
    {
        var folder = System.IO.Path.GetFullPath(string.IsNullOrWhiteSpace(path) ? Default : path);
        try
        {
            Directory.CreateDirectory(folder);
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            throw new CommandFailure($"The data folder {folder} can not be made or opened ({failure.Message.TrimEnd('.')}). Name another with --data.");
        }

        return new(folder, store ?? RecordsStore.Embedded);
    }

    /// <summary>The folder, which must hold records already.</summary>
    /// <exception cref="CommandFailure">There are none.</exception>
    public static DataFolder Existing(string? path, RecordsStore? store = null)
    {
        var folder = Open(path, store);
        return !folder.store.IsEmbedded || System.IO.File.Exists(folder.File)
            ? folder
            : throw new CommandFailure($"There are no records in {folder.Path}. Name the folder that holds them with --data.");
    }
}
