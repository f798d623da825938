namespace Assistant.Channels.Text;

/// <summary>Who may text, by the number a message comes from.</summary>
public interface ITextPeople
{
    /// <summary>The name of the person the number speaks for, or null.</summary>
    Task<string?> NameOfAsync(string number, CancellationToken cancellation);

    /// <summary>True where the number asked for no messages.</summary>
    Task<bool> IsStoppedAsync(string number, CancellationToken cancellation);

    Task StopAsync(string number, CancellationToken cancellation);

    Task StartAsync(string number, CancellationToken cancellation);

    /// <summary>Binds the number to the person a code was given to.</summary>
    Task<TextEnrolment> EnrolAsync(string number, string text, CancellationToken cancellation);

    /// <summary>Puts the number's person on the open visit of that code.</summary>
    /// <returns>The visit, or null where there is none that the person may join.</returns>
    Task<string?> JoinAsync(string number, string code, CancellationToken cancellation);
}

/// <summary>What became of a text from a number that is not enrolled.</summary>
public abstract record TextEnrolment
{
    /// <summary>The text is no code.</summary>
    public sealed record NoCode : TextEnrolment;

    /// <summary>The code is not good, or too many came in.</summary>
    public sealed record Refused : TextEnrolment;

    /// <param name="IsStopped">True where the number asked for no messages before.</param>
    public sealed record Done(string Person, bool IsStopped) : TextEnrolment;
}
