using System.Globalization;
using System.Text.RegularExpressions;
using Assistant.Dialogue.Understanding;
using Assistant.Dialogue.Visits;
using Assistant.Trade.Facts;

namespace Assistant.Dialogue.Turns;

/// <summary>Completes what a message left open by the next one: "psi" as the whole answer to "117 in which unit?".</summary>
internal sealed partial class Clarifier(Understand understand)
{
    /// <summary>What the two messages say together, or null where they still leave it open.</summary>
    public Understood? Complete(OpenClarification open, string text, UnderstandingContext context)
    {
        var heard = open.Heard?.ToString("0.###", CultureInfo.InvariantCulture);
        foreach (var joined in Joined(open, text, heard))
        {
            // What was read has to be named: "yes" to "185: what did you read there?" names nothing, and where one stands was known before.
            var understood = understand(joined, open.What == "fact" ? context with { Expected = null, Place = null } : context with { Expected = open.Fact ?? context.Expected });
            if (IsWhole(understood) && (open.What != "value" || IsOf(understood, open.Fact)))
            {
                return understood;
            }
        }

        return null;
    }

    /// <summary>True for an answer that leaves nothing open.</summary>
    public static bool IsWhole(Understood understood) =>
        understood is { Intent: Intent.Answer, Clarify: null } && (understood.Readings.Length > 0 || understood.Observations.Length > 0);

    // What was asked once more is completed by itself: "ok" before something else adds nothing to that.
    private static bool IsOf(Understood understood, Fact? fact) =>
        fact is null || (understood.Readings.All(r => r.Fact == fact) && understood.Observations.All(o => o.Fact == fact));

    public static ClarificationAsked Event(Understood understood, InboundText message, string? expected) => understood.Impossible is { } impossible
        ? new("range", impossible.Fact.Name, impossible.Value) { At = message.At, By = message.By, Text = message.Text.Trim() }
        : understood.OpenSpan is { } span ? new("span", span.Name, null) { At = message.At, By = message.By, Text = message.Text.Trim() }
        : Left(understood, message, expected);

    private static ClarificationAsked Left(Understood understood, InboundText message, string? expected) => new(
        understood.Clarify!.Value.ToString().ToLowerInvariant(),
        understood.OpenUnit?.Name ?? expected,
        Number().Match(understood.Unheard is [var unheard, ..] ? unheard : message.Text) is { Success: true } match ? double.Parse(match.Value, CultureInfo.InvariantCulture) : null)
    {
        At = message.At,
        By = message.By,
        Text = message.Text.Trim(),
    };

    private static IEnumerable<string> Joined(OpenClarification open, string text, string? heard)
    {
        switch (open.What)
        {
            case "unit":
                yield return $"{open.Text} {text}";
                if (heard is not null)
                {
                    yield return $"{heard} {text}";
                }

                break;
            case "fact":
                yield return $"{text} {open.Text}";
                if (heard is not null)
                {
                    yield return $"{text} {heard}";
                }

                break;
            case "sign":
                yield return $"{open.Text} {text}";
                yield return $"{text} {open.Text}";
                break;
            // What can not be is no part of what is said instead.
            case "range" or "span":
                break;

            // A bare "no" denies whatever stands behind it: "no", then "digits", are none of anything.
            default:
                if (ShortWords.Plain(open.Text) is not ("no" or "nope" or "nah"))
                {
                    yield return $"{open.Text} {text}";
                }

                break;
        }
    }

    [GeneratedRegex(@"-?\d+(\.\d+)?")]
    private static partial Regex Number();
}

/// <summary>A message's text with who said it and when.</summary>
internal readonly record struct InboundText(string Text, string By, DateTimeOffset At);
