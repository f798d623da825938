namespace Assistant.Records.People;

/// <summary>What a person may be on a visit.</summary>
[Flags]
public enum PersonRoles
{
    None = 0,

    /// <summary>At the equipment: reads, works, confirms what is safe.</summary>
    OnSite = 1,

    /// <summary>Elsewhere, with advice and readings from the record.</summary>
    Helping = 2,

    /// <summary>Sends people out, enrols them, reads reports.</summary>
    Office = 4,
}

/// <summary>The roles in the spelling of the log and of the commands.</summary>
public static class PersonRoleNames
{
    private static readonly (PersonRoles Role, string Name)[] Known = [(PersonRoles.OnSite, "on-site"), (PersonRoles.Helping, "helping"), (PersonRoles.Office, "office")];

    public static IEnumerable<string> All => Known.Select(k => k.Name);

    /// <summary>The roles named, in a fixed order.</summary>
    public static IEnumerable<string> Names(this PersonRoles roles) => Known.Where(k => roles.HasFlag(k.Role)).Select(k => k.Name);

    /// <summary>The role of that name, or null.</summary>
    public static PersonRoles? Find(string name) => Known.Where(k => k.Name == name).Select(k => (PersonRoles?)k.Role).FirstOrDefault();
}
