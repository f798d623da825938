using System.Collections.Concurrent;
using System.Net;
using Assistant.EndToEnd.Tests.Texts;

namespace Assistant.EndToEnd.Tests.Guards;

/// <summary>A small HTTP server on loopback that stands for somebody else's: it keeps what it was sent and answers as it is told.</summary>
internal sealed class Listener : IDisposable
{
    private readonly HttpListener http = new();

    public Listener(Func<HttpListenerRequest, byte[], (int Status, string Type, byte[] Body)> answer)
    {
        Address = new($"http://127.0.0.1:{new Ports(1).Take()}/");
        http.Prefixes.Add(Address.ToString());
        http.Start();
        _ = Task.Run(async () =>
        {
            while (http.IsListening)
            {
                try
                {
                    await AnswerAsync(await http.GetContextAsync(), answer);
                }
                catch (Exception over) when (over is HttpListenerException or ObjectDisposedException)
                {
                    return;
                }
            }
        });
    }

    public Uri Address { get; }

    public ConcurrentQueue<(string Path, byte[] Body)> Received { get; } = new();

    public void Dispose() => http.Close();

    private async Task AnswerAsync(HttpListenerContext context, Func<HttpListenerRequest, byte[], (int Status, string Type, byte[] Body)> answer)
    {
        using var body = new MemoryStream();
        await context.Request.InputStream.CopyToAsync(body);
        var (status, type, bytes) = answer(context.Request, body.ToArray());
        (context.Response.StatusCode, context.Response.ContentType, context.Response.ContentLength64) = (status, type, bytes.Length);
        await context.Response.OutputStream.WriteAsync(bytes);
        context.Response.Close();
        Received.Enqueue((context.Request.Url!.AbsolutePath, body.ToArray()));
    }
}
