using System.Runtime.InteropServices;
using Assistant.Voice.Grammars;
using Assistant.Voice.Hearing;
using Assistant.Voice.Scoring.Kit;
using Assistant.Voice.Sound;

namespace Assistant.Voice.Tests.Hearing;

/// <summary>The few recordings of people that Debian's pocketsphinx-testdata carries, each with the grammar of its task. No technician's voice.</summary>
public sealed class HumanSpeechTests
{
    private static readonly string Folder = "/usr/share/pocketsphinx/test/data";

    [Fact]
    public void People_are_understood_with_a_grammar_that_matches_what_they_say()
    {
        Assert.True(Directory.Exists(Folder), "The recordings of people are missing; install them with: apt-get install pocketsphinx-testdata");
        const string Rank = "(ace | two | three | four | five | six | seven | eight | nine | ten | jack | queen | king | lady)";
        const string Suit = "(clubs | hearts | diamonds | spades)";
        var card = $"{Rank} [of] {Suit}";
        var cards = new SpeechGrammar("cards", $"({card} {card} {card} | {card} {card} | {card} | {Rank} {card} | {Rank} {Rank})");
        var move = new SpeechGrammar("move", "(go (forward | backward) (one | two | three | four | five | six | seven | eight | nine | ten) [meter | meters])");
        // The transcripts are those of the package (cards.transcription); the turtle's is that of its grammar's first rule.
        (string File, SpeechGrammar Grammar, string Said)[] clips =
        [
            ("cards/001.wav", cards, "ten of clubs"), ("cards/002.wav", cards, "four queen of clubs"), ("cards/003.wav", cards, "seven of clubs"),
            ("cards/004.wav", cards, "five five"), ("cards/005.wav", cards, "eight of spades four of clubs seven of hearts"), ("goforward.raw", move, "go forward ten meters"),
        ];
        var sounds = PronunciationDictionary.Load(VoiceParts.File("dialogs/voice/pronunciations.yaml"), File.ReadLines(AcousticModel.Installed.Dictionary));
        using var recogniser = SpeechRecogniser.Open(AcousticModel.Installed, sounds, cards.Words.Concat(move.Words), new() { LeastFit = double.NegativeInfinity });

        var heard = clips.Select(c => recogniser.Hear(Read(c.File), c.Grammar).Words).ToList();

        Assert.Equal(clips.Select(c => c.Said), heard);
    }

    private static PcmAudio Read(string file)
    {
        var path = Path.Combine(Folder, file);
        return file.EndsWith(".wav", StringComparison.Ordinal)
            ? WavFile.Read(path)
            : new(MemoryMarshal.Cast<byte, short>(File.ReadAllBytes(path)).ToArray(), PcmAudio.HearingRate);
    }
}
