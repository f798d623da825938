using Assistant.Records.Storage.Rows;

namespace Assistant.Records.People;

internal static class PersonRows
{
    public static Person ToPerson(this PersonRow row) => new(row.Id, row.FirmId, row.Name, (PersonRoles)row.Roles, row.RevokedAt is not null);
}
