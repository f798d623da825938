using Assistant.Channels.Tests.Text;
using Assistant.Channels.Text;
using Assistant.Dialogue.Visits;
using Assistant.Records.Log;
using Assistant.Records.Outbox;
using Assistant.Records.Storage.Sqlite;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Xunit.Abstractions;

namespace Assistant.EndToEnd.Tests.Texts;

/// <summary>The whole call by text message through a real gateway (Debian packages kannel and kannel-extras), on loopback.</summary>
public class KannelTests(ITestOutputHelper output)
{
    private const string Number = "+15550101";

    /// <summary>A fifth of the texts: the next one overtakes them.</summary>
    private static readonly string[] Overtaken = ["cold room is warm", "prod 46 no ice sol on", "cond fans all cond coil dirty sg clear", "hd 270 suc 65"];

    /// <summary>The texts after which the program is killed.</summary>
    private static readonly (int, int) FirstText = (1, 0), LastText = (4, 0);

    /// <summary>The texts after which the gateway is killed: one whose reply waits in the outbox, and one whose reply it keeps for a phone without a signal.</summary>
    private static readonly (int, int) InTheOutbox = (2, 4), InTheGateway = (6, 1);

    [Fact]
    public async Task Delivered_twice_out_of_order_and_with_gateway_and_program_killed_the_call_comes_to_the_same_and_no_reply_is_lost_or_doubled()
    {
        Assert.True(Kannel.IsInstalled && TextingPhone.IsInstalled, "The packages kannel and kannel-extras are wanted; tests/run installs them on Debian.");
        await using var calm = await TextScene.OpenAsync();
        var expected = (await new TextSchedule(calm, "+15551000000", null).RunAsync()).Outcome;

        var ports = new Ports(8);
        var (programPort, signalPort) = (ports.Take(), ports.Take());
        await using var signal = new WeakSignal(signalPort, programPort, Overtaken);
        using var gateway = new Kannel(ports, programPort, signalPort);
        using var server = new TextServer(programPort, gateway.Environment);
        using var phone = new TextingPhone(gateway, signal, Number);
        var code = await server.EnrolAsync("Robin");
        await Task.WhenAll(gateway.StartAsync(), server.StartAsync());
        phone.SwitchOn();

        var texts = await TalkAsync(phone, gateway, server, signal, code);

        // Nothing comes after what was waited for.
        await Task.Delay(2000);
        server.Kill();
        await JudgeAsync(server.Data, expected, phone.Screen);
        Assert.Equal(texts, signal.Messages);
        Assert.True(signal.Deliveries >= 2 * texts, $"{signal.Deliveries} deliveries of {texts} messages.");
        output.WriteLine($"{texts} texts, brought {signal.Deliveries} times, {Overtaken.Length} overtaken; the program killed twice, the gateway twice; {phone.Screen.Count} replies, each once");
    }

    private static async Task<int> TalkAsync(TextingPhone phone, Kannel gateway, TextServer server, WeakSignal signal, string code)
    {
        var texts = 1;
        await phone.SendAsync(code);
        await phone.WaitForAsync(texts, TimeSpan.FromSeconds(30));
        for (var burst = 0; burst < WarmBoxCall.Bursts.Length; burst++)
        {
            for (var i = 0; i < WarmBoxCall.Bursts[burst].Length; i++)
            {
                await BeforeAsync((burst, i), texts, phone);
                await phone.SendAsync(WarmBoxCall.Bursts[burst][i]);
                texts++;
                await AfterAsync((burst, i), texts, phone, gateway, server, signal);
            }

            await phone.WaitForAsync(texts, TimeSpan.FromSeconds(150));
        }

        return texts;
    }

    // What the gateway has under way to a phone when it is killed may be lost or come twice, and nobody behind it can know: the replies
    // so far are waited for.
    private static async Task BeforeAsync((int Burst, int Text) at, int texts, TextingPhone phone)
    {
        if (at == InTheOutbox || at == InTheGateway)
        {
            await phone.WaitForAsync(texts, TimeSpan.FromSeconds(150));
        }

        if (at == InTheGateway)
        {
            phone.SwitchOff();
        }
    }

    private static async Task AfterAsync((int Burst, int Text) at, int texts, TextingPhone phone, Kannel gateway, TextServer server, WeakSignal signal)
    {
        if (at == FirstText || at == LastText)
        {
            // The gateway brings what it has again until the program is back.
            server.Kill();
            await Task.Delay(500);
            await server.StartAsync();
        }
        else if (at == InTheOutbox || at == InTheGateway)
        {
            // A message that Kannel's smsbox has taken and not yet handed on would be gone with it: it is through by then.
            await signal.WaitForAsync(texts);
            await Task.Delay(at == InTheGateway ? 2000 : 0);
            gateway.Kill();
            await Task.Delay(500);
            await gateway.StartAsync();
            phone.SwitchOn();
        }
    }

    private static async Task JudgeAsync(string data, string expected, IReadOnlyCollection<string> screen)
    {
        var database = new SqliteRecords(Path.Combine(data, "coldwalk.db"));
        await using var log = await EventLog.OpenAsync(database);
        var visit = await log.VisitOfAsync(TextSettings.Channel, Number);
        Assert.Equal(expected, WarmBoxCall.Outcome(VisitState.Fold(await log.ReadAsync(visit!))));

        await using var context = database.NewContext();
        var rows = await context.Outbox.AsNoTracking().OrderBy(o => o.Id).ToListAsync();
        Assert.All(rows, row => Assert.NotNull(row.DeliveredAt));
        Assert.Equal(rows.Count, rows.Select(r => r.MessageId).Distinct().Count());
        Assert.Equal(rows.Count, screen.Count);
        Assert.Empty(await new ReplyOutbox(database).LostAsync(TextSettings.Channel));
        SqliteConnection.ClearAllPools();
    }
}
