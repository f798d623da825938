using System.Collections.Immutable;
using Assistant.Dialogue.Files;
using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Visits;
using Assistant.Records.Log;
using Assistant.Records.Reports.Model;
using Assistant.Records.Tests.Pictures;
using Assistant.Trade.Quantities;

namespace Assistant.Records.Tests.Support;

/// <summary>A whole visit, invented: a walk-in cooler short of refrigerant in winter, charged from one cylinder.</summary>
internal static class InventedVisit
{
    public const string PictureId = "5ac0";

    public static PhraseBook Phrases { get; } = PhraseBook.Load(
        Directory.GetFiles(Repository.PathOf("dialogs", "phrases"), "*.yaml").Order(StringComparer.Ordinal).Select(file => new DialogFile(Path.GetFileName(file), File.ReadAllText(file))));

    /// <summary>The log, numbered.</summary>
    public static IReadOnlyList<VisitEvent> Events { get; } = Numbered(
    [
        new VisitOpened("Invented Diner, Pine Street", "demo-diner-cooler", "us", ImmutableDictionary<string, string>.Empty) { At = At(0), By = "Robin" },
        Heard(1, "m-1", "box is 51, the other thermometer says 51 too"),
        Taken(1, "box_temperature", 51, "degF", "room"),
        Taken(1, "box_temperature_check", 51, "degF", "room"),
        Heard(4, "m-2", "refrigerant is 448A"),
        Said(4, "refrigerant", "R448A", "record"),
        Said(4, "coil_ice", "none", "room"),
        new CautionGiven("lock-out", "unit") { At = At(12), By = "Robin" },
        new CautionGiven("roof-weather", "unit") { At = At(12), By = "Robin" },
        Heard(15, "m-3", "20 outside, suction 24"),
        Taken(15, "ambient_temperature", 20, "degF", "unit"),
        Taken(15, "suction_pressure", 24, "psig", "unit"),
        Heard(17, "m-4", "head 711", by: "Kim"),
        new FactQuestioned("discharge_pressure", 711, "psig", null, "over what the gauge and the unit can show") { At = At(17), By = "Kim" },
        Heard(18, "m-5", "sorry 171", by: "Kim"),
        Taken(18, "discharge_pressure", 171, "psig", "unit", by: "Kim"),
        Said(19, "sight_glass", "flashing", "unit"),
        Taken(20, "suction_line_temperature_at_compressor", 60, "degF", "unit"),
        Taken(21, "liquid_line_temperature", 65, "degF", "unit"),
        new EventWithdrawn(19) { At = At(22), By = "Robin" },
        Taken(22, "liquid_line_temperature", 56, "degF", "unit"),
        Taken(23, "setpoint", 36, "degF", "room"),
        new VerdictGiven(
            "undercharge", "established", "The system is short of refrigerant.",
            ["The glass after the drier flashes.", "The head stands at 171 psig, its control holds 180.", "The superheat at the compressor is 51 °F; 20 are usual."])
        { At = At(24), By = "Robin" },
        new PictureTaken(PictureId, "oil at the return bend, top left", "leak-search") { At = At(40), By = "Kim" },
        new CylinderUsed("use-1", "INV-07", "supply", "charge", "R448A", 5_900, 14_200, 12_480, null) { At = At(75), By = "Robin" },
        new FaultMended("undercharge", ["sight_glass"]) { At = At(76), By = "Robin" },
        Heard(95, "m-6", "box is down to 38 now"),
        Taken(95, "box_temperature", 38, "degF", "room"),
        new FollowUpNoted(new(2026, 2, 11), "verify the repaired flare with soap film") { At = At(96), By = "Robin" },
        new VisitClosed("flare made anew, charged, pulling down") { At = At(100), By = "Robin" },
    ]);

