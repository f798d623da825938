namespace Assistant.Records.Tests.Support;

/// <summary>The databases that the records are kept in.</summary>
public enum Store
{
    Sqlite,
    Postgres,
}
