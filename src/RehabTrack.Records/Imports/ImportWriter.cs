using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Examinations;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Imports;

/// <summary>
/// Writes a plan: first what is amended, then what is new, in chunks that the context forgets again, so that a large file needs little
/// memory. New cases are analysed from what is at hand, side by side.
/// </summary>
internal sealed class ImportWriter(RecordsSession session, IProgress<int>? progress)
{
    private const int CasesPerChunk = 100;
    private readonly RecordsContext records = session.Records;
    private readonly AnalysisSettings settings = SettingsStore.Of(session.Practice);
    private readonly Dictionary<PlannedHorse, Guid> horses = [];
    private readonly List<ImportedCase> imported = [];
    private int cases;
    private int examinations;
    private int readings;

    public async Task<ImportResult> WriteAsync(IReadOnlyList<PlannedCase> plan, string? reason, CancellationToken cancellation)
    {
        PlannedCase[] wanted = [.. plan.Where(planned => !planned.Choice.Skip)];
        int amended = await AmendAsync(wanted, reason, cancellation);
        await records.SaveChangesAsync(cancellation);
        records.ChangeTracker.Clear();
        records.TellReadings = false;
        records.ChangeTracker.AutoDetectChangesEnabled = false;
        foreach (PlannedCase[] chunk in wanted.Chunk(CasesPerChunk))
        {
            List<(CaseRecord Case, List<(ExaminationRecord Record, List<ReadingRecord> Readings)> Examinations)> made = [];
            foreach (PlannedCase planned in chunk)
            {
                Add(planned, made);
            }

            CaseSummaryRecord[] summaries =
            [
                .. made.AsParallel()
                    .AsOrdered()
                    .WithCancellation(cancellation)
                    .Select(injury =>
                        SummaryRenewal.Compute(
                            CaseRows.ToCourse(
                                injury.Case,
                                [
                                    .. injury.Examinations.Select(examination =>
                                        CaseRows.ToExamination(examination.Record, examination.Readings)
                                    ),
                                ]
                            ),
                            [],
                            injury.Case.Id,
                            session.Practice.Id,
                            settings,
                            session.Now,
                            session.Today
                        )
                    ),
            ];
            records.CaseSummaries.AddRange(summaries);
            await records.SaveChangesAsync(cancellation);
            records.ChangeTracker.Clear();
            progress?.Report(readings);
        }

        records.ChangeTracker.AutoDetectChangesEnabled = true;
        records.TellReadings = true;
        return new ImportResult(horses.Count, cases, examinations, readings, amended, imported);
    }

    private async Task<int> AmendAsync(IEnumerable<PlannedCase> wanted, string? reason, CancellationToken cancellation)
    {
        int amended = 0;
        foreach (PlannedCase planned in wanted)
        {
            if (planned.Kept is null)
            {
                continue;
            }

            if (planned.Choice.TakeCaseFields && planned.Differences.Count > 0)
            {
                await TakeFieldsAsync(planned.Kept.Case.Id, planned.File.Course, cancellation);
            }

            foreach (PlannedExamination examination in planned.Examinations.Where(examination => examination.Amend))
            {
                ExaminationRecord kept = await records.Examinations.FirstAsync(record => record.Id == examination.Kept!.Id, cancellation);
                List<ReadingRecord> rows = await ExaminationStore.ReadingsAsync(records, kept.Id, cancellation);
                await ExaminationVersions.AmendAsync(session, kept, rows, examination.Amended!, reason!, cancellation);
                amended++;
            }
        }

        return amended;
    }

    private async Task TakeFieldsAsync(Guid caseId, CaseCourse file, CancellationToken cancellation)
    {
        CaseRecord injury = await records.Cases.FirstAsync(record => record.Id == caseId, cancellation);
        injury.Limb = file.Limb == Rechecks.Anatomy.Limb.Unknown ? injury.Limb : file.Limb;
        injury.Structure = file.Structure == Rechecks.Anatomy.Structure.Unknown ? injury.Structure : file.Structure;
        injury.Landmark = file.Landmark ?? injury.Landmark;
        injury.Onset = file.Onset ?? injury.Onset;
        session.Touch(caseId);
    }

    private void Add(
        PlannedCase planned,
        List<(CaseRecord Case, List<(ExaminationRecord Record, List<ReadingRecord> Readings)> Examinations)> made
    )
    {
        Guid horseId = planned.Horse?.Id ?? Horse(planned.NewHorse!);
        CaseRecord? injury = planned.Kept?.Case;
        bool isNew = injury is null;
        injury ??= Case(planned, horseId);
        List<(ExaminationRecord Record, List<ReadingRecord> Readings)> added = [];
        foreach (
            PlannedExamination examination in planned.Examinations.Where(examination => examination.Standing == ExaminationStanding.New)
        )
        {
            added.Add(Examination(injury.Id, examination.File));
        }

        if (isNew)
        {
            made.Add((injury, added));
        }
        else if (added.Count > 0)
        {
            session.Touch(injury.Id);
        }

        imported.Add(new ImportedCase(planned.File.Label, injury.Id, horseId));
    }

    private Guid Horse(PlannedHorse planned)
    {
        if (horses.TryGetValue(planned, out Guid made))
        {
            return made;
        }

        HorseRecord horse = new()
        {
            Id = session.NewId(),
            Name = planned.Name,
            FoldedName = Folded.Of(planned.Name),
            Search = Horses.HorseSearch.Of(planned.Name, planned.Microchip),
            Microchip = planned.Microchip,
            BirthDate = planned.BirthDate,
            BirthYear = planned.BirthDate?.Year,
        };
        records.Horses.Add(horse);
        horses.Add(planned, horse.Id);
        return horse.Id;
    }

    private CaseRecord Case(PlannedCase planned, Guid horseId)
    {
        CaseRecord injury = new()
        {
            Id = session.NewId(),
            HorseId = horseId,
            Limb = planned.File.Course.Limb,
            Structure = planned.File.Course.Structure,
            Landmark = planned.File.Course.Landmark,
            Onset = planned.File.Course.Onset,
            Reinjury = planned.File.Course.Reinjury,
            TargetFraction = planned.File.Course.TargetFraction,
            ImportLabel = planned.File.Label,
        };
        records.Cases.Add(injury);
        cases++;
        return injury;
    }

    private (ExaminationRecord Record, List<ReadingRecord> Readings) Examination(Guid caseId, Examination file)
    {
        ExaminationRecord examination = new()
        {
            Id = session.NewId(),
            CaseId = caseId,
            Date = file.Date,
            Name = file.Name,
            Stance = file.Stance,
            State = ExaminationState.History,
            Examiner = file.Examiner,
            Transducer = file.Transducer,
            EnteredById = session.Person.Id,
            WrittenAt = session.Now,
        };
        List<ReadingRecord> rows =
        [
            .. file.Readings.Select(
                (reading, position) =>
                    ReadingMap.New(session.NewId(), session.Practice.Id, examination.Id, position, ReadingMap.ToDraft(reading))
            ),
        ];
        records.Examinations.Add(examination);
        records.Readings.AddRange(rows);
        examinations++;
        readings += rows.Count;
        return (examination, rows);
    }
}
