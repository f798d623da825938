namespace Assistant.Channels.Xmpp.Wire;

/// <summary>Counts what is read since the last stanza was whole, and ends the reading where that grows past all measure: whatever is read lies in memory until it is whole.</summary>
internal sealed class MeteredStream(Stream inner, long most) : Stream
{
    private long read;

    /// <summary>True where the other side has closed.</summary>
    public bool IsAtEnd { get; private set; }

    public override bool CanRead => true;

    public override bool CanSeek => false;

    public override bool CanWrite => false;

    public override long Length => throw new NotSupportedException();

    public override long Position { get => throw new NotSupportedException(); set => throw new NotSupportedException(); }

    /// <summary>A stanza is whole.</summary>
    public void Start() => read = 0;

    public override async ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken = default) =>
        Counted(await inner.ReadAsync(buffer, cancellationToken));

    public override Task<int> ReadAsync(byte[] buffer, int offset, int count, CancellationToken cancellationToken) =>
        ReadAsync(buffer.AsMemory(offset, count), cancellationToken).AsTask();

    public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    public override void Flush()
    {
    }

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    private int Counted(int got)
    {
        IsAtEnd = got == 0;
        read += got;
        return read <= most ? got : throw new StreamBrokenException("policy-violation", $"a stanza of more than {most} bytes came in");
    }
}
