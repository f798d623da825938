using Assistant.Dialogue.Visits;
using Assistant.Records.Assets;
using Assistant.Records.Chain;
using Assistant.Records.Conversations;
using Assistant.Records.Log;
using Assistant.Records.Outbox;
using Assistant.Records.Pictures;
using Assistant.Records.Reminders;
using Assistant.Records.Reports;
using Assistant.Records.Reports.Html;
using Assistant.Records.Reports.Pdf;
using Assistant.Records.Reports.Sheet;
using Assistant.Records.Storage;
using Assistant.Records.Storage.Postgres;
using Assistant.Records.Storage.Sqlite;
using Assistant.Records.Tests.Support;
using Assistant.Trade.Facts;
using Microsoft.Data.Sqlite;
using Npgsql;

namespace Assistant.Records.Tests.Fixtures;

/// <summary>What the first release stored, every later one must open, fold and report. The file is never made anew.</summary>
public abstract class FirstReleaseTests(Store store) : IAsyncLifetime
{
    private readonly string folder = Directory.CreateTempSubdirectory("coldwalk-").FullName;
    private EventLog log = null!;

    public async Task InitializeAsync()
    {
        log = await EventLog.OpenAsync(store == Store.Sqlite ? Copied() : await RestoredAsync());
    }

    public async Task DisposeAsync()
    {
        await log.DisposeAsync();
        SqliteConnection.ClearAllPools();
        NpgsqlConnection.ClearAllPools();
        Directory.Delete(folder, recursive: true);
    }

    private SqliteRecords Copied()
    {
        var copy = Path.Combine(folder, "records.db");
        File.Copy(FirstRelease.KeptPath, copy);
        return new SqliteRecords(copy);
    }

    private static async Task<IRecordsDatabase> RestoredAsync()
    {
        var connection = await TestDatabases.NewEmptyAsync();
        await PostgresTools.RunAsync("psql", "-q", "-v", "ON_ERROR_STOP=1", "-f", FirstRelease.KeptCopy, connection);
        return PostgresRecords.Of(connection);
    }

    [Fact]
    public async Task Its_chain_holds()
    {
        var verdict = await new ChainVerifier(log.Database).VerifyAsync();

        Assert.True(verdict.Holds, verdict.Broken?.Why);
        Assert.Equal((2, 35), (verdict.Visits, verdict.Events));
    }

    [Fact]
    public async Task Its_visit_folds_to_the_state_it_had()
    {
        var state = VisitState.Fold(await log.ReadAsync(FirstRelease.Visit));

        Assert.Equal(("Invented Diner, Pine Street", 30), (state.Site, state.Version));
        Assert.Equal("R448A", state.Facts.Word(FactCatalogue.Refrigerant));
        Assert.Equal(38, ((Reading)state.Facts.Find(FactCatalogue.BoxTemperature)!).Value);
        Assert.Equal(56, ((Reading)state.Facts.Find(FactCatalogue.LiquidLineTemperature)!).Value);
        Assert.Equal("flare made anew, charged, pulling down", state.Outcome);
    }

    [Fact]
    public async Task Its_visit_is_reported()
    {
        using var pictures = new PictureStore(log.Database);
        var report = await new VisitReportReader(log, pictures).ReadAsync(FirstRelease.Visit);
        var sheet = new SheetWriter(InventedVisit.Phrases).Write(report!);

        Assert.Equal("undercharge", Assert.Single(report!.Verdicts).Fault);
        Assert.Equal(320, Assert.Single(report.Pictures).Width);
        Assert.NotNull(report.Plotted.Measured);
        Assert.Equal(64, report.Basis.LogHead.Length);
        Assert.Contains("Walk-in cooler, unit on the flat roof", Tool.TextOf(PdfReport.Write(sheet)), StringComparison.Ordinal);
        Assert.Contains("The system is short of refrigerant.", HtmlReport.Write(sheet), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Its_equipment_is_known_and_its_second_visit_started_from_it()
    {
        var history = await new AssetHistoryReader(log).ReadAsync("demo-diner-cooler");

        Assert.Equal("invented orifice 3", history!.Asset.Details["valve_orifice"]);
        Assert.Equal([FirstRelease.SecondVisit, FirstRelease.Visit], history.Visits.Select(v => v.VisitId));
        var opened = Assert.IsType<VisitOpened>((await log.ReadAsync(FirstRelease.SecondVisit))[0]);
        Assert.Equal("12 lb", opened.KnownFacts["full_charge"]);
    }

    [Fact]
    public async Task What_waited_in_it_still_waits_and_who_was_erased_stays_erased()
    {
        var waiting = await new ReplyOutbox(log.Database).DueAsync("sms", FirstRelease.Later.AddDays(1));
        var reminder = Assert.Single(await new ReminderStore(log.Database).DueAsync(FirstRelease.Later.AddDays(1)));

        Assert.Equal(["sms-1", "reminder second-visit 4"], waiting.Select(w => w.MessageId));
        Assert.Equal("read the head again", reminder.About);
        Assert.Equal(("(erased)", ""), (await log.ReadAsync(FirstRelease.SecondVisit)).OfType<MessageHeard>().Select(m => (m.By, m.Text)).Last());
    }

    [Fact]
    public async Task Its_visit_goes_on_and_a_message_of_then_gets_the_reply_of_then()
    {
        using var service = new ConversationService(log, new CountingEngine());

        var again = await service.HandleAsync(new("sms-1", "sms", "+15550100", "Robin", FirstRelease.Later, "gauge reads 24"));
        var next = await service.HandleAsync(new("sms-3", "sms", "+15550100", "Robin", FirstRelease.Later, "25 now"));

        Assert.Equal("gauge reads 24 after 1", again.Say.Full);
        Assert.Equal("25 now after 5", next.Say.Full);
    }
}

public sealed class FirstReleaseTestsOnSqlite() : FirstReleaseTests(Store.Sqlite);

public sealed class FirstReleaseTestsOnPostgres() : FirstReleaseTests(Store.Postgres);
