using System.Collections.Concurrent;
using System.Diagnostics;
using Assistant.Voice.Sound;

namespace Assistant.Voice.Scoring.Kit;

/// <summary>A speech program playing the technician. Voices: flite slt, awb, rms, kal16; festival kal and slt_hts; espeak-ng en-us, en-gb ...</summary>
/// <param name="Program">flite, festival or espeak-ng.</param>
public sealed record SyntheticVoice(string Program, string Voice)
{
    private static readonly ConcurrentDictionary<(SyntheticVoice, string), PcmAudio> Spoken = new();

    /// <summary>Voices the thresholds were set with, and no figure is reported for.</summary>
    public static IReadOnlyList<SyntheticVoice> ForCalibration { get; } = [new("flite", "rms"), new("flite", "kal16"), new("espeak-ng", "en-us+m3")];

    /// <summary>Voices the figures are measured with.</summary>
    public static IReadOnlyList<SyntheticVoice> ForScoring { get; } =
        [new("flite", "slt"), new("flite", "awb"), new("festival", "kal_diphone"), new("festival", "cmu_us_slt_arctic_hts")];

    /// <summary>The hard set: formant synthesis, unlike the speech the acoustic model was trained on.</summary>
    public static IReadOnlyList<SyntheticVoice> Hard { get; } = [new("espeak-ng", "en-us"), new("espeak-ng", "en-gb+f3")];

    public string Name => $"{Program} {Voice}";

    /// <summary>The words as this voice says them, with silence around; the same every time.</summary>
    public PcmAudio Say(string words) => Spoken.GetOrAdd((this, words), _ => Synthesised(words).At(PcmAudio.HearingRate));

    private PcmAudio Synthesised(string words)
    {
        var file = Path.GetTempFileName();
        try
        {
            (string Program, string[] Arguments, string? Input) call = Program switch
            {
                "flite" => ("flite", ["-voice", Voice, "-t", words, "-o", file], null),
                "festival" => ("text2wave", ["-eval", $"(voice_{Voice})", "-o", file], words),
                _ => ("espeak-ng", ["-v", Voice, "-w", file, words], null),
            };
            var start = new ProcessStartInfo(call.Program, call.Arguments) { RedirectStandardInput = true, RedirectStandardError = true, RedirectStandardOutput = true };
            using var process = Start(start);
            process.StandardInput.Write(call.Input);
            process.StandardInput.Close();
            process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            return new FileInfo(file).Length > 0 ? WavFile.Read(file) : throw new InvalidOperationException($"{Name} said nothing: is the voice installed? {process.StandardError.ReadToEnd()}");
        }
        finally
        {
            File.Delete(file);
        }
    }

    private static Process Start(ProcessStartInfo call)
    {
        try
        {
            return Process.Start(call) ?? throw new InvalidOperationException($"{call.FileName} does not start");
        }
        catch (System.ComponentModel.Win32Exception)
        {
            var package = call.FileName == "text2wave" ? "festival festvox-kallpc16k festvox-us-slt-hts" : call.FileName;
            throw new InvalidOperationException($"{call.FileName} plays the technician and is missing; install it with: apt-get install {package}");
        }
    }
}
