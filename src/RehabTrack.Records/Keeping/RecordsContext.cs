using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using RehabTrack.Records.Accounts;

namespace RehabTrack.Records.Keeping;

/// <summary>The database. Every set is filtered to the practice that was entered; without one, it is empty.</summary>
internal sealed class RecordsContext(DbContextOptions<RecordsContext> options) : DbContext(options)
{
    private const int NameLength = 200;
    private const int CodeLength = 64;

    /// <summary>The practice whose records can be seen; nobody's until <see cref="Enter"/>.</summary>
    public Guid PracticeId { get; private set; }

    /// <summary>Who writes; null while only reading.</summary>
    public Writer? Writer { get; private set; }

    public DbSet<PracticeRecord> Practices => Set<PracticeRecord>();

    public DbSet<PersonRecord> People => Set<PersonRecord>();

    public DbSet<YardRecord> Yards => Set<YardRecord>();

    public DbSet<HorseRecord> Horses => Set<HorseRecord>();

    public DbSet<HorsePhotoRecord> HorsePhotos => Set<HorsePhotoRecord>();

    public DbSet<HorseLinkRecord> HorseLinks => Set<HorseLinkRecord>();

    public DbSet<CaseRecord> Cases => Set<CaseRecord>();

    public DbSet<ExaminationRecord> Examinations => Set<ExaminationRecord>();

    public DbSet<ReadingRecord> Readings => Set<ReadingRecord>();

    public DbSet<ExaminationVersionRecord> ExaminationVersions => Set<ExaminationVersionRecord>();

    public DbSet<LinkWordRecord> LinkWords => Set<LinkWordRecord>();

    public DbSet<ChangeRecord> Changes => Set<ChangeRecord>();

    public DbSet<AppliedCommandRecord> AppliedCommands => Set<AppliedCommandRecord>();

    public DbSet<ImportMappingRecord> ImportMappings => Set<ImportMappingRecord>();

    public DbSet<ImportFileRecord> ImportFiles => Set<ImportFileRecord>();

    public DbSet<RepeatTracingRecord> RepeatTracings => Set<RepeatTracingRecord>();

    public DbSet<BookingRecord> Bookings => Set<BookingRecord>();

    public DbSet<CallRecord> Calls => Set<CallRecord>();

    public DbSet<CoverRecord> Covers => Set<CoverRecord>();

    public DbSet<FeedRecord> Feeds => Set<FeedRecord>();

    public DbSet<ShareLinkRecord> ShareLinks => Set<ShareLinkRecord>();

    public DbSet<ReportRecord> Reports => Set<ReportRecord>();

    public DbSet<ReminderRecord> Reminders => Set<ReminderRecord>();

    public DbSet<CaseSummaryRecord> CaseSummaries => Set<CaseSummaryRecord>();

    public DbSet<ExerciseEntryRecord> ExerciseEntries => Set<ExerciseEntryRecord>();

    public DbSet<PlanDraftRecord> PlanDrafts => Set<PlanDraftRecord>();

    public DbSet<TypedFormRecord> TypedForms => Set<TypedFormRecord>();

    public DbSet<DecisionRecord> Decisions => Set<DecisionRecord>();

    public DbSet<ConcernRecord> Concerns => Set<ConcernRecord>();

    public DbSet<CareRecord> Care => Set<CareRecord>();

    public DbSet<PermitLookRecord> PermitLooks => Set<PermitLookRecord>();

    public DbSet<AcknowledgementRecord> Acknowledgements => Set<AcknowledgementRecord>();

    public DbSet<SignInAccount> Accounts => Set<SignInAccount>();

    public DbSet<SessionRecord> Sessions => Set<SessionRecord>();

    public DbSet<InvitationRecord> Invitations => Set<InvitationRecord>();

    public DbSet<SignedFiguresRecord> SignedFigures => Set<SignedFiguresRecord>();

    /// <summary>Takes the context for one practice; a pooled context is entered anew each time.</summary>
    public RecordsContext Enter(Guid practiceId, Writer? writer)
    {
        PracticeId = practiceId;
        Writer = writer;
        return this;
    }

    protected override void ConfigureConventions(ModelConfigurationBuilder configurationBuilder)
    {
        configurationBuilder.Properties<DateTime>().HaveConversion<UtcInstantConverter>();
        configurationBuilder.Properties<Enum>().HaveConversion<string>().HaveMaxLength(CodeLength);
    }

