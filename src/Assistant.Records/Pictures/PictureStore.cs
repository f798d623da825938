using Assistant.Records.Storage;
using Microsoft.EntityFrameworkCore;

namespace Assistant.Records.Pictures;

/// <summary>The pictures, each once, by the hash of its content.</summary>
public sealed class PictureStore(IRecordsDatabase database) : IDisposable
{
    // Unpacking costs memory by the picture: two at a time.
    private readonly SemaphoreSlim atWork = new(2, 2);

    /// <summary>Re-encodes what was sent and keeps it; the same picture again is kept once.</summary>
    /// <exception cref="PictureRefusedException">It can not be kept as a picture; the message says why.</exception>
    /// <exception cref="RecordsException">The records can not be written; nothing was kept.</exception>
    public async Task<EncodedPicture> KeepAsync(byte[] file, CancellationToken cancellation = default)
    {
        var picture = await EncodeAsync(file, cancellation);
        try
        {
            await database.WriteAsync(async context =>
            {
                if (!await context.Pictures.AnyAsync(p => p.Id == picture.Id, cancellation))
                {
                    context.Pictures.Add(new() { Id = picture.Id, Jpeg = picture.Jpeg, Width = picture.Width, Height = picture.Height });
                    await context.SaveChangesAsync(cancellation);
                }

                return picture;
            }, cancellation);
        }
        catch (RecordsException there) when (there.InnerException is { } cause && database.IsAlreadyThere(cause))
        {
            // Another kept the same picture meanwhile.
        }

        return picture;
    }

    /// <summary>The picture of that id, or null.</summary>
    public Task<EncodedPicture?> FindAsync(string id, CancellationToken cancellation = default) => database.UseAsync(context =>
        context.Pictures.AsNoTracking().Where(p => p.Id == id)
            .Select(p => new EncodedPicture(p.Id, p.Jpeg, p.Width, p.Height)).FirstOrDefaultAsync(cancellation));

    public void Dispose() => atWork.Dispose();

    private async Task<EncodedPicture> EncodeAsync(byte[] file, CancellationToken cancellation)
    {
        await atWork.WaitAsync(cancellation);
        try
        {
            return await Task.Run(() => PictureEncoder.Encode(file), cancellation);
        }
        finally
        {
            atWork.Release();
        }
    }
}
