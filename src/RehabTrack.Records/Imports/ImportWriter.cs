using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Examinations;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Imports;

/// <summary>
/// Writes a plan: first what is amended, then what is new, through prepared statements, so that a large
/// file needs little time and memory; the history tells a new examination with the number of its readings. New cases are analysed from what is at hand, side by side.
/// </summary>
internal sealed class ImportWriter(RecordsSession session, IProgress<int>? progress)
{
    private const int CasesPerChunk = 100;
    private readonly RecordsContext records = session.Records;
    private readonly AnalysisSettings settings = SettingsStore.Of(session.Practice);
    private readonly Dictionary<PlannedHorse, Guid> horses = [];
    private readonly List<ImportedCase> imported = [];
    private HashSet<Guid> atWork = [];
    private int cases;
    private int examinations;
    private int readings;

    public async Task<ImportResult> WriteAsync(IReadOnlyList<PlannedCase> plan, string? reason, CancellationToken cancellation)
    {
        PlannedCase[] wanted = [.. plan.Where(planned => !planned.Choice.Skip)];
        int amended = await AmendAsync(wanted, reason, cancellation);
        await records.SaveChangesAsync(cancellation);
        records.ChangeTracker.Clear();

        // A new injury of a horse that has a plan is news to whoever signed it.
        atWork = [.. await records.ExerciseEntries.Where(line => line.Number == 1).Select(line => line.HorseId).ToListAsync(cancellation)];
        using Pens pens = await Pens.OpenAsync(records, cancellation);
        foreach (PlannedCase[] chunk in wanted.Chunk(CasesPerChunk))
        {
            cancellation.ThrowIfCancellationRequested();
            List<NewCase> made = [];
            foreach (PlannedCase planned in chunk)
            {
                Add(pens, planned, made);
            }

            CaseSummaryRecord[] summaries =
            [
                .. made.AsParallel()
                    .AsOrdered()
                    .WithCancellation(cancellation)
                    .Select(injury =>
                        SummaryRenewal.Compute(
                            CaseRows.ToCourse(injury.Case, injury.Examinations),
                            [],
                            injury.Case.Id,
                            session.Practice.Id,
                            settings,
                            session.Now,
                            session.Today
                        )
                    ),
            ];
            foreach (CaseSummaryRecord summary in summaries)
            {
                pens.Summaries.Write(summary);
            }

            progress?.Report(readings);
        }

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
        injury.Landmark = ImportPlan.LandmarkOf(file) ?? injury.Landmark;
        injury.Onset = file.Onset ?? injury.Onset;
        injury.OtherLimb = file.OtherLimb == OtherLimb.NotRecorded ? injury.OtherLimb : file.OtherLimb;
        injury.ZoneLengthCm = file.ZoneLength?.Value ?? injury.ZoneLengthCm;
        session.Touch(caseId);
    }

    private void Add(Pens pens, PlannedCase planned, List<NewCase> made)
    {
        Guid horseId = planned.Horse?.Id ?? Horse(pens, planned.NewHorse!);
        CaseRecord? kept = planned.Kept?.Case;
        CaseRecord injury = kept ?? Case(pens, planned, horseId);
        Examination[] added =
        [
            .. planned
                .Examinations.Where(examination => examination.Standing == ExaminationStanding.New)
                .Select(examination => Examination(pens, injury.Id, examination.File)),
        ];
        if (kept is null)
        {
            made.Add(new NewCase(injury, added));
            if (added.Length > 0 && planned.Horse is not null && atWork.Contains(horseId))
            {
                session.Touch(injury.Id);
            }
        }
        else if (added.Length > 0)
        {
            session.Touch(injury.Id);
        }

        imported.Add(new ImportedCase(planned.File.Label, injury.Id, horseId));
    }

    private Guid Horse(Pens pens, PlannedHorse planned)
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
        pens.Horses.Write(horse);
        pens.Changes.Write(HistoryInterceptor.Made(records, horse));
        horses.Add(planned, horse.Id);
        return horse.Id;
    }

    private CaseRecord Case(Pens pens, PlannedCase planned, Guid horseId)
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
            OtherLimb = planned.File.Course.OtherLimb,
            ZoneLengthCm = planned.File.Course.ZoneLength?.Value,
            ImportLabel = planned.File.Label,
        };
        pens.Cases.Write(injury);
        pens.Changes.Write(HistoryInterceptor.Made(records, injury));
        cases++;
        return injury;
    }

    private Examination Examination(Pens pens, Guid caseId, Examination file)
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
            Zones = file.Zones,
            EnteredById = session.Person.Id,
            WrittenAt = session.Now,
        };
        FixedPointMap.Apply(examination, file.FixedPoints);
        ReadingRecord[] rows =
        [
            .. file.Readings.Select(
                (reading, position) =>
                    ReadingMap.New(session.NewId(), session.Practice.Id, examination.Id, position, ReadingMap.ToDraft(reading))
            ),
        ];
        pens.Examinations.Write(examination);
        foreach (ReadingRecord row in rows)
        {
            pens.Readings.Write(row);
        }

        pens.Changes.Write(HistoryInterceptor.Made(records, examination, ("readingCount", rows.Length)));
        examinations++;
        readings += rows.Length;
        return CaseRows.ToExamination(examination, rows);
    }

    /// <summary>A case that the import makes, with its examinations as the heart takes them.</summary>
    private sealed record NewCase(CaseRecord Case, IReadOnlyList<Examination> Examinations);

    /// <summary>One prepared statement a kind of record.</summary>
    private sealed class Pens(RecordsContext records, HistoryPen changes) : IDisposable
    {
        public static async Task<Pens> OpenAsync(RecordsContext records, CancellationToken cancellation) =>
            new(records, await HistoryPen.OpenAsync(records, cancellation));

        public BulkInsert<HorseRecord> Horses { get; } = new(records);

        public BulkInsert<CaseRecord> Cases { get; } = new(records);

        public BulkInsert<ExaminationRecord> Examinations { get; } = new(records);

        public BulkInsert<ReadingRecord> Readings { get; } = new(records);

        public BulkInsert<CaseSummaryRecord> Summaries { get; } = new(records);

        public HistoryPen Changes { get; } = changes;

        public void Dispose()
        {
            Horses.Dispose();
            Cases.Dispose();
            Examinations.Dispose();
            Readings.Dispose();
            Summaries.Dispose();
            Changes.Dispose();
        }
    }
}
