using Assistant.Records.Storage.Rows;

namespace Assistant.Records.Log;

/// <summary>What one transaction of the log reads and writes at every turn. Rows go in in the order they are added; whatever is found was found in the same transaction.</summary>
internal interface ILogTables
{
    /// <summary>The visit, held until the transaction ends; null where there is none.</summary>
    Task<VisitRow?> VisitAsync(string id);

    /// <summary>The reply a message got as JSON, or null where it was never applied.</summary>
    Task<string?> ReplyAsync(string channel, string messageId);

    /// <summary>The visit a conversation is on, or null.</summary>
    Task<string?> VisitOfAsync(string channel, string conversation);

    Task AddAsync(VisitRow visit);

    Task AddAsync(EventRow happened);

    Task AddAsync(MessageRow message);

    /// <summary>Puts the conversation on the visit that begins, whatever it was on before; the room it is, where it is one, has been told nothing of it yet.</summary>
    Task TurnAsync(string channel, string conversation, string visitId);

    /// <summary>The visit's head moved on.</summary>
    Task MovedAsync(VisitRow visit);

    /// <summary>Ends one append: what it changed beside these tables is there for the next one.</summary>
    Task EndAsync();
}
