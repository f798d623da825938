using System.Net;
using System.Net.Sockets;

namespace Assistant.EndToEnd.Tests.Texts;

/// <summary>Loopback ports that were free a moment ago, for the parties of one test.</summary>
internal sealed class Ports
{
    private readonly Queue<int> free = new();

    public Ports(int count)
    {
        var held = Enumerable.Range(0, count).Select(_ => new TcpListener(IPAddress.Loopback, 0)).ToList();
        foreach (var listener in held)
        {
            listener.Start();
            free.Enqueue(((IPEndPoint)listener.LocalEndpoint).Port);
        }

        held.ForEach(l => l.Stop());
    }

    public int Take() => free.Dequeue();
}
