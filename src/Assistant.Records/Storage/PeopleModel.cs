using Assistant.Records.Storage.Rows;
using Microsoft.EntityFrameworkCore;

namespace Assistant.Records.Storage;

/// <summary>The tables of firms, people and phones.</summary>
internal static class PeopleModel
{
    public static void Build(ModelBuilder model)
    {
        model.Entity<FirmRow>(firm =>
        {
            firm.ToTable("firms").HasKey(f => f.Id);
            firm.HasIndex(f => f.Name).IsUnique();
        });
        model.Entity<PersonRow>(person =>
        {
            person.ToTable("people").HasKey(p => p.Id);
            person.HasIndex(p => p.NameKey).IsUnique();
            person.HasIndex(p => p.FirmId);
            person.HasOne<FirmRow>().WithMany().HasForeignKey(p => p.FirmId).OnDelete(DeleteBehavior.Restrict);
        });
        model.Entity<EnrolmentCodeRow>(code =>
        {
            code.ToTable("enrolment_codes").HasKey(c => c.Digest);
            code.HasIndex(c => c.PersonId).IsUnique();
            code.HasOne<PersonRow>().WithMany().HasForeignKey(c => c.PersonId).OnDelete(DeleteBehavior.Restrict);
        });
        model.Entity<EnrolmentTryRow>(attempt =>
        {
            attempt.ToTable("enrolment_tries").HasKey(t => t.Id);
            attempt.HasIndex(t => t.At);
        });
        model.Entity<ChannelIdentityRow>(identity =>
        {
            identity.ToTable("channel_identities").HasKey(i => new { i.Channel, i.Address });
            identity.HasIndex(i => i.PersonId);
            identity.HasOne<PersonRow>().WithMany().HasForeignKey(i => i.PersonId).OnDelete(DeleteBehavior.Restrict);
        });
        model.Entity<StoppedAddressRow>().ToTable("stopped_addresses").HasKey(s => s.AddressDigest);
        model.Entity<VisitAccessRow>(access =>
        {
            access.ToTable("visit_access").HasKey(a => a.VisitId);
            access.HasIndex(a => a.Code);
            access.HasIndex(a => a.FirmId);
            access.HasOne<VisitRow>().WithMany().HasForeignKey(a => a.VisitId).OnDelete(DeleteBehavior.Restrict);
            access.HasOne<FirmRow>().WithMany().HasForeignKey(a => a.FirmId).OnDelete(DeleteBehavior.Restrict);
        });
        model.Entity<VisitMemberRow>(member =>
        {
            member.ToTable("visit_members").HasKey(m => new { m.VisitId, m.PersonId });
            member.HasIndex(m => m.PersonId);
            member.HasOne<VisitRow>().WithMany().HasForeignKey(m => m.VisitId).OnDelete(DeleteBehavior.Restrict);
        });
    }
}
