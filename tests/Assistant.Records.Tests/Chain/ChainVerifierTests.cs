using Assistant.Records.Chain;
using Assistant.Records.Tests.Support;

namespace Assistant.Records.Tests.Chain;

public abstract class ChainVerifierTests(Store store)
{
    [Fact]
    public async Task An_untouched_log_holds()
    {
        await using var records = await ThreeEventsAsync();

        var verdict = await new ChainVerifier(records.Database).VerifyAsync();

        Assert.True(verdict.Holds);
        Assert.Equal((1, 3), (verdict.Visits, verdict.Events));
    }

    [Theory]
    [InlineData("kind")]
    [InlineData("at")]
    [InlineData("body")]
    [InlineData("personal")]
    public async Task Any_byte_of_a_text_that_changes_is_found(string column)
    {
        await using var records = await ThreeEventsAsync();
        var before = records.Scalar<string>($"SELECT {column} FROM events WHERE number = 2");
        for (var i = 0; i < before.Length; i++)
        {
            records.Tamper($"UPDATE events SET {column} = {Literal($"{before[..i]}{(char)(before[i] + 1)}{before[(i + 1)..]}")} WHERE number = 2");

            var broken = (await new ChainVerifier(records.Database).VerifyAsync()).Broken;

            Assert.True(broken is { VisitId: "v", Number: 2 }, $"byte {i} of {column}");
            records.Tamper($"UPDATE events SET {column} = {Literal(before)} WHERE number = 2");
        }
    }

    [Theory]
    [InlineData("salt")]
    [InlineData("personal_digest")]
    [InlineData("prev_hash")]
    [InlineData("hash")]
    public async Task Any_byte_of_a_digest_that_changes_is_found(string column)
    {
        await using var records = await ThreeEventsAsync();
        var original = records.Scalar<byte[]>($"SELECT {column} FROM events WHERE number = 2");
        for (var i = 0; i < original.Length; i++)
        {
            var changed = (byte[])original.Clone();
            changed[i] ^= 1;
            records.Tamper($"UPDATE events SET {column} = {Literal(changed)} WHERE number = 2");

            var broken = (await new ChainVerifier(records.Database).VerifyAsync()).Broken;

            Assert.True(broken is { VisitId: "v", Number: 2 or 3 }, $"byte {i} of {column}");
        }
    }

    [Theory]
    [InlineData("DELETE FROM events WHERE number = 2", 2)]
    [InlineData("DELETE FROM events WHERE number = 3", 3)]
    [InlineData("UPDATE events SET number = 9 WHERE number = 3", 3)]
    [InlineData("UPDATE visits SET version = 2", 3)]
    [InlineData("UPDATE visits SET head_hash = (SELECT prev_hash FROM events WHERE number = 1)", 4)]
    [InlineData("UPDATE events SET personal = NULL, salt = NULL WHERE number = 2", 2)]
    [InlineData("UPDATE events SET salt = NULL WHERE number = 2", 2)]
    public async Task What_was_removed_or_moved_is_found(string tampering, int number)
    {
        await using var records = await ThreeEventsAsync();
        records.Tamper(tampering);

        var broken = (await new ChainVerifier(records.Database).VerifyAsync()).Broken;

        Assert.Equal(("v", number), (broken!.VisitId, broken.Number));
    }

    private static string Literal(string text) => $"'{text.Replace("'", "''", StringComparison.Ordinal)}'";

    private string Literal(byte[] bytes) => store == Store.Sqlite ? $"x'{Convert.ToHexString(bytes)}'" : $"'\\x{Convert.ToHexString(bytes)}'";

    private async Task<TemporaryRecords> ThreeEventsAsync()
    {
        var records = await TemporaryRecords.OpenAsync(store);
        await records.Log.AppendAsync(Invented.FirstAppend("v"));
        await records.Log.AppendAsync(new("v", 1, [Invented.Heard("thirty eight, door left open"), Invented.Heard("117 psi", by: "Kim", id: "m-2")]));
        return records;
    }
}

public sealed class ChainVerifierTestsOnSqlite() : ChainVerifierTests(Store.Sqlite);

public sealed class ChainVerifierTestsOnPostgres() : ChainVerifierTests(Store.Postgres);
