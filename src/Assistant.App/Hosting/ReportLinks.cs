using Assistant.App.Commands;
using Assistant.Records.Signing;
using Assistant.Records.Storage;

namespace Assistant.App.Hosting;

/// <summary>Signed addresses of reports, with the key that stands beside the records.</summary>
public sealed class ReportLinks(IRecordsDatabase database, DataFolder data, TimeProvider clock)
{
    public const int UsualDays = 14;

    /// <summary>Under which path a link is served.</summary>
    public const string Root = "/r/";

    private readonly Lazy<SigningKey> key = new(() => SigningKey.Open(data.Path));

    /// <summary>Where the heads of what was handed out are kept, so that a report's log can not be cut short later unseen.</summary>
    public HeadBook Heads => new(new HeadWitness(database, key.Value), data.Path);

    /// <exception cref="CommandFailure">The days are none, or more than a link may hold.</exception>
    public MintedLink Mint(string visitId, int days)
    {
        if (days < 1 || days > ReportLink.Longest.TotalDays)
        {
            throw new CommandFailure($"A link holds for 1 to {ReportLink.Longest.TotalDays:0} days, not {days}.", CommandFailure.BadInput);
        }

        var holds = TimeSpan.FromDays(days);
        return new(Root + new ReportLink(key.Value, clock).Mint(visitId, holds), clock.GetUtcNow() + holds);
    }

    public LinkVerdict Check(string token) => new ReportLink(key.Value, clock).Check(token);
}

/// <param name="Path">The address without its host.</param>
/// <param name="Until">When it expires.</param>
public sealed record MintedLink(string Path, DateTimeOffset Until);
