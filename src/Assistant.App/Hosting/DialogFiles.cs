using System.Collections.Immutable;
using Assistant.App.Commands;
using Assistant.Dialogue.Files;

namespace Assistant.App.Hosting;

/// <summary>Reads the walks, phrases and lexicon that stand as files beside the program.</summary>
public static class DialogFiles
{
    /// <summary>The folder beside the program, or the one COLDWALK_DIALOGS names.</summary>
    public static string Folder =>
        Environment.GetEnvironmentVariable("COLDWALK_DIALOGS") is { Length: > 0 } named ? named : Path.Combine(AppContext.BaseDirectory, "dialogs");

    /// <summary>The YAML files of one part (phrases, walks, lexicon) in the order of their names.</summary>
    /// <exception cref="CommandFailure">The folder or a file can not be read; the message names it.</exception>
    public static ImmutableArray<DialogFile> Read(string part)
    {
        var folder = Path.Combine(Folder, part);
        try
        {
            return [.. Directory.EnumerateFiles(folder, "*.yaml").Order(StringComparer.Ordinal).Select(ReadOne)];
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            throw new CommandFailure($"dialogs/{part}: the folder can not be read ({failure.Message.TrimEnd('.')}).", CommandFailure.BadInput);
        }

        DialogFile ReadOne(string file)
        {
            var name = $"dialogs/{part}/{Path.GetFileName(file)}";
            try
            {
                return new(name, File.ReadAllText(file));
            }
            catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
            {
                throw new CommandFailure($"{name}:1: file: it can not be read ({failure.Message.TrimEnd('.')}).", CommandFailure.BadInput);
            }
        }
    }
}
