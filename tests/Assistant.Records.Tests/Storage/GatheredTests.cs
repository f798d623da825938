using Assistant.Records.Storage.Postgres;

namespace Assistant.Records.Tests.Storage;

public sealed class GatheredTests
{
    private readonly List<(int[] Questions, TaskCompletionSource Answered)> sent = [];
    private readonly Gathered<int, string> gathered;

    public GatheredTests() => gathered = new(async questions =>
    {
        var answered = new TaskCompletionSource();
        sent.Add(([.. questions], answered));
        await answered.Task;
        return [.. questions.Select(q => $"answer {q}")];
    });

    [Fact]
    public async Task A_question_asked_alone_goes_at_once_and_alone()
    {
        var first = Ask(1);
        Assert.Equal([1], Assert.Single(sent).Questions);
        sent[0].Answered.SetResult();
        Assert.Equal("answer 1", await first);

        var second = Ask(2);
        await SentAsync(2);
        Assert.Equal([2], sent[1].Questions);
        sent[1].Answered.SetResult();
        Assert.Equal("answer 2", await second);
    }

    [Fact]
    public async Task What_is_asked_while_one_is_under_way_goes_together_next_and_each_gets_its_own_answer()
    {
        var asked = Enumerable.Range(1, 5).Select(q => Ask(q)).ToList();
        Assert.Equal([1], Assert.Single(sent).Questions);
        sent[0].Answered.SetResult();
        await SentAsync(2);
        Assert.Equal([2, 3, 4, 5], sent[1].Questions);
        Assert.False(asked[1].IsCompleted);
        sent[1].Answered.SetResult();
        Assert.Equal(["answer 1", "answer 2", "answer 3", "answer 4", "answer 5"], await Task.WhenAll(asked));
    }

    [Fact]
    public async Task A_failure_is_told_to_those_who_asked_together_and_to_nobody_after_them()
    {
        var (first, second, third) = (Ask(1), Ask(2), Ask(3));
        sent[0].Answered.SetResult();
        await SentAsync(2);
        var later = Ask(4);
        sent[1].Answered.SetException(new TimeoutException("the line is down"));
        await SentAsync(3);
        sent[2].Answered.SetResult();

        Assert.Equal("answer 1", await first);
        await Assert.ThrowsAsync<TimeoutException>(() => second);
        await Assert.ThrowsAsync<TimeoutException>(() => third);
        Assert.Equal("answer 4", await later);
    }

    [Fact]
    public async Task One_who_waits_no_longer_keeps_no_other_from_the_answer()
    {
        using var gone = new CancellationTokenSource();
        var impatient = Ask(1, gone.Token);
        var patient = Ask(2);
        await gone.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => impatient);
        sent[0].Answered.SetResult();
        await SentAsync(2);
        sent[1].Answered.SetResult();
        Assert.Equal("answer 2", await patient);
    }

    private Task<string> Ask(int question, CancellationToken cancellation = default) => gathered.AskAsync(question, cancellation);

    private async Task SentAsync(int count)
    {
        for (var i = 0; sent.Count < count && i < 500; i++)
        {
            await Task.Delay(10);
        }

        Assert.Equal(count, sent.Count);
    }
}
