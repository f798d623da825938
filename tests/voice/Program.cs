using Assistant.Voice.Scoring.Kit;
using Assistant.Voice.Scoring.Scores;

// Each word names a measure; without one, all are taken in turn. Results are Markdown on standard output (tests/voice/score keeps them).
Dictionary<string, Action<VoiceParts>> measures = new(StringComparer.Ordinal)
{
    ["calibration"] = CalibrationScore.Write,
    ["recognition"] = RecognitionScore.Write,
    ["fresh"] = FreshScore.Recognition,
    ["fresh-stored"] = FreshScore.Stored,
    ["live-calibration"] = LiveScore.Calibrate,
    ["live"] = LiveScore.Write,
    ["foreign"] = ForeignScore.Write,
    ["stored"] = StoredScore.Write,
    ["chosen"] = ChosenScore.Write,
    ["offers"] = OfferScore.Write,
    ["wake"] = WakeScore.Write,
    ["echo"] = EchoScore.Write,
    ["speed"] = SpeedScore.Write,
    ["calls"] = CallScore.Write,
};
var asked = args.Length == 0 ? [.. measures.Keys] : args;
if (asked.Except(measures.Keys).FirstOrDefault() is { } unknown)
{
    Console.Error.WriteLine($"no measure '{unknown}'; there are: {string.Join(", ", measures.Keys)}");
    return 2;
}

using var parts = new VoiceParts();
foreach (var name in asked)
{
    measures[name](parts);
}

return 0;
