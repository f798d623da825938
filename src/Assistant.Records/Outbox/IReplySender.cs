namespace Assistant.Records.Outbox;

/// <summary>Gives replies to a channel.</summary>
public interface IReplySender
{
    string Channel { get; }

    /// <summary>True for a room of several people: replies that follow each other within moments go out there as one.</summary>
    bool Groups(string conversation) => false;

    /// <summary>Makes one attempt.</summary>
    Task<Sent> SendAsync(OutboxItem item, CancellationToken cancellation);
}

/// <summary>How an attempt ended.</summary>
public abstract record Sent;

/// <summary>The channel has it and goes on by itself.</summary>
public sealed record HandedOver : Sent;

/// <summary>It did not get there; another attempt may.</summary>
public sealed record NotSent(string Trouble) : Sent;

/// <summary>The channel will never take it.</summary>
public sealed record Refused(string Trouble) : Sent;

/// <summary>Nobody knows: the line broke after it was sent and before the answer.</summary>
public sealed record InDoubt(string Trouble) : Sent;
