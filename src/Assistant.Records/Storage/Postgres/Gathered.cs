namespace Assistant.Records.Storage.Postgres;

/// <summary>
/// Questions that are asked while others are under way go to the database together, as the next one. None is answered by what was read before it
/// was asked, and one that is asked alone does not wait.
/// </summary>
/// <param name="ask">Answers the questions, in their order.</param>
internal sealed class Gathered<TQuestion, TAnswer>(Func<IReadOnlyList<TQuestion>, Task<IReadOnlyList<TAnswer>>> ask)
{
    private const int Most = 256;

    private readonly Lock gathering = new();
    private readonly Queue<Asked> waiting = new();
    private bool isAsking;

    public Task<TAnswer> AskAsync(TQuestion question, CancellationToken cancellation)
    {
        var asked = new Asked(question, new(TaskCreationOptions.RunContinuationsAsynchronously));
        lock (gathering)
        {
            waiting.Enqueue(asked);
            if (isAsking)
            {
                return asked.Answer.Task.WaitAsync(cancellation);
            }

            isAsking = true;
        }

        _ = AskWhileAnyWaitsAsync();
        return asked.Answer.Task.WaitAsync(cancellation);
    }

    private async Task AskWhileAnyWaitsAsync()
    {
        while (Next() is { Count: > 0 } together)
        {
            try
            {
                var answers = await ask(together.ConvertAll(a => a.Question));
                foreach (var (asked, answer) in together.Zip(answers))
                {
                    asked.Answer.SetResult(answer);
                }
            }
            catch (Exception failure)
            {
                together.ForEach(asked => asked.Answer.TrySetException(failure));
            }
        }
    }

    private List<Asked> Next()
    {
        lock (gathering)
        {
            List<Asked> next = [];
            while (next.Count < Most && waiting.TryDequeue(out var asked))
            {
                next.Add(asked);
            }

            isAsking = next.Count > 0;
            return next;
        }
    }

    private sealed record Asked(TQuestion Question, TaskCompletionSource<TAnswer> Answer);
}
