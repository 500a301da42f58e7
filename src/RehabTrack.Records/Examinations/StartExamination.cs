using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Examinations;

/// <summary>Starts a draft from the levels of the last examination; old values would pull the measurer and are left out.</summary>
public sealed class StartExamination(RecordsAccess access) : Command<StartExaminationInput, Saved>(access)
{
    private protected override Right Right => Right.EnterExaminations;

    private protected override async Task<Outcome<Saved>> WriteAsync(
        RecordsSession session,
        StartExaminationInput input,
        CancellationToken cancellation
    )
    {
        RecordsContext records = session.Records;
        if (!await records.Cases.AnyAsync(record => record.Id == input.CaseId && record.ArchivedAt == null, cancellation))
        {
            return RecordProblems.NotFound("caseId");
        }

        Checks checks = new();
        string? name = checks.Line("name", input.Name);
        string? outside = checks.Line("outsidePractice", input.OutsidePractice);
        if (checks.Any)
        {
            return checks.Problems;
        }

        ExaminationRecord? last = await records
            .Examinations.AsNoTracking()
            .Where(record => record.CaseId == input.CaseId && record.ArchivedAt == null && record.State != ExaminationState.Draft)
            .OrderByDescending(record => record.Date)
            .ThenByDescending(record => record.Id)
            .FirstOrDefaultAsync(cancellation);
        ExaminationRecord draft = new()
        {
            Id = session.NewId(),
            CaseId = input.CaseId,
            Date = input.Date ?? session.Today,
            Name = name,
            Stance = input.Stance ?? last?.Stance ?? Stance.WeightBearing,
            State = ExaminationState.Draft,
            Examiner = outside is null && session.Person.Role == Role.Vet ? session.Person.Name : null,
            Transducer = outside is null ? last?.Transducer : null,
            Zones = input.FromLast ? last?.Zones : null,
            OutsidePractice = outside,
            EnteredById = session.Person.Id,
            WrittenAt = session.Now,
        };
        records.Examinations.Add(draft);
        if (last is not null && input.FromLast)
        {
            List<ReadingRecord> read = await ExaminationStore.ReadingsAsync(records, last.Id, cancellation);
            int position = 0;
            foreach (ReadingDraft row in Levels(read))
            {
                records.Readings.Add(ReadingMap.New(session.NewId(), session.Practice.Id, draft.Id, position++, row));
            }
        }

        await records.SaveChangesAsync(cancellation);
        return new Saved(draft.Id, draft.Version);
    }

    /// <summary>Each level once a part, plane and lesion, whoever measured it and however often.</summary>
    private static IEnumerable<ReadingDraft> Levels(IEnumerable<ReadingRecord> read) =>
        read.Select(ReadingMap.ToDraft)
            .Where(reading => reading is { Part: not null, Level: not null })
            .GroupBy(reading => (reading.Part, reading.Level, reading.Plane, reading.Lesion))
            .Select(group => group.First())
            .OrderBy(reading => reading.Part)
            .ThenBy(reading => reading.Level)
            .ThenBy(reading => reading.Plane)
            .ThenBy(reading => reading.Lesion, StringComparer.Ordinal)
            .Select(reading => new ReadingDraft
            {
                Part = reading.Part,
                LevelCm = reading.LevelCm,
                ZoneScheme = reading.ZoneScheme,
                Zone = reading.Zone,
                Plane = reading.Plane,
                Lesion = reading.Lesion,
                Role = reading.Role,
                EchogenicityScale = reading.EchogenicityScale,
                FibreAlignmentScale = reading.FibreAlignmentScale,
            });
}
