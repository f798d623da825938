using Assistant.App.Commands;

namespace Assistant.App.Hosting;

/// <summary>The folder that holds the records.</summary>
public sealed class DataFolder
{
    private DataFolder(string path) => Path = path;

    public string Path { get; }

    public string Database => System.IO.Path.Combine(Path, "coldwalk.db");

    /// <summary>Pictures on their way, in pieces.</summary>
    public string Uploads => System.IO.Path.Combine(Path, "uploads");

    /// <summary>Where records are kept when nothing is said: COLDWALK_DATA, or the user's own data folder.</summary>
    public static string Default =>
        Environment.GetEnvironmentVariable("COLDWALK_DATA") is { Length: > 0 } named ? named
        : Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData) is { Length: > 0 } local ? System.IO.Path.Combine(local, "coldwalk")
        : "coldwalk-data";

    /// <summary>The folder, made where it does not exist yet.</summary>
    /// <exception cref="CommandFailure">It can not be made.</exception>
    public static DataFolder Open(string? path)
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

        return new(folder);
    }

    /// <summary>The folder, which must hold records already.</summary>
    /// <exception cref="CommandFailure">There are none.</exception>
    public static DataFolder Existing(string? path)
    {
        var folder = Open(path);
        return File.Exists(folder.Database)
            ? folder
            : throw new CommandFailure($"There are no records in {folder.Path}. Name the folder that holds them with --data.");
    }
}
