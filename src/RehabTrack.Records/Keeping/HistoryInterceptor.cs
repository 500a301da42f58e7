using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.ChangeTracking;
using Microsoft.EntityFrameworkCore.Diagnostics;
using Microsoft.EntityFrameworkCore.Metadata;

namespace RehabTrack.Records.Keeping;

/// <summary>
/// Writes the history of every change: who, when, before, after. A new record is told whole, a changed one by the fields that
/// changed; readings are told with their examination.
/// </summary>
internal sealed class HistoryInterceptor : SaveChangesInterceptor
{
    private static readonly HashSet<string> Untold =
    [
        nameof(KeptRecord.Id),
        nameof(KeptRecord.PracticeId),
        nameof(KeptRecord.Version),
        nameof(HorseRecord.FoldedName),
        nameof(HorseRecord.Search),
        nameof(ExaminationRecord.WrittenAt),
        nameof(ExaminationRecord.Typed),
        nameof(ReadingRecord.ExaminationId),
        nameof(HorsePhotoRecord.Content),
        nameof(SecretRecord.SecretHash),
    ];

    public override async ValueTask<InterceptionResult<int>> SavingChangesAsync(
        DbContextEventData eventData,
        InterceptionResult<int> result,
        CancellationToken cancellationToken = default
    )
    {
        RecordsContext records = (RecordsContext)eventData.Context!;
        EntityEntry[] entries = [.. records.ChangeTracker.Entries().Where(IsWritten)];
        ILookup<Guid, EntityEntry> readings = entries
            .Where(entry => entry.Entity is ReadingRecord)
            .ToLookup(entry => ((ReadingRecord)entry.Entity).ExaminationId);
        foreach (EntityEntry entry in entries)
        {
            if (IsTold(entry.Entity.GetType()) && Told(entry, readings) is { } told)
            {
                KeptRecord kept = (KeptRecord)entry.Entity;
                records.Changes.Add(Line(records, KindOf(kept.GetType()), kept.Id, CaseOf(kept), told.Before, told.After));
            }
        }

        await ChainAsync(records, cancellationToken);
        return await base.SavingChangesAsync(eventData, result, cancellationToken);
    }

    /// <summary>The line that tells of a new record written past the context, with what else there is to tell of it.</summary>
    public static ChangeRecord Made(RecordsContext records, KeptRecord kept, params (string Field, object? Value)[] more)
    {
        Dictionary<string, object?> after = [];
        foreach (IProperty property in records.Model.FindEntityType(kept.GetType())!.GetProperties())
        {
            if (!Untold.Contains(property.Name) && property.GetGetter().GetClrValue(kept) is { } value)
            {
                after.Add(Camel(property.Name), value);
            }
        }

        foreach ((string field, object? value) in more)
        {
            after.Add(field, value);
        }

        return Line(records, KindOf(kept.GetType()), kept.Id, CaseOf(kept), null, after);
    }

    /// <summary>Whether changes of records of a type are told.</summary>
    public static bool IsTold(Type record) =>
        record.IsSubclassOf(typeof(KeptRecord))
        && record != typeof(ImportFileRecord)
        && record != typeof(PermitLookRecord)
        && record != typeof(TypedFormRecord);

    /// <summary>What a line calls records of a type.</summary>
    public static string KindOf(Type record) => record.Name[..^"Record".Length];

    /// <summary>A line of the trail by whoever writes now; not yet chained.</summary>
    public static ChangeRecord Line(
        RecordsContext records,
        string kind,
        Guid recordId,
        Guid? caseId,
        Dictionary<string, object?>? before,
        Dictionary<string, object?> after
    )
    {
        Writer writer = records.Writer ?? throw new InvalidOperationException("Who writes must be known before anything is written.");
        return new ChangeRecord
        {
            Id = NewId.At(writer.At),
            PracticeId = records.PracticeId,
            At = writer.At,
            PersonId = writer.PersonId,
            CommandId = writer.CommandId,
            UseCase = writer.UseCase,
            Kind = kind,
            RecordId = recordId,
            CaseId = caseId,
            BeforeJson = before is null ? null : JsonSerializer.Serialize(before, RecordJson.Options),
            AfterJson = JsonSerializer.Serialize(after, RecordJson.Options),
        };
    }