    /// <summary>
    /// No index that a search uses begins with the practice: an id, a case or a name tells far more, and without statistics SQLite
    /// takes an index with one column that is equal for as good as any other.
    /// </summary>
    protected override void OnModelCreating(ModelBuilder modelBuilder)
    {
        modelBuilder.HasDbFunction(typeof(JsonText).GetMethod(nameof(JsonText.Without))!).HasName("json_remove").IsBuiltIn();
        modelBuilder.Entity<PracticeRecord>(practice =>
        {
            Keep(practice, "Practice");
            practice.HasQueryFilter(record => record.Id == PracticeId);
            practice.Property(record => record.Name).HasMaxLength(NameLength);
        });
        modelBuilder.Entity<PersonRecord>(person =>
        {
            Keep(person, "Person");
            person.HasQueryFilter(record => record.PracticeId == PracticeId);
            person.Property(record => record.Name).HasMaxLength(NameLength);
            person.HasIndex(record => record.FoldedName);
        });
        modelBuilder.Entity<YardRecord>(yard =>
        {
            Keep(yard, "Yard");
            yard.HasQueryFilter(record => record.PracticeId == PracticeId);
            yard.Property(record => record.Name).HasMaxLength(NameLength);
            yard.HasIndex(record => record.FoldedName);
        });
        modelBuilder.Entity<HorseRecord>(horse =>
        {
            Keep(horse, "Horse");
            horse.HasQueryFilter(record => record.PracticeId == PracticeId);
            horse.Property(record => record.Name).HasMaxLength(NameLength);
            horse.HasIndex(record => record.FoldedName);
            horse.HasIndex(record => record.Microchip);
            horse.HasOne<YardRecord>().WithMany().HasForeignKey(record => record.YardId).OnDelete(DeleteBehavior.Restrict);
        });
        modelBuilder.Entity<HorsePhotoRecord>(photo =>
        {
            Keep(photo, "HorsePhoto");
            photo.HasQueryFilter(record => record.PracticeId == PracticeId);
            photo.HasOne<HorseRecord>().WithMany().HasForeignKey(record => record.HorseId).OnDelete(DeleteBehavior.Restrict);
        });
        modelBuilder.Entity<HorseLinkRecord>(link =>
        {
            Keep(link, "HorseLink");
            link.HasQueryFilter(record => record.PracticeId == PracticeId);
            link.HasOne<HorseRecord>().WithMany().HasForeignKey(record => record.HorseId).OnDelete(DeleteBehavior.Restrict);
            link.HasOne<PersonRecord>().WithMany().HasForeignKey(record => record.PersonId).OnDelete(DeleteBehavior.Restrict);
        });
        modelBuilder.Entity<CaseRecord>(injury =>
        {
            Keep(injury, "Case");
            injury.HasQueryFilter(record => record.PracticeId == PracticeId);
            injury.HasOne<HorseRecord>().WithMany().HasForeignKey(record => record.HorseId).OnDelete(DeleteBehavior.Restrict);
            injury.HasOne<PersonRecord>().WithMany().HasForeignKey(record => record.ResponsibleVetId).OnDelete(DeleteBehavior.Restrict);
            injury.HasIndex(record => record.RecheckIntervalDays).HasFilter("\"RecheckIntervalDays\" IS NOT NULL");
        });
        modelBuilder.Entity<ExaminationRecord>(examination =>
        {
            Keep(examination, "Examination");
            examination.HasQueryFilter(record => record.PracticeId == PracticeId);
            examination.HasOne<CaseRecord>().WithMany().HasForeignKey(record => record.CaseId).OnDelete(DeleteBehavior.Restrict);
            examination.HasIndex(record => new { record.CaseId, record.Date });
            examination.HasIndex(record => record.State);
        });
        modelBuilder.Entity<ReadingRecord>(reading =>
        {
            reading.ToTable("Reading").HasKey(record => record.Id);
            reading.Property(record => record.Id).ValueGeneratedNever();
            reading.HasQueryFilter(record => record.PracticeId == PracticeId);
            reading.HasOne<ExaminationRecord>().WithMany().HasForeignKey(record => record.ExaminationId).OnDelete(DeleteBehavior.Restrict);
        });
        modelBuilder.Entity<ExaminationVersionRecord>(version =>
        {
            version.ToTable("ExaminationVersion").HasKey(record => record.Id);
            version.Property(record => record.Id).ValueGeneratedNever();
            version.HasQueryFilter(record => record.PracticeId == PracticeId);
            version.HasOne<ExaminationRecord>().WithMany().HasForeignKey(record => record.ExaminationId).OnDelete(DeleteBehavior.Restrict);
            version.HasIndex(record => new { record.ExaminationId, record.Number }).IsUnique();
        });
        modelBuilder.Entity<SignedFiguresRecord>(figures =>
        {
            figures.ToTable("SignedFigures").HasKey(record => record.Id);
            figures.Property(record => record.Id).ValueGeneratedNever();
            figures.HasQueryFilter(record => record.PracticeId == PracticeId);
            figures.HasOne<CaseRecord>().WithMany().HasForeignKey(record => record.CaseId).OnDelete(DeleteBehavior.Restrict);
            figures.HasOne<ExaminationRecord>().WithMany().HasForeignKey(record => record.ExaminationId).OnDelete(DeleteBehavior.Restrict);
            figures.HasIndex(record => new { record.ExaminationId, record.Number }).IsUnique();
        });
        modelBuilder.Entity<LinkWordRecord>(word =>
        {
            Keep(word, "LinkWord");
            word.HasQueryFilter(record => record.PracticeId == PracticeId);
            word.HasOne<CaseRecord>().WithMany().HasForeignKey(record => record.CaseId).OnDelete(DeleteBehavior.Restrict);
        });
        modelBuilder.Entity<ChangeRecord>(change =>
        {
            change.ToTable("Change").HasKey(record => record.Id);
            change.Property(record => record.Id).ValueGeneratedNever();
            change.HasQueryFilter(record => record.PracticeId == PracticeId);
            change.HasIndex(record => new { record.CaseId, record.At });
            change.HasIndex(record => record.RecordId);
            change.HasIndex(record => new { record.PersonId, record.Number });
            // It holds part of the rows, so that it serves only a search by number.
            change.HasIndex(record => new { record.PracticeId, record.Number }).IsUnique().HasFilter("\"Number\" IS NOT NULL");
        });
        modelBuilder.Entity<AppliedCommandRecord>(command =>
        {
            command.ToTable("AppliedCommand").HasKey(record => new { record.PracticeId, record.CommandId });
            command.HasQueryFilter(record => record.PracticeId == PracticeId);
        });
        modelBuilder.Entity<ImportMappingRecord>(mapping =>
        {
            Keep(mapping, "ImportMapping");
            mapping.HasQueryFilter(record => record.PracticeId == PracticeId);
            mapping.HasIndex(record => new { record.PracticeId, record.Fingerprint }).IsUnique();
        });
        modelBuilder.Entity<ImportFileRecord>(file =>
        {
            Keep(file, "ImportFile");
            file.HasQueryFilter(record => record.PracticeId == PracticeId);
        });
        modelBuilder.Entity<RepeatTracingRecord>(tracing =>
        {
            Keep(tracing, "RepeatTracing");
            tracing.HasQueryFilter(record => record.PracticeId == PracticeId);
            tracing.Property(record => record.Subject).HasMaxLength(NameLength);
        });
        modelBuilder.Entity<ExerciseEntryRecord>(entry =>
        {
            Keep(entry, "ExerciseEntry");
            entry.HasQueryFilter(record => record.PracticeId == PracticeId);
            entry.HasOne<HorseRecord>().WithMany().HasForeignKey(record => record.HorseId).OnDelete(DeleteBehavior.Restrict);
            entry.HasIndex(record => new { record.HorseId, record.Number }).IsUnique();
        });
        modelBuilder.Entity<PlanDraftRecord>(draft =>
        {
            Keep(draft, "PlanDraft");
            draft.HasQueryFilter(record => record.PracticeId == PracticeId);
            draft.HasOne<HorseRecord>().WithMany().HasForeignKey(record => record.HorseId).OnDelete(DeleteBehavior.Restrict);
            draft.HasIndex(record => record.HorseId).IsUnique();
        });
        modelBuilder.Entity<TypedFormRecord>(form =>
        {
            Keep(form, "TypedForm");
            form.HasQueryFilter(record => record.PracticeId == PracticeId);
            form.HasOne<HorseRecord>().WithMany().HasForeignKey(record => record.HorseId).OnDelete(DeleteBehavior.Restrict);
            form.HasIndex(record => new
                {
                    record.HorseId,
                    record.Form,
                    record.PersonId,
                })
                .IsUnique();
        });
        modelBuilder.Entity<DecisionRecord>(decision =>
        {
            Keep(decision, "Decision");
            decision.HasQueryFilter(record => record.PracticeId == PracticeId);
            decision.HasOne<HorseRecord>().WithMany().HasForeignKey(record => record.HorseId).OnDelete(DeleteBehavior.Restrict);
            decision
                .HasOne<ExerciseEntryRecord>()
                .WithOne()
                .HasForeignKey<DecisionRecord>(record => record.EntryId)
                .OnDelete(DeleteBehavior.Restrict);
        });
        modelBuilder.Entity<ConcernRecord>(concern =>
        {
            Keep(concern, "Concern");
            concern.HasQueryFilter(record => record.PracticeId == PracticeId);
            concern.HasOne<HorseRecord>().WithMany().HasForeignKey(record => record.HorseId).OnDelete(DeleteBehavior.Restrict);
            concern
                .HasOne<ExerciseEntryRecord>()
                .WithOne()
                .HasForeignKey<ConcernRecord>(record => record.EntryId)
                .OnDelete(DeleteBehavior.Restrict);
        });
        modelBuilder.Entity<CareRecord>(care =>
        {
            Keep(care, "Care");
            care.Property(record => record.Kind).HasConversion<string>();
            care.Property(record => record.Grade).HasConversion<string>();
            care.HasQueryFilter(record => record.PracticeId == PracticeId);
            care.HasOne<HorseRecord>().WithMany().HasForeignKey(record => record.HorseId).OnDelete(DeleteBehavior.Restrict);
            care.HasOne<CaseRecord>().WithMany().HasForeignKey(record => record.CaseId).OnDelete(DeleteBehavior.Restrict);
        });
        modelBuilder.Entity<PermitLookRecord>(look =>
        {
            Keep(look, "PermitLook");
            look.HasQueryFilter(record => record.PracticeId == PracticeId);
            look.HasOne<HorseRecord>().WithMany().HasForeignKey(record => record.HorseId).OnDelete(DeleteBehavior.Restrict);
            look.HasIndex(record => new { record.HorseId, record.PersonId }).IsUnique();
        });
        modelBuilder.Entity<AcknowledgementRecord>(said =>
        {
            Keep(said, "Acknowledgement");
            said.HasQueryFilter(record => record.PracticeId == PracticeId);
            said.Property(record => record.Finding).HasMaxLength(CodeLength);
            said.Property(record => record.FindingKey).HasMaxLength(NameLength);
            said.HasOne<HorseRecord>().WithMany().HasForeignKey(record => record.HorseId).OnDelete(DeleteBehavior.Restrict);
            said.HasOne<CaseRecord>().WithMany().HasForeignKey(record => record.CaseId).OnDelete(DeleteBehavior.Restrict);
        });
        modelBuilder.Entity<BookingRecord>(booking =>
        {
            Keep(booking, "Booking");
            booking.HasQueryFilter(record => record.PracticeId == PracticeId);
            booking.Property(record => record.Place).HasMaxLength(NameLength);
            booking.HasOne<CaseRecord>().WithMany().HasForeignKey(record => record.CaseId).OnDelete(DeleteBehavior.Restrict);
            booking.HasIndex(record => record.Date);
        });
        modelBuilder.Entity<CallRecord>(call =>
        {
            Keep(call, "Call");
            call.HasQueryFilter(record => record.PracticeId == PracticeId);
            call.HasOne<CaseRecord>().WithMany().HasForeignKey(record => record.CaseId).OnDelete(DeleteBehavior.Restrict);
        });
        modelBuilder.Entity<CoverRecord>(cover =>
        {
            Keep(cover, "Cover");
            cover.HasQueryFilter(record => record.PracticeId == PracticeId);
            cover.HasOne<PersonRecord>().WithMany().HasForeignKey(record => record.VetId).OnDelete(DeleteBehavior.Restrict);
            cover.HasOne<PersonRecord>().WithMany().HasForeignKey(record => record.CoveringVetId).OnDelete(DeleteBehavior.Restrict);
        });
        modelBuilder.Entity<FeedRecord>(feed =>
        {
            Keep(feed, "Feed");
            feed.HasQueryFilter(record => record.PracticeId == PracticeId);
            feed.Property(record => record.SecretHash).HasMaxLength(CodeLength);
            feed.HasIndex(record => record.SecretHash).IsUnique();
        });
        modelBuilder.Entity<ShareLinkRecord>(share =>
        {
            Keep(share, "ShareLink");
            share.HasQueryFilter(record => record.PracticeId == PracticeId);
            share.Property(record => record.SecretHash).HasMaxLength(CodeLength);
            share.HasIndex(record => record.SecretHash).IsUnique();
            share.HasOne<PersonRecord>().WithMany().HasForeignKey(record => record.PersonId).OnDelete(DeleteBehavior.Restrict);
            share.HasOne<HorseRecord>().WithMany().HasForeignKey(record => record.HorseId).OnDelete(DeleteBehavior.Restrict);
            share.HasOne<HorseLinkRecord>().WithMany().HasForeignKey(record => record.HorseLinkId).OnDelete(DeleteBehavior.Restrict);
        });
        modelBuilder.Entity<ReportRecord>(report =>
        {
            Keep(report, "Report");
            report.HasQueryFilter(record => record.PracticeId == PracticeId);
            report.HasOne<CaseRecord>().WithMany().HasForeignKey(record => record.CaseId).OnDelete(DeleteBehavior.Restrict);
            report.HasOne<HorseRecord>().WithMany().HasForeignKey(record => record.HorseId).OnDelete(DeleteBehavior.Restrict);
            report.HasOne<PersonRecord>().WithMany().HasForeignKey(record => record.PersonId).OnDelete(DeleteBehavior.Restrict);
            report.HasOne<HorseLinkRecord>().WithMany().HasForeignKey(record => record.HorseLinkId).OnDelete(DeleteBehavior.Restrict);
        });
        modelBuilder.Entity<SignInAccount>(account =>
        {
            account.ToTable("Account").HasKey(record => record.PersonId);
            account.Property(record => record.PersonId).ValueGeneratedNever();
            account.Property(record => record.Version).IsConcurrencyToken();
            account.HasQueryFilter(record => record.PracticeId == PracticeId);
            account.Property(record => record.SignInName).HasMaxLength(NameLength);
            account.Property(record => record.FoldedSignInName).HasMaxLength(NameLength);
            account.HasIndex(record => record.FoldedSignInName).IsUnique();
            account
                .HasOne<PersonRecord>()
                .WithOne()
                .HasForeignKey<SignInAccount>(record => record.PersonId)
                .OnDelete(DeleteBehavior.Restrict);
        });
        modelBuilder.Entity<SessionRecord>(session =>
        {
            session.ToTable("Session").HasKey(record => record.Id);
            session.Property(record => record.Id).ValueGeneratedNever();
            session.HasQueryFilter(record => record.PracticeId == PracticeId);
            session.Property(record => record.Browser).HasMaxLength(NameLength);
            session.HasIndex(record => record.PersonId);
            session.HasOne<PersonRecord>().WithMany().HasForeignKey(record => record.PersonId).OnDelete(DeleteBehavior.Restrict);
        });
        modelBuilder.Entity<InvitationRecord>(invitation =>
        {
            Keep(invitation, "Invitation");
            invitation.HasQueryFilter(record => record.PracticeId == PracticeId);
            invitation.Property(record => record.SecretHash).HasMaxLength(CodeLength);
            invitation.HasIndex(record => record.SecretHash).IsUnique();
            invitation.HasOne<PersonRecord>().WithMany().HasForeignKey(record => record.PersonId).OnDelete(DeleteBehavior.Restrict);
        });
        modelBuilder.Entity<ReminderRecord>(reminder =>
        {
            Keep(reminder, "Reminder");
            reminder.HasQueryFilter(record => record.PracticeId == PracticeId);
            reminder.HasOne<CaseRecord>().WithMany().HasForeignKey(record => record.CaseId).OnDelete(DeleteBehavior.Restrict);
        });
        modelBuilder.Entity<CaseSummaryRecord>(summary =>
        {
            summary.ToTable("CaseSummary").HasKey(record => record.CaseId);
            summary.Property(record => record.CaseId).ValueGeneratedNever();
            summary.HasQueryFilter(record => record.PracticeId == PracticeId);
            summary
                .HasOne<CaseRecord>()
                .WithOne()
                .HasForeignKey<CaseSummaryRecord>(record => record.CaseId)
                .OnDelete(DeleteBehavior.Restrict);
            summary.HasIndex(record => new { record.LookRank, record.LastExamination });
            summary.HasIndex(record => new { record.LastSigned, record.LastExamination });
        });
    }

    private static void Keep<T>(EntityTypeBuilder<T> entity, string table)
        where T : KeptRecord
    {
        entity.ToTable(table).HasKey(record => record.Id);
        entity.Property(record => record.Id).ValueGeneratedNever();
        entity.Property(record => record.Version).IsConcurrencyToken();
    }
}
