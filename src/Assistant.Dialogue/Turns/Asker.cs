using System.Collections.Immutable;
using System.Globalization;
using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Understanding.Analysis;
using Assistant.Dialogue.Visits;
using Assistant.Dialogue.Walks;
using Assistant.Trade;
using Assistant.Trade.Facts;
using Assistant.Trade.Rules;

namespace Assistant.Dialogue.Turns;

/// <summary>The one next thing that is asked, with the words and units that answer it.</summary>
internal sealed record Asked(Phrase? Ask, ImmutableArray<string> Choices, Fact? Fact)
{
    public static Asked Nothing { get; } = new(null, [], null);
}

/// <summary>Puts the one next thing into words: what is open first, otherwise what the walk's stop wants.</summary>
internal sealed class Asker(PhraseBook book)
{
    private const int MostPossible = 3;

    /// <param name="through">The walk that leads through the repair the visit stands at, or null.</param>
    public Asked For(VisitState state, WalkStop stop, Assessment assessment, Finding? leader, string? through)
    {
        if (state.Outcome is not null || state.IsPaused)
        {
            return Asked.Nothing;
        }

        if (state.IsCloseAsked)
        {
            return new(book.Say("close.ask", state.Units), ["yes", "no"], null);
        }

        if (state.Questioned.Values.MinBy(q => q.Number) is { } questioned)
        {
            return new(book.Say("question.confirm", state.Units), ["yes", "no"], questioned.Value.Fact);
        }

        if (DisputeSettler.Open(state) is var (disputed, dispute))
        {
            return DisputeSettler.Ask(book, state, disputed, dispute);
        }

        if (state is { Cylinders.Asks: { } lacking, Clarification: null })
        {
            return Cylinder(state, lacking);
        }

        if (state is { Offered: { } offered, Clarification: null })
        {
            return new(book.Say("offer." + offered, state.Units), ["yes", "later"], null);
        }

        if (RequestTaker.Due(state, stop) is { } request)
        {
            return RequestTaker.Plainly(book, state, request);
        }

        var fact = FactAt(state);
        return state.Clarification is { } open && !IsStale(state, open) ? Clarify(state, open, fact) : Beside(state, stop, ForStop(state, stop, assessment, leader, fact, through));
    }

    /// <summary>The fact the visit now asks for, by its stop, or null.</summary>
    public static Fact? FactAt(VisitState state) => state.About is { } about ? FactCatalogue.Find(about) : null;

    // "I did not get that" is said of the message that was not got. After another one, which was, the question stands again by its own words;
    // where a unit or a sign lacks, what was heard is still waited for.
    private static bool IsStale(VisitState state, OpenClarification open) => open.What is "value" or "range" or "span" && open.Number < state.LastMessage
        && (open.Fact is null || open.Fact == FactAt(state));

    // Where the stop waits for a word, what somebody asked for is said after it.
    private Asked Beside(VisitState state, WalkStop stop, Asked asked) => asked.Ask is { } ask && RequestTaker.Beside(state, stop) is { } request
        ? asked with { Ask = ask.Then(RequestTaker.Question(book, state, request, "request.beside").Ask!) }
        : asked;

    private Asked ForStop(VisitState state, WalkStop stop, Assessment assessment, Finding? leader, Fact? fact, string? through) => stop.Kind switch
    {
        StopKind.Asks or StopKind.Proves or StopKind.Judges when fact is not null =>
            new(book.Say(stop.Says.Length > 0 ? stop.Says : "ask." + fact.Name, state.Units), fact.Choices, fact),
        StopKind.Confirms => new(book.Say(stop.Says, state.Units), ["ok"], null),
        StopKind.Chooses => new(book.Say(stop.Says, state.Units), [.. stop.Choice!.Options.Select(o => book.Word(o.Name))], null),
        StopKind.Acts when FaultInHand.At(state, stop, leader) is { } fault && through is not null =>
            new(book.Say("act." + Codes.Of(fault), state.Units).Then(book.Say("offer." + through, state.Units)), ["yes", "done", "later"], null),
        StopKind.Acts when FaultInHand.At(state, stop, leader) is { } fault =>
            new(book.Say("act." + Codes.Of(fault), state.Units), fault == FaultCode.NoFault ? ["ok"] : ["done", "later"], null),
        StopKind.Acts when WalkView.IsResting(assessment) => new(book.Say("act.rightly-resting", state.Units, Start(state)), ["ok"], null),
        StopKind.Acts when assessment.Next is { } next =>
            new(Open(state, assessment, book.Say("act.read-next", state.Units, ("fact", next.Name))), ["done"], null),
        StopKind.Acts => new(Open(state, assessment, book.Say("act.not-enough-evidence", state.Units)), ["done"], null),
        _ => Asked.Nothing,
    };

