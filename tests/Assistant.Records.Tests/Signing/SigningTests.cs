using Assistant.Records.Chain;
using Assistant.Records.Signing;
using Assistant.Records.Storage;
using Assistant.Records.Tests.Support;

namespace Assistant.Records.Tests.Signing;

public sealed class SigningTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("coldwalk-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void The_key_is_made_once_for_its_owner_alone_and_refused_where_others_may_read_it()
    {
        var signature = SigningKey.Open(folder).Sign("p", "text");
        Assert.True(SigningKey.Open(folder).Fits("p", "text", signature));
        Assert.False(SigningKey.Open(folder).Fits("q", "text", signature));
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        var path = Path.Combine(folder, "signing.key");
        Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(path));
        File.SetUnixFileMode(path, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.GroupRead);
        Assert.Contains("mode to 600", Assert.Throws<RecordsException>(() => SigningKey.Open(folder)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_key_that_is_missing_where_heads_were_signed_is_asked_for_and_no_other_is_made()
    {
        await using var records = await TemporaryRecords.OpenAsync();
        await records.Log.AppendAsync(Invented.FirstAppend("v-1"));
        var book = new HeadBook(new HeadWitness(records.Database, SigningKey.Open(folder)), folder);
        await book.NoteAsync(null);
        var key = Path.Combine(folder, "signing.key");
        File.Move(key, key + ".backup");

        var missing = Assert.Throws<RecordsException>(() => SigningKey.Open(folder));
        Assert.StartsWith($"{key} is missing, and the heads in signed-heads.jsonl were signed with it: restore it from the backup", missing.Message, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', missing.Message);
        Assert.False(File.Exists(key));

        File.Move(key + ".backup", key);
        Assert.True((await new RecordsVerifier(records.Database, SigningKey.Open(folder)).VerifyAsync(null, HeadBook.Read(book.Path))).Holds);
    }

    [Fact]
    public async Task A_key_that_is_missing_where_people_were_set_up_is_asked_for_and_made_where_nobody_was()
    {
        await using var records = await TemporaryRecords.OpenAsync();
        var first = await SigningKey.OpenAsync(folder, records.Database);
        await new Records.People.PeopleService(records.Log, first, TimeProvider.System).SetUpAsync("Invented Cooling");
        var second = Directory.CreateDirectory(Path.Combine(folder, "second")).FullName;

        var missing = await Assert.ThrowsAsync<RecordsException>(() => SigningKey.OpenAsync(second, records.Database));
        Assert.Contains("the people of these records were set up with it: restore it from the backup, or from the program that shares these records", missing.Message, StringComparison.Ordinal);
        Assert.Empty(Directory.GetFiles(second));

        File.Copy(Path.Combine(folder, "signing.key"), Path.Combine(second, "signing.key"));
        Assert.True((await SigningKey.OpenAsync(second, records.Database)).Fits("p", "text", first.Sign("p", "text")));
    }

    [Fact]
    public async Task Heads_that_were_all_signed_with_another_key_are_the_keys_fault_and_not_the_logs()
    {
        await using var records = await TemporaryRecords.OpenAsync();
        await records.Log.AppendAsync(Invented.FirstAppend("v-1"));
        var other = Directory.CreateDirectory(Path.Combine(folder, "other")).FullName;
        var heads = await new HeadWitness(records.Database, SigningKey.Open(other)).SignAllAsync();
        var own = await new HeadWitness(records.Database, SigningKey.Open(folder)).SignAllAsync();
        var verifier = new RecordsVerifier(records.Database, SigningKey.Open(folder));

        var wrong = await Assert.ThrowsAsync<RecordsException>(() => verifier.VerifyAsync(null, heads));
        Assert.Equal("The earlier heads (1) were signed with another key than this signing.key: restore the one that belongs to them from the backup, then verify again.", wrong.Message);
        Assert.Contains("was not signed", (await verifier.VerifyAsync(null, heads.AddRange(own))).Broken!.Why, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_tail_that_was_cut_off_fits_the_chain_and_is_shown_by_the_signed_head()
    {
        await using var records = await TemporaryRecords.OpenAsync();
        await records.Log.AppendAsync(Invented.FirstAppend("v-1"));
        await records.Log.AppendAsync(new("v-1", 1, [Invented.Heard("one"), Invented.Heard("two")]));
        var witness = new HeadWitness(records.Database, SigningKey.Open(folder));
        var head = (await witness.SignAsync("v-1"))!;
        Assert.Null(await witness.CheckAsync(head));

        records.Tamper("DELETE FROM events WHERE number = 3; UPDATE visits SET version = 2, head_hash = (SELECT hash FROM events WHERE number = 2)");

        Assert.True((await new ChainVerifier(records.Database).VerifyAsync()).Holds);
        var broken = await witness.CheckAsync(head);
        Assert.Equal(3, broken!.Number);
        Assert.Contains("its end was cut off", broken.Why, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_log_that_went_on_still_fits_and_a_head_that_was_changed_does_not()
    {
        await using var records = await TemporaryRecords.OpenAsync();
        await records.Log.AppendAsync(Invented.FirstAppend("v-1"));
        var witness = new HeadWitness(records.Database, SigningKey.Open(folder));
        var head = (await witness.SignAsync("v-1"))!;
        await records.Log.AppendAsync(new("v-1", 1, [Invented.Heard("one")]));

        Assert.Null(await witness.CheckAsync(head));
        Assert.Contains("not signed", (await witness.CheckAsync(head with { Version = 0 }))!.Why, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_book_of_heads_shows_a_cut_off_tail_a_rewritten_log_and_a_visit_that_is_gone()
    {
        await using var records = await TemporaryRecords.OpenAsync();
        await records.Log.AppendAsync(Invented.FirstAppend("v-1"));
        await records.Log.AppendAsync(Invented.FirstAppend("v-2", conversation: "c-2"));
        await records.Log.AppendAsync(new("v-1", 1, [Invented.Heard("one"), Invented.Heard("two")]));
        var key = SigningKey.Open(folder);
        var book = new HeadBook(new HeadWitness(records.Database, key), folder);
        var verifier = new RecordsVerifier(records.Database, key);
        await book.NoteAsync(null);
        await book.NoteAsync("v-1");
        var heads = HeadBook.Read(book.Path);
        Assert.Equal([("v-1", 3), ("v-2", 1)], heads.Select(h => (h.VisitId, h.Version)));
        Assert.True((await verifier.VerifyAsync(null, heads)).Holds);

        records.Tamper("DELETE FROM events WHERE visit_id = 'v-1' AND number = 3; UPDATE visits SET version = 2, head_hash = (SELECT hash FROM events WHERE visit_id = 'v-1' AND number = 2) WHERE id = 'v-1'");
        Assert.Equal(("v-1", 3), Place(await verifier.VerifyAsync(null, heads)));
        Assert.True((await verifier.VerifyAsync("v-2", heads)).Holds);
        await records.Log.AppendAsync(new("v-1", 2, [Invented.Heard("another two")]));
        Assert.Contains("written anew", (await verifier.VerifyAsync("v-1", heads)).Broken!.Why, StringComparison.Ordinal);

        records.Tamper("DELETE FROM events WHERE visit_id = 'v-2'; DELETE FROM visits WHERE id = 'v-2'");
        Assert.Equal(("v-2", 1), Place(await verifier.VerifyAsync("v-2", heads)));
    }

    [Theory]
    [InlineData("not json")]
    [InlineData("{}")]
    [InlineData("null")]
    public void A_line_that_is_no_head_is_named(string line)
    {
        var file = Path.Combine(folder, "heads.jsonl");
        File.WriteAllLines(file, [line]);
        Assert.StartsWith($"{file}:1: ", Assert.Throws<RecordsException>(() => HeadBook.Read(file)).Message, StringComparison.Ordinal);
    }

    private static (string, int) Place(ChainVerdict verdict) => (verdict.Broken!.VisitId, verdict.Broken.Number);

    [Fact]
    public void A_link_holds_until_it_expires()
    {
        var clock = new SteppingClock(Invented.Morning);
        var link = new ReportLink(SigningKey.Open(folder), clock);
        var token = link.Mint("v-1", TimeSpan.FromHours(1));

        Assert.Equal(new LinkVerdict(LinkStanding.Holds, "v-1"), link.Check(token));
        clock.Now += TimeSpan.FromMinutes(59);
        Assert.Equal(LinkStanding.Holds, link.Check(token).Standing);
        clock.Now += TimeSpan.FromMinutes(1);
        Assert.Equal(new LinkVerdict(LinkStanding.Expired, null), link.Check(token));
    }

    [Fact]
    public void A_link_changed_in_any_character_opens_nothing()
    {
        var link = new ReportLink(SigningKey.Open(folder), new SteppingClock(Invented.Morning));
        var token = link.Mint("v-1", TimeSpan.FromHours(1));

        // The last character of a signature of 32 bytes holds two bits that say nothing.
        Assert.All(Enumerable.Range(0, token.Length - 1), i =>
            Assert.NotEqual(LinkStanding.Holds, link.Check(token[..i] + (token[i] == '1' ? '2' : '1') + token[(i + 1)..]).Standing));
        Assert.All(["", "..", "v-1", new string('x', 10_000)], text => Assert.Equal(LinkStanding.Unknown, link.Check(text).Standing));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(91)]
    public void A_link_holds_for_some_time_and_not_for_ever(int days) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new ReportLink(SigningKey.Open(folder), new SteppingClock(Invented.Morning)).Mint("v-1", TimeSpan.FromDays(days)));

    private sealed class SteppingClock(DateTimeOffset now) : TimeProvider
    {
        public DateTimeOffset Now { get; set; } = now;

        public override DateTimeOffset GetUtcNow() => Now;
    }
}
