using Assistant.Dialogue.Questions;
using Assistant.Dialogue.Tests.Turns;
using Assistant.Dialogue.Tests.Understanding;
using Assistant.Dialogue.Understanding;
using Assistant.Trade.Rules;
using Xunit.Abstractions;

namespace Assistant.Dialogue.Tests.Transcripts;

public sealed class TranscriptTests(ITestOutputHelper output)
{
    private static readonly Understander Understander = LexiconFiles.Understander;
    private static readonly QuestionAnswerer Answerer = new(Conversation.Book);

    public static TheoryData<string> Files =>
        [.. Directory.GetFiles(Path.Combine(RepositoryFiles.Root, "tests/transcripts"), "*.txt").Select(f => Path.GetFileName(f)!).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Files))]
    public void A_conversation_goes_as_it_is_written(string file)
    {
        var player = new TranscriptPlayer(Conversation.Engine(Understander.Understand, Assessor.Assess, Answerer.Answer));

        player.Play(Transcript.Read(RepositoryFiles.Read("tests/transcripts/" + file).Text));

        output.WriteLine(player.Played);
        Assert.True(player.Misses.Count == 0, string.Join('\n', player.Misses) + "\n\n" + player.Played);
    }
}
