using System.Globalization;
using System.Text;
using System.Text.Json;
using Assistant.Dialogue.Visits;
using Assistant.Records.Chain;
using Assistant.Records.Tests.Support;

namespace Assistant.Records.Tests.Chain;

/// <summary>A whole small log: whichever byte of a stored event is changed, the first event that does not fit is named.</summary>
public class EveryByteTests
{
    private static readonly string[] Texts = ["kind", "at", "body", "personal"];
    private static readonly string[] Digests = ["salt", "personal_digest", "prev_hash", "hash"];

    [Fact]
    public async Task Every_byte_of_every_stored_event_is_held_by_the_chain()
    {
        await using var records = await ThreeEventsAsync();
        var changed = 0;
        for (var number = 1; number <= 3; number++)
        {
            foreach (var column in Texts.Concat(Digests))
            {
                var (cell, where) = ($"CAST({column} AS BLOB)", $"WHERE number = {number}");
                var before = records.Scalar<byte[]>($"SELECT {cell} FROM events {where}");
                var value = Texts.Contains(column) ? "CAST(x'{0}' AS TEXT)" : "x'{0}'";
                for (var i = 0; i < before.Length; i++, changed++)
                {
                    var other = (byte[])before.Clone();
                    other[i] ^= 1;
                    records.Tamper($"UPDATE events SET {column} = {string.Format(CultureInfo.InvariantCulture, value, Convert.ToHexString(other))} {where}");

                    var broken = (await new ChainVerifier(records.Database).VerifyAsync()).Broken;

                    // A changed hash shows at its own event, or at the one that follows it.
                    Assert.True(broken?.Number == number || (column == "hash" && broken?.Number == number + 1), $"event {number}, {column}, byte {i}: {broken}");
                }

                records.Tamper($"UPDATE events SET {column} = {string.Format(CultureInfo.InvariantCulture, value, Convert.ToHexString(before))} {where}");
            }
        }

        Assert.True((await new ChainVerifier(records.Database).VerifyAsync()).Holds);
        Assert.InRange(changed, 800, 2_000);
    }

    [Fact]
    public async Task A_byte_flipped_in_the_file_itself_changes_nothing_that_is_read_without_being_found()
    {
        await using var records = await ThreeEventsAsync();
        await records.Database.ScrubAsync();
        TemporaryRecords.ForgetConnections();
        var file = await File.ReadAllBytesAsync(records.Path);
        var original = await ReadAsync(records);
        var at = file.AsSpan().IndexOf(Encoding.UTF8.GetBytes("thirty eight, door left open"));
        const int pageSize = 4096;
        var page = at / pageSize * pageSize;

        var found = 0;
        for (var i = page; i < page + pageSize; i += 11)
        {
            var changed = (byte[])file.Clone();
            changed[i] ^= 0x04;
            TemporaryRecords.ForgetConnections();
            await File.WriteAllBytesAsync(records.Path, changed);
            var (read, holds) = (await ReadAsync(records), await HoldsAsync(records));
            Assert.True(read == original || !holds, $"byte {i} of the file");
            found += holds ? 0 : 1;
        }

        TemporaryRecords.ForgetConnections();
        await File.WriteAllBytesAsync(records.Path, file);
        Assert.InRange(found, 60, 400);
    }

    private static async Task<TemporaryRecords> ThreeEventsAsync()
    {
        var records = await TemporaryRecords.OpenAsync();
        await records.Log.AppendAsync(Invented.FirstAppend("v"));
        await records.Log.AppendAsync(new("v", 1, [Invented.Heard("thirty eight, door left open"), Invented.Heard("117 psi", by: "Kim", id: "m-2")]));
        return records;
    }

    /// <summary>All that the log says, or why it can not be read.</summary>
    private static async Task<string> ReadAsync(TemporaryRecords records)
    {
        try
        {
            return string.Join('\n', (await records.Log.ReadAsync("v")).Select(e => JsonSerializer.Serialize<VisitEvent>(e)));
        }
        catch (Exception failure)
        {
            return "unreadable: " + failure.GetType().Name;
        }
    }

    private static async Task<bool> HoldsAsync(TemporaryRecords records)
    {
        try
        {
            return (await new ChainVerifier(records.Database).VerifyAsync()) is { Holds: true, Events: 3 };
        }
        catch (Exception)
        {
            return false;
        }
    }
}
