using System.Collections.Immutable;
using System.Text.Json;
using Assistant.Records.Storage;

namespace Assistant.Records.Signing;

/// <summary>
/// Signed heads in a file beside the records, one JSON object a line, only ever added to. It shows what was cut off the log since; a
/// copy kept elsewhere shows it also to one who fears for this machine.
/// </summary>
public sealed class HeadBook(HeadWitness witness, string folder)
{
    public const string Name = "signed-heads.jsonl";

    private static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web);

    public string Path { get; } = System.IO.Path.Combine(folder, Name);

    /// <summary>The heads of a file, in the order they were signed; none where there is no file.</summary>
    /// <exception cref="RecordsException">The file can not be read, or a line of it is no head.</exception>
    public static ImmutableArray<SignedHead> Read(string file)
    {
        try
        {
            return File.Exists(file) ? [.. File.ReadLines(file).Select((line, i) => Parse(file, i + 1, line))] : [];
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            throw new RecordsException(RecordsFault.Unreadable, $"The signed heads in {file} can not be read ({failure.Message.TrimEnd('.')}).", failure);
        }
    }

    /// <summary>Signs the head of a visit, or of all, as it is now, and adds it where it is not there yet.</summary>
    /// <exception cref="RecordsException">The file can not be read or written.</exception>
    public async Task NoteAsync(string? visitId, CancellationToken cancellation = default)
    {
        var known = Read(Path).ToHashSet();
        var heads = visitId is null ? await witness.SignAllAsync(cancellation) : await witness.SignAsync(visitId, cancellation) is { } head ? [head] : [];
        var lines = heads.Where(known.Add).Select(h => JsonSerializer.Serialize(h, Json)).ToList();
        if (lines.Count == 0)
        {
            return;
        }

        try
        {
            await File.AppendAllLinesAsync(Path, lines, cancellation);
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            throw new RecordsException(RecordsFault.Unreadable, $"The signed heads in {Path} can not be written ({failure.Message.TrimEnd('.')}).", failure);
        }
    }

    private static SignedHead Parse(string file, int number, string line)
    {
        try
        {
            if (JsonSerializer.Deserialize<SignedHead>(line, Json) is { VisitId: not null, Hash: not null, Signature: not null } head)
            {
                return head;
            }
        }
        catch (JsonException)
        {
            // Told below, with the line's number.
        }

        throw new RecordsException(RecordsFault.Unreadable, $"{file}:{number}: this line is no signed head. Restore the file from a copy.");
    }
}
