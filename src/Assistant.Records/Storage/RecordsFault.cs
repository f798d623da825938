namespace Assistant.Records.Storage;

/// <summary>What keeps the records from being read or written.</summary>
public enum RecordsFault
{
    /// <summary>Another program holds the file.</summary>
    Locked,

    /// <summary>There is no room left on the disk.</summary>
    DiskFull,

    /// <summary>The file or its folder may not be written.</summary>
    ReadOnly,

    /// <summary>The file can not be opened or read, or is damaged.</summary>
    Unreadable,

    /// <summary>The file is a database, but not one of these records.</summary>
    Foreign,

    /// <summary>The database does not answer.</summary>
    Unreachable,

    /// <summary>The file was written by a later release.</summary>
    Newer,

    /// <summary>The same place was written by others again and again.</summary>
    Contended,

    /// <summary>A value handed in can not be taken.</summary>
    Refused,
}