    /// <summary>The log of another: a condenser packed with fluff, brushed, and the head read again, in bar.</summary>
    public static IReadOnlyList<VisitEvent> Cleaned(double head) => Numbered(
    [
        new VisitOpened("Invented Dairy", null, "metric", ImmutableDictionary<string, string>.Empty) { At = At(0), By = "Robin" },
        Said(1, "refrigerant", "R449A", "record"),
        Said(1, "application", "cooler", "record"),
        Taken(1, "design_condenser_split", 12, "K", "record"),
        Taken(2, "box_temperature", 9, "degC", "room"),
        Taken(2, "setpoint", 4, "degC", "room"),
        Said(3, "calling_for_cooling", "yes", "room"),
        Said(3, "evaporator_fans", "all", "room"),
        Taken(4, "ambient_temperature", 31, "degC", "unit"),
        Said(4, "compressor", "running", "unit"),
        Said(5, "condenser_fans", "all", "unit"),
        Said(5, "condenser_coil", "dirty", "unit"),
        Taken(6, "discharge_pressure", 24, "bar", "unit"),
        new FaultMended("condenser-airflow", ["condenser_coil", "condenser_fans", "discharge_pressure"]) { At = At(30), By = "Robin" },
        Said(31, "condenser_fans", "all", "unit"),
        Said(31, "condenser_coil", "clean", "unit"),
        Said(31, "sight_glass", "clear", "unit"),
        Taken(32, "discharge_pressure", head, "bar", "unit"),
        Taken(33, "suction_pressure", 4.2, "bar", "unit"),
        Taken(34, "liquid_line_temperature", 36, "degC", "unit"),
        Taken(35, "suction_line_temperature_at_compressor", 12, "degC", "unit"),
        new VisitClosed("put right: the condenser can not get rid of its heat") { At = At(40), By = "Robin" },
    ]);

    /// <summary>The report of such a log.</summary>
    public static VisitReport Report(IReadOnlyList<VisitEvent> events) => VisitReportBuilder.Build(
        "0198c0ffef", events, "Invented cold room", taken => new(taken.PictureId, taken.At, taken.By, taken.Caption, null, 0, 0), new("0123456789ab", events.Count, new string('a', 64)));

    /// <summary>The report of it, with the cycle of its readings beside the one the unit is built for.</summary>
    public static VisitReport Report(UnitSystem units = UnitSystem.Us)
    {
        var jpeg = Records.Pictures.PictureEncoder.Encode(InventedPictures.Marked(800, 600));
        return VisitReportBuilder.Build(
            "0198c0ffee", Events, "Walk-in cooler, unit on the flat roof",
            taken => new(taken.PictureId, taken.At, taken.By, taken.Caption, jpeg.Jpeg, jpeg.Width, jpeg.Height),
            new("0123456789ab", Events.Count, new string('a', 64))) with { Units = units };
    }

    /// <summary>The whole log as one append to an empty store, its picture kept under that id.</summary>
    public static Append Log(string visitId, string pictureId) =>
        new(visitId, 0, [.. Events.Select(e => e is PictureTaken taken ? taken with { PictureId = pictureId } : e)])
        {
            Opening = new((VisitOpened)Events[0], "team", "invented-thread", Replaces: null),
        };

    public static ReminderSet Reminder(DateTimeOffset at) => new(at.AddMinutes(20), "read the head again") { At = at, By = "Robin" };

    private static DateTimeOffset At(int minutes) => Invented.Morning.AddMinutes(minutes);

    private static MessageHeard Heard(int minutes, string id, string text, string by = "Robin") => new(id, "team", text) { At = At(minutes), By = by };

    private static FactTaken Taken(int minutes, string fact, double value, string unit, string place, string by = "Robin") =>
        new(fact, value, unit, null, place, null) { At = At(minutes), By = by };

    private static FactTaken Said(int minutes, string fact, string word, string place) => new(fact, null, null, word, place, null) { At = At(minutes), By = "Robin" };

    private static VisitEvent[] Numbered(VisitEvent[] events) => [.. events.Select((e, i) => e with { Number = i + 1 })];
}
