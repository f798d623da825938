using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Visits;
using Assistant.Records.Assets;
using Assistant.Records.Conversations;
using Assistant.Records.Log;
using Assistant.Records.Outbox;
using Assistant.Trade.Quantities;

namespace Assistant.Channels;

/// <summary>
/// "visit at Mill Street, metric": begins a visit where there is no page to begin one on. Equipment on record is found by words of its name
/// and brings its record along; a place nobody knows yet begins a record of its own, so that the next visit finds it.
/// </summary>
public sealed partial class VisitOpening(EventLog log, ConversationService conversations, PhraseBook book)
{
    private const int LongestSite = 120;
    private const int MostNamed = 4;

    private readonly RecordSearch search = new(log.Database);
    private readonly AssetStore assets = new(log.Database);
    private readonly AssetHistoryReader histories = new(log);

    /// <summary>What is answered, and what of which visit is known by the answer; null where the words do not begin a visit.</summary>
    public async Task<(Reply Reply, SeenVisit? Seen)?> TakeAsync(InboundMessage message, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(message);
        if (BeginPattern().Match(message.Text.Trim()) is not { Success: true } begin)
        {
            return null;
        }

        var (site, units) = Asked(begin.Groups["site"].Value);
        if (site.Length is 0 or > LongestSite || site.Any(char.IsControl))
        {
            return (Line("text.begin-where"), null);
        }

        var found = await FindAsync(site, cancellation);
        return found.Length > 1
            ? (Line("text.begin-which", ("sites", string.Join("; ", found.Take(MostNamed).Select(Named)))), null)
            : await OpenAsync(message, site, found.IsEmpty ? null : found[0].Id, units, cancellation);
    }

    private async Task<(Reply, SeenVisit?)> OpenAsync(InboundMessage message, string site, string? known, UnitSystem? units, CancellationToken cancellation)
    {
        // Brought again after the visit was opened and before its answer was noted, the message opens no second one.
        if (await log.VisitOfAsync(message.Channel, message.Conversation, cancellation) is { } visit
            && VisitState.Fold(await log.ReadAsync(visit, cancellation)) is { Version: var version } now && now.OpenedAt == message.At)
        {
            return (Line("open.site", ("site", now.Site ?? site)), new(visit, version));
        }

        var asset = known ?? Guid.CreateVersion7(message.At).ToString("N");
        if (known is null)
        {
            await assets.RecordAsync(new(asset, site, Asset.Unnamed, ImmutableSortedDictionary<string, string>.Empty), message.At, cancellation);
        }

        var system = units ?? await LastUnitsAsync(asset, cancellation) ?? conversations.Units;
        var opened = await conversations.OpenVisitAsync(new(message.Channel, message.Conversation, null, asset, system, message.Person, message.At), cancellation);
        var state = await conversations.StateOfAsync(opened.VisitId, cancellation);
        return (Told(opened.Reply, known is null ? Said("text.begun-new", system, site) : null), new(opened.VisitId, state.Version));
    }

    private SaidPart Said(string key, UnitSystem units, string site) => new(key, null, book.Say(key, units, ("site", site)));

    // Elsewhere what the record knows may give way to the question. Here it answers what was asked for: which visit this is, and what is known.
    private static Reply Told(Reply reply, SaidPart? anew)
    {
        var parts = !reply.Parts.IsDefaultOrEmpty ? reply.Parts : reply.Say.IsEmpty ? [] : [new SaidPart("", null, reply.Say)];
        var told = parts.Where(p => anew is null || p.Key != "open.site").Select(p => p with { Key = "text.begun " + p.Key });
        return reply with { Parts = anew is null ? [.. told] : [anew, .. told] };
    }

    // One whose site is called exactly so goes before those that merely hold the words.
    private async Task<ImmutableArray<Asset>> FindAsync(string site, CancellationToken cancellation)
    {
        var found = await search.AssetsAsync(site.Replace(',', ' '), cancellation);
        var named = found.Where(a => string.Equals(a.Site, site, StringComparison.OrdinalIgnoreCase) || string.Equals(Named(a), site, StringComparison.OrdinalIgnoreCase)).ToImmutableArray();
        return named.IsEmpty ? found : named;
    }

    private async Task<UnitSystem?> LastUnitsAsync(string asset, CancellationToken cancellation) =>
        await histories.ReadAsync(asset, cancellation: cancellation) is { Visits: [var last, ..] }
            ? VisitState.Fold(await log.ReadAsync(last.VisitId, cancellation)).Units
            : null;

    private static (string Site, UnitSystem? Units) Asked(string said)
    {
        var units = UnitsPattern().Match(said);
        UnitSystem? system = !units.Success ? null : units.Groups["metric"].Success ? UnitSystem.Metric : UnitSystem.Us;
        return ((units.Success ? said[..units.Index] : said).Trim(' ', ',', '.', '!', '"'), system);
    }

    private static string Named(Asset asset) => asset.Unit is Asset.Unnamed ? asset.Site : $"{asset.Site}, {asset.Unit}";

    private Reply Line(string key, params ReadOnlySpan<Trade.Rules.ReasonPart> parts)
    {
        var said = book.Say(key, conversations.Units, parts);
        return new(said, [], [], null, [], null, [], null, []) { Parts = [new(key, null, said)] };
    }

    [GeneratedRegex(@"^(?:(?:(?:start|begin|open) (?:a |the )?)?new (?:visit|call|job)\b(?:,? (?:at|to|for|in)\b)?|(?:start|begin|open) (?:a |the )?(?:visit|call|job)\b(?:,? (?:at|to|for|in)\b)?|(?:visit|call|job) (?:at|to)\b)(?<site>.*)$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant | RegexOptions.Singleline)]
    private static partial Regex BeginPattern();

    [GeneratedRegex(@"[\s,(]+(?:(?<metric>metric|bar|celsius)|us|imperial|psi)\)?[\s.!]*$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex UnitsPattern();
}