    // Where no fault leads, those that are left are named.
    private Phrase Open(VisitState state, Assessment assessment, Phrase ask)
    {
        var possible = assessment.Findings.Where(f => f.Standing != Standing.RuledOut && f.Code != FaultCode.NotEnoughEvidence).Take(MostPossible).Select(f => book.Word("fault." + Codes.Of(f.Code))).ToList();
        return possible.Count == 0 ? ask : book.Say("verdict.open", state.Units, ("faults", string.Join("; ", possible))).Then(ask);
    }

    // From where on the control must call.
    private static ReasonPart Start(VisitState state) =>
        ("start", (state.Facts.Temperature(FactCatalogue.Setpoint) ?? new(0)) + (state.Facts.Difference(FactCatalogue.Differential) ?? new(0)));

    private Asked Cylinder(VisitState state, string lacking)
    {
        ImmutableArray<string> choices = lacking switch
        {
            "purpose" => OwnChoices.Purposes,
            "water-capacity" => OwnChoices.Unreadable,
            _ => [],
        };
        var key = lacking == "before" && state.Cylinders.Current is { IsUse: false } ? "weigh" : lacking;
        return new(book.Say("ask.cylinder." + key, state.Units), choices, CylinderTaker.Expected(state));
    }

    // What can not be is named with what could be.
    private Phrase Range(VisitState state, Fact fact, string heard)
    {
        var (low, high) = PhysicalLimits.Of(fact, FactUnits.For(fact, state.Units)[0]);
        var question = ("question", book.Say("ask." + fact.Name, state.Units).Full);
        return high is { } most
            ? book.Say("clarify.range", state.Units, ("heard", heard), ("fact", fact.Name), ("low", low), ("high", most), question)
            : book.Say("clarify.range-low", state.Units, ("heard", heard), ("fact", fact.Name), ("low", low), question);
    }

    private Asked Clarify(VisitState state, OpenClarification open, Fact? fact)
    {
        var heard = open.Heard is { } number ? number.ToString("0.###", CultureInfo.InvariantCulture) : open.Text;
        var named = open.Fact ?? fact;
        var ask = (open.What, named) switch
        {
            ("unit", { } known) => book.Say("clarify.unit-fact", state.Units, ("fact", known.Name), ("heard", heard)),
            ("value", { IsQuantity: false } choice) => book.Say("clarify.choice", state.Units, ("question", book.Say("ask." + choice.Name, state.Units).Full)),
            ("fact", _) when open.Heard is null => book.Say("clarify.fact-words", state.Units, ("heard", heard)),
            ("span", { } quantity) => book.Say("clarify.span", state.Units, ("question", book.Say("ask." + quantity.Name, state.Units).Full)),
            ("range", { } quantity) => Range(state, quantity, heard),
            ("value", { } quantity) => book.Say("clarify.value-of", state.Units, ("question", book.Say("ask." + quantity.Name, state.Units).Full)),
            ("value", _) => book.Say("clarify.value", state.Units),
            _ => book.Say("clarify." + open.What, state.Units, ("heard", heard)),
        };
        ImmutableArray<string> choices = open.What switch
        {
            "unit" when named is not null => [.. FactUnits.For(named, state.Units).Select(u => u.Symbol)],
            "sign" => OwnChoices.Signs,
            "value" or "range" or "span" when named is not null => named.Choices,
            _ => [],
        };
        return new(ask, choices, named);
    }
}
