using System.Diagnostics;
using System.Globalization;
using Assistant.EndToEnd.Tests.Fixtures;

namespace Assistant.EndToEnd.Tests.Chaos;

/// <summary>One program on the shared store, killed and started again at moments its seed gives.</summary>
internal sealed class ChaosNode(string name, int port, IReadOnlyDictionary<string, string> environment, string data, ChaosLedger ledger, Random random) : IDisposable
{
    private Process? process;

    public Uri Address { get; } = new($"http://127.0.0.1:{port}/");

    public int Kills { get; private set; }

    public async Task StartAsync(CancellationToken cancellation = default)
    {
        while (true)
        {
            process = AppProcess.Start(["serve", "--port", port.ToString(CultureInfo.InvariantCulture), "--data", data], environment);
            process.ErrorDataReceived += (_, _) => { };
            process.BeginErrorReadLine();
            if (await process.StandardOutput.ReadLineAsync(cancellation) is not null)
            {
                return;
            }

            // The database was away: a service manager starts the program again, and so does this.
            End();
            await Task.Delay(300, cancellation);
        }
    }

    /// <summary>Kills it (SIGKILL) every few seconds until the time is over, sometimes while it starts; leaves it running.</summary>
    public async Task TormentAsync(TimeSpan shortest, TimeSpan longest, CancellationToken over)
    {
        while (await PauseAsync(shortest + ((longest - shortest) * random.NextDouble()), over))
        {
            Kill();
            await PauseAsync(TimeSpan.FromSeconds(random.NextDouble()), over);
            if (random.Next(5) == 0)
            {
                using var early = new CancellationTokenSource(TimeSpan.FromMilliseconds(random.Next(100, 900)));
                try
                {
                    await StartAsync(early.Token);
                }
                catch (OperationCanceledException)
                {
                    // Killed while it started.
                }

                Kill();
            }

            await StartAsync(CancellationToken.None);
        }
    }

    public void Dispose() => End();

    private static async Task<bool> PauseAsync(TimeSpan time, CancellationToken over)
    {
        await Task.Delay(time, over).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        return !over.IsCancellationRequested;
    }

    private void Kill()
    {
        Kills++;
        ledger.Note($"{name} killed");
        End();
    }

    private void End()
    {
        if (process is not null)
        {
            process.Kill();
            process.WaitForExit();
            process.Dispose();
            process = null;
        }
    }
}