    private static async Task ChainAsync(RecordsContext records, CancellationToken cancellation)
    {
        ChangeRecord[] lines =
        [
            .. records
                .ChangeTracker.Entries<ChangeRecord>()
                .Where(entry => entry.State == EntityState.Added)
                .Select(entry => entry.Entity)
                .OrderBy(line => line.Id),
        ];
        if (lines.Length > 0)
        {
            TrailChain chain = await TrailChain.AtEndAsync(records, cancellation);
            Array.ForEach(lines, chain.Append);
        }
    }

    private static bool IsWritten(EntityEntry entry) => entry.State is EntityState.Added or EntityState.Modified or EntityState.Deleted;

    private static Guid? CaseOf(KeptRecord kept) =>
        kept switch
        {
            CaseRecord injury => injury.Id,
            ExaminationRecord examination => examination.CaseId,
            LinkWordRecord word => word.CaseId,
            BookingRecord booking => booking.CaseId,
            CallRecord call => call.CaseId,
            ReminderRecord reminder => reminder.CaseId,
            AcknowledgementRecord said => said.CaseId,
            CareRecord care => care.CaseId,
            ReportRecord report => report.CaseId,
            _ => null,
        };

    private static (Dictionary<string, object?>? Before, Dictionary<string, object?> After)? Told(
        EntityEntry entry,
        ILookup<Guid, EntityEntry> readings
    )
    {
        bool added = entry.State == EntityState.Added;
        Dictionary<string, object?> before = [];
        Dictionary<string, object?> after = [];
        Fields(entry, before, after);
        if (entry.Entity is ExaminationRecord examination)
        {
            Dictionary<string, object?> readingsBefore = [];
            Dictionary<string, object?> readingsAfter = [];
            foreach (EntityEntry reading in readings[examination.Id])
            {
                Reading(reading, readingsBefore, readingsAfter);
            }

            if (readingsBefore.Count > 0)
            {
                before.Add("readings", readingsBefore);
            }

            if (readingsAfter.Count > 0)
            {
                after.Add("readings", readingsAfter);
            }
        }

        return !added && before.Count == 0 && after.Count == 0 ? null : (added ? null : before, after);
    }

    private static void Reading(EntityEntry entry, Dictionary<string, object?> before, Dictionary<string, object?> after)
    {
        Dictionary<string, object?> was = [];
        Dictionary<string, object?> isNow = [];
        Fields(entry, was, isNow);
        if (was.Count == 0 && isNow.Count == 0)
        {
            return;
        }

        string id = ((ReadingRecord)entry.Entity).Id.ToString("D");
        foreach (string name in (string[])[nameof(ReadingRecord.Part), nameof(ReadingRecord.LevelCm), nameof(ReadingRecord.Zone)])
        {
            was[Camel(name)] = entry.Property(name).OriginalValue;
            isNow[Camel(name)] = entry.Property(name).CurrentValue;
        }

        if (entry.State != EntityState.Added)
        {
            before.Add(id, was);
        }

        if (entry.State != EntityState.Deleted)
        {
            after.Add(id, isNow);
        }
    }

    private static void Fields(EntityEntry entry, Dictionary<string, object?> before, Dictionary<string, object?> after)
    {
        foreach (PropertyEntry property in entry.Properties)
        {
            string name = property.Metadata.Name;
            if (Untold.Contains(name))
            {
                continue;
            }

            object? was = entry.State == EntityState.Added ? null : property.OriginalValue;
            object? isNow = entry.State == EntityState.Deleted ? null : property.CurrentValue;
            if (!Equals(was, isNow))
            {
                before[Camel(name)] = was;
                after[Camel(name)] = isNow;
            }
        }
    }

    private static string Camel(string name) => JsonNamingPolicy.CamelCase.ConvertName(name);
}
