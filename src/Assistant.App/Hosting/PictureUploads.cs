namespace Assistant.App.Hosting;

/// <summary>Pictures that arrive in pieces: what is there already is kept beside the records and gone on from after a broken line or a restart.</summary>
public sealed class PictureUploads : IDisposable
{
    /// <summary>What nobody went on with for so long is thrown away.</summary>
    private static readonly TimeSpan Kept = TimeSpan.FromDays(3);

    private readonly string folder;
    private readonly SemaphoreSlim writing = new(1, 1);

    public PictureUploads(string folder, DateTimeOffset now)
    {
        this.folder = folder;
        Directory.CreateDirectory(folder);
        foreach (var old in new DirectoryInfo(folder).EnumerateFiles().Where(f => f.LastWriteTimeUtc < now.UtcDateTime - Kept))
        {
            old.Delete();
        }
    }

    /// <summary>How many bytes of a picture are there.</summary>
    /// <param name="key">A name that is a file's name.</param>
    public long Received(string key) => new FileInfo(Part(key)) is { Exists: true } part ? part.Length : 0;

    /// <summary>The id under which a whole picture was kept, or null while it is on its way.</summary>
    public string? Finished(string key) => File.Exists(Done(key)) ? File.ReadAllText(Done(key)) : null;

    /// <summary>Adds a piece where it continues what is there; any other piece changes nothing.</summary>
    /// <returns>How many bytes are there now.</returns>
    public async Task<long> AddAsync(string key, long offset, ReadOnlyMemory<byte> piece, CancellationToken cancellation)
    {
        await writing.WaitAsync(cancellation);
        try
        {
            await using var part = new FileStream(Part(key), FileMode.OpenOrCreate, FileAccess.Write);
            if (part.Length == offset)
            {
                part.Seek(0, SeekOrigin.End);
                await part.WriteAsync(piece, cancellation);
            }

            return part.Length;
        }
        finally
        {
            writing.Release();
        }
    }

    public Task<byte[]> ReadAsync(string key, CancellationToken cancellation) => File.ReadAllBytesAsync(Part(key), cancellation);

    /// <summary>Notes that the picture was taken, so that its last piece sent again changes nothing.</summary>
    public void Finish(string key, string picture)
    {
        File.WriteAllText(Done(key), picture);
        File.Delete(Part(key));
    }

    /// <summary>Throws away what can not become a picture.</summary>
    public void Drop(string key) => File.Delete(Part(key));

    public void Dispose() => writing.Dispose();

    private string Part(string key) => Path.Combine(folder, key + ".part");

    private string Done(string key) => Path.Combine(folder, key + ".done");
}
