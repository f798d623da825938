using Assistant.Dialogue.Files;
using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Walks;
using Assistant.Trade.Cautions;
using Assistant.Trade.Facts;
using Assistant.Trade.Rules;

namespace Assistant.Dialogue.Tests.Walks;

public sealed class WalkLoaderTests
{
    private const string Good = """
        walk: test
        title: A test
        places: [room, unit]
        established: { go: act, except: [sensor-error] }
        stops:
          - stop: display
            place: room
            asks: box_temperature
            why: why.a
            next:
              - go: ice
          - stop: ice
            place: room
            asks: coil_ice
            why: why.a
            cautions: [ice-removal]
            next:
              - when: { coil_ice: blocked }
                go: clear
              - go: act
          - stop: clear
            place: room
            confirms: why.a
            why: why.a
            required: yes
            remind: 30 min
            next:
              - go: act
          - stop: act
            acts: yes
            why: why.a
            next:
              - go: end
          - stop: end
            ends: yes
        actions:
          coil-iced: { cautions: [lock-out], outdates: [coil_ice], follow-up-days: 1 }
        """;

    private static readonly PhraseBook Phrases = PhraseBook.Load(
    [
        new("phrases", """
            why.a: { full: "a", brief: "a" }
            ask.box_temperature: { full: "a", brief: "a" }
            ask.coil_ice: { full: "a", brief: "a" }
            act.coil-iced: { full: "a", brief: "a" }
            """),
    ]);

    [Fact]
    public void A_walk_is_read_with_its_stops_ways_and_actions()
    {
        var walk = Load(Good);

        Assert.Equal(["display", "ice", "clear", "act", "end"], walk.Stops.Select(s => s.Name));
        Assert.Equal((StopKind.Asks, FactCatalogue.CoilIce, "ask.coil_ice"), (walk.Stop("ice").Kind, walk.Stop("ice").Asks, walk.Stop("ice").Says));
        Assert.Equal([CautionCode.IceRemoval], walk.Stop("ice").Cautions.AsEnumerable());
        Assert.Equal((true, TimeSpan.FromMinutes(30)), (walk.Stop("clear").IsRequired, walk.Stop("clear").Remind));
        Assert.Equal(("act", true), (walk.ActsAt, walk.OwnBranch.Contains(FaultCode.SensorError)));
        Assert.Equal(("coil_ice", 1), (Assert.Single(walk.Action(FaultCode.CoilIced).Outdates), walk.Action(FaultCode.CoilIced).FollowUpDays));
    }

    [Theory]
    [InlineData("asks: box_temperature", "asks: box_temprature", DefectKind.UnknownFact, 8, "display")]
    [InlineData("asks: box_temperature", "asks: setpoint", DefectKind.UnknownPhrase, 8, "display")]
    [InlineData("confirms: why.a", "confirms: why.b", DefectKind.UnknownPhrase, 23, "clear")]
    [InlineData("cautions: [ice-removal]", "cautions: [ice-picks]", DefectKind.UnknownCaution, 16, "ice")]
    [InlineData("  - go: ice", "  - go: snow", DefectKind.UnknownLink, 11, "display")]
    [InlineData("go: act, except", "go: react, except", DefectKind.UnknownLink, 1, "established")]
    [InlineData("stop: clear", "stop: ice", DefectKind.DuplicateId, 21, "ice")]
    [InlineData("stop: clear", "stop: unit", DefectKind.DuplicateId, 21, "unit")]
    [InlineData("when: { coil_ice: blocked }", "when: { coil_ice: frozen }", DefectKind.UnknownChoice, 18, "ice")]
    [InlineData("when: { coil_ice: blocked }", "when: { coil_frost: blocked }", DefectKind.UnknownFact, 18, "ice")]
    [InlineData("when: { coil_ice: blocked }", "when: { at: cellar }", DefectKind.UnknownPlace, 18, "ice")]
    [InlineData("when: { coil_ice: blocked }", "when: { disagree: [box_temperature, setpoint], by: 2 }", DefectKind.BadValue, 18, "ice")]
    [InlineData("when: { coil_ice: blocked }", "when: { disagree: [box_temperature], by: 2 K }", DefectKind.BrokenYaml, 18, "ice")]
    [InlineData("when: { coil_ice: blocked }", "when: { skipped: nowhere }", DefectKind.UnknownLink, 18, "ice")]
    [InlineData("when: { coil_ice: blocked }", "when: blocked", DefectKind.BrokenYaml, 18, "ice")]
    [InlineData("remind: 30 min", "remind: half an hour", DefectKind.BadValue, 26, "clear")]
    [InlineData("follow-up-days: 1", "follow-up-days: soon", DefectKind.BadValue, 37, "coil-iced")]
    [InlineData("acts: yes", "acts: yes\n    colour: red", DefectKind.UnknownField, 31, "act")]
    [InlineData("place: room\n    confirms", "place: attic\n    confirms", DefectKind.UnknownPlace, 22, "clear")]
    [InlineData("title: A test", "", DefectKind.MissingField, 1, "walk")]
    [InlineData("places: [room, unit]\n", "", DefectKind.MissingField, 1, "places")]
    [InlineData("    required: yes\n", "    asks: coil_ice\n", DefectKind.MissingField, 21, "clear")]
    [InlineData("except: [sensor-error]", "except: [bad-luck]", DefectKind.BadValue, 4, "established")]
    [InlineData("  coil-iced: {", "  coil-hot: {", DefectKind.BadValue, 37, "actions")]
    [InlineData("outdates: [coil_ice]", "outdates: [coil_frost]", DefectKind.UnknownFact, 37, "coil-iced")]
    [InlineData("      - when: { coil_ice: blocked }\n        go: clear\n", "", DefectKind.UnreachableStop, 19, "clear")]
    [InlineData("      - go: act\n  - stop: clear", "  - stop: clear", DefectKind.MissingBranch, 18, "ice")]
    [InlineData("- go: end", "- go: ice", DefectKind.WayBack, 12, "ice")]
    [InlineData("stops:", "stop:", DefectKind.UnknownField, 5, "walk")]
    public void A_mistake_names_file_line_and_key(string right, string wrong, DefectKind kind, int line, string key)
    {
        var text = Good.Replace(right, wrong, StringComparison.Ordinal);
        Assert.NotEqual(Good, text);

        var thrown = Assert.Throws<DialogDataException>(() => Load(text));

        Assert.Contains((kind, "walks/test.yaml", line, key), thrown.Defects.Select(d => (d.Kind, d.File, d.Line, d.Key)));
    }

    [Fact]
    public void A_stop_from_which_no_way_leads_to_an_end_is_a_dead_end()
    {
        var text = Good.Replace("- go: end", "- go: act", StringComparison.Ordinal);

        var defects = Assert.Throws<DialogDataException>(() => Load(text)).Defects;

        Assert.Contains(defects, d => d is { Kind: DefectKind.DeadEnd, Key: "act" });
    }

    private static WalkDefinition Load(string text) => WalkLoader.Load(new("walks/test.yaml", text), Phrases);
}
