using Assistant.Dialogue.Files;
using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Tests.Turns;
using Assistant.Dialogue.Visits;
using Assistant.Dialogue.Walks;
using CsCheck;

namespace Assistant.Dialogue.Tests.Walks;

public sealed class WalkLibraryTests
{
    private const string Opening = """
        walk: warm-box
        title: First
        places: [room]
        stops:
          - stop: look
            confirms: p.a
            why: p.a
            next:
              - go: end
          - stop: end
            ends: yes
            closes: yes
        """;

    private const string Other = """
        walk: vacuum
        title: Second
        begins: [pull a vacuum]
        needs: [refrigerant]
        places: [unit]
        stops:
          - stop: pump
            judges: vacuum-depth
            asks: vacuum
            why: p.a
            again: [not-yet, on-water]
            next:
              - go: found
          - stop: found
            chooses: found-it
            options: { nut: ["(flare|the) nut"], braze: [] }
            says: p.a
            why: p.a
            next:
              - when: { chosen: { found-it: nut } }
                back: pump
              - go: end
          - stop: end
            ends: yes
            walk: warm-box
        """;

    private static readonly PhraseBook Phrases = PhraseBook.Load(
    [
        new("phrases", string.Join('\n', new[]
        {
            "p.a", "ask.vacuum", "ask.refrigerant", "word.nut", "word.braze", "offer.warm-box", "judged.vacuum-depth.deep-enough", "judged.vacuum-depth.not-yet", "judged.vacuum-depth.on-water",
        }.Select(key => $$"""{{key}}: { full: "{{key}} said", brief: "{{key}}" }"""))),
    ]);

    public static TheoryData<string> Walks => [.. Conversation.Walks.All.Select(w => w.Name)];

    [Fact]
    public void A_walk_is_added_by_its_file_alone()
    {
        var library = Load(Opening, Other);

        Assert.Equal(["vacuum", "warm-box"], library.All.Select(w => w.Name));
        Assert.Equal("needs-refrigerant", library.Find("vacuum")!.First.Name);
        Assert.Equal("warm-box", library.Machine("no longer there").Walk.Name);
    }

    [Theory]
    [InlineData("judges: vacuum-depth", "judges: vacuum-deep", DefectKind.UnknownJudgement, 8, "pump")]
    [InlineData("again: [not-yet, on-water]", "again: [not-yet, wet]", DefectKind.UnknownOutcome, 11, "pump")]
    [InlineData("      - go: found\n", "      - when: { judged: not-yet }\n        go: found\n", DefectKind.MissingBranch, 7, "pump")]
    [InlineData("chosen: { found-it: nut }", "chosen: { found-it: bolt }", DefectKind.UnknownChoice, 20, "found")]
    [InlineData("chosen: { found-it: nut }", "chosen: { seen-it: nut }", DefectKind.UnknownWalk, 20, "found")]
    [InlineData("chosen: { found-it: nut }", "finished: charge", DefectKind.UnknownWalk, 20, "found")]
    [InlineData("chosen: { found-it: nut }", "judged: { found: nut }", DefectKind.UnknownLink, 20, "found")]
    [InlineData("nut: [\"(flare|the) nut\"], braze: []", "nut: []", DefectKind.MissingField, 14, "found")]
    [InlineData("braze: []", "braze: [the nut]", DefectKind.DuplicateId, 16, "found")]
    [InlineData("braze: []", "weld: []", DefectKind.UnknownPhrase, 16, "found")]
    [InlineData("back: pump", "back: end", DefectKind.UnknownLink, 20, "found")]
    [InlineData("back: pump", "go: pump", DefectKind.WayBack, 7, "pump")]
    [InlineData("asks: vacuum\n    why", "asks: vacuum\n    since: nowhere\n    why", DefectKind.UnknownLink, 7, "pump")]
    [InlineData("walk: warm-box", "walk: cold-box", DefectKind.UnknownWalk, 23, "end")]
    [InlineData("needs: [refrigerant]", "needs: [coolant]", DefectKind.UnknownFact, 4, "needs")]
    public void A_mistake_names_file_line_and_key(string right, string wrong, DefectKind kind, int line, string key)
    {
        var text = Other.Replace(right, wrong, StringComparison.Ordinal);
        Assert.NotEqual(Other, text);

        var thrown = Assert.Throws<DialogDataException>(() => Load(Opening, text));

        Assert.Contains((kind, "walks/1.yaml", line, key), thrown.Defects.Select(d => (d.Kind, d.File, d.Line, d.Key)));
    }

    [Fact]
    public void Two_walks_of_one_name_and_a_missing_opening_walk_are_refused()
    {
        Assert.Contains(Assert.Throws<DialogDataException>(() => Load(Opening, Opening)).Defects, d => d.Kind == DefectKind.DuplicateId);
        Assert.Contains(Assert.Throws<DialogDataException>(() => Load(Other.Replace("    walk: warm-box\n", "", StringComparison.Ordinal))).Defects, d => d is { Kind: DefectKind.MissingField, Key: "warm-box" });
    }

    [Theory]
    [MemberData(nameof(Walks))]
    public void Whatever_is_confirmed_left_out_or_passed_anew_every_walk_stands_at_one_of_its_stops(string name)
    {
        var (machine, at) = (Conversation.Walks.Machine(name), Conversation.Start);
        var stops = machine.Walk.Stops.Select(s => s.Name).ToArray();
        var events = Gen.OneOf(
            Gen.OneOf(stops).Select(stop => (VisitEvent)new StopSkipped(name, stop) { At = at, By = "ada" }),
            Gen.OneOf(stops).Select(stop => (VisitEvent)new StopConfirmed(name, stop) { At = at, By = "ada" }),
            Gen.OneOf(stops).Select(stop => (VisitEvent)new StopReached(name, stop, "unit") { At = at, By = "ada" }),
            Gen.OneOf(stops).Select(stop => (VisitEvent)new StopsReopened(name, machine.Walk.Onward(stop)) { At = at, By = "ada" }),
            Gen.Select(Gen.OneOf("vacuum", "micron"), Gen.Double[1, 5000]).Select((_, v) => (VisitEvent)new FactTaken("vacuum", v, "micron", null, "unit", null) { At = at, By = "ada" }),
            Gen.Double[1, 300].Select(v => (VisitEvent)new FactTaken("test_pressure", v, "psig", null, "unit", null) { At = at, By = "ada" }));

        events.Array[0, 40].Sample(
            log =>
            {
                var state = VisitState.Fold([new WalkStarted(name) { At = at, By = "ada" }, .. log]);
                var here = machine.Locate(new(machine.Walk, state, Conversation.Nothing, at));
                Assert.Contains(here.Stop.Name, stops);
            },
            iter: 500);
    }

    private static WalkLibrary Load(params string[] texts) => WalkLibrary.Load(texts.Select((text, i) => new DialogFile($"walks/{i}.yaml", text)), Phrases);
}
