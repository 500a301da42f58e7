using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Linking;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Cases;

/// <summary>Reads what belongs to one case, and makes of it what the heart takes.</summary>
internal static class CaseRows
{
    private static readonly Func<RecordsContext, Guid, IAsyncEnumerable<ExaminationRecord>> ExaminationsOfCase = EF.CompileAsyncQuery(
        (RecordsContext records, Guid caseId) =>
            records
                .Examinations.AsNoTracking()
                .Where(examination => examination.CaseId == caseId && examination.ArchivedAt == null)
                .OrderBy(examination => examination.Date)
                .ThenBy(examination => examination.Id)
                .AsQueryable()
    );

    private static readonly Func<RecordsContext, Guid, IAsyncEnumerable<ReadingRecord>> ReadingsOfCase = EF.CompileAsyncQuery(
        (RecordsContext records, Guid caseId) =>
            from examination in records.Examinations
            join reading in records.Readings.AsNoTracking() on examination.Id equals reading.ExaminationId
            where examination.CaseId == caseId && examination.ArchivedAt == null
            orderby reading.ExaminationId, reading.Position
            select reading
    );

    private static readonly Func<RecordsContext, Guid, IAsyncEnumerable<LinkWordRecord>> WordsOfCase = EF.CompileAsyncQuery(
        (RecordsContext records, Guid caseId) =>
            records.LinkWords.AsNoTracking().Where(word => word.CaseId == caseId).OrderBy(word => word.Id).AsQueryable()
    );

    /// <summary>The examinations that are not put away, by date and id.</summary>
    public static ValueTask<List<ExaminationRecord>> ExaminationsAsync(
        RecordsContext records,
        Guid caseId,
        CancellationToken cancellation
    ) => ExaminationsOfCase(records, caseId).ToListAsync(cancellation);

    /// <summary>Their readings, by examination and the order of entry.</summary>
    public static async Task<ILookup<Guid, ReadingRecord>> ReadingsAsync(
        RecordsContext records,
        Guid caseId,
        CancellationToken cancellation
    ) => (await ReadingsOfCase(records, caseId).ToListAsync(cancellation)).ToLookup(reading => reading.ExaminationId);

    /// <summary>All words on links of the case, withdrawn ones too.</summary>
    public static ValueTask<List<LinkWordRecord>> WordsAsync(RecordsContext records, Guid caseId, CancellationToken cancellation) =>
        WordsOfCase(records, caseId).ToListAsync(cancellation);

    public static Examination ToExamination(ExaminationRecord record, IEnumerable<ReadingRecord> readings) =>
        new()
        {
            Id = RecordText.Of(record.Id),
            Name = record.Name,
            Date = record.Date,
            Stance = record.Stance,
            State = record.State,
            Examiner = record.Examiner,
            Transducer = record.Transducer,
            Landmark = record.Landmark,
            Zones = record.Zones,
            FixedPoints = FixedPointMap.Of(record),
            // A row of a draft that is told in another way than its examination has no place yet.
            Readings = [.. readings.Select(ReadingMap.ToReading).OfType<Reading>().Where(reading => reading.Level.Scheme == record.Zones)],
        };

    /// <summary>The course of a case.</summary>
    /// <param name="record">The case.</param>
    /// <param name="examinations">Its examinations.</param>
    /// <param name="phases">The phases of the horse's plan; null where no trend is read.</param>
    public static CaseCourse ToCourse(
        CaseRecord record,
        IReadOnlyList<Examination> examinations,
        IReadOnlyList<PlanPhaseStart>? phases = null
    ) =>
        new()
        {
            Id = RecordText.Of(record.Id),
            Limb = record.Limb,
            Structure = record.Structure,
            Landmark = record.Landmark,
            Onset = record.Onset,
            Reinjury = record.Reinjury,
            TargetFraction = record.TargetFraction,
            OtherLimb = record.OtherLimb,
            LandmarkDistances = record.HockToJointCm is { } distance
                ? [new LandmarkDistance(Landmark.PointOfHock, Landmark.TarsometatarsalJoint, new Centimetres(distance))]
                : [],
            ZoneLength = record.ZoneLengthCm is { } zoneLength ? new Centimetres(zoneLength) : null,
            Examinations = examinations,
            PlanPhases = phases ?? [],
        };

    /// <summary>What the standing analysis of a case reads: all examinations but drafts, and the words that were not withdrawn.</summary>
    public static async Task<(CaseCourse Course, IReadOnlyList<LinkConstraint> Constraints)> StandingAsync(
        RecordsContext records,
        CaseRecord injury,
        DateOnly today,
        CancellationToken cancellation
    )
    {
        CaseCourse whole = await WithDraftsAsync(records, injury, today, cancellation);
        List<LinkWordRecord> words = await WordsAsync(records, injury.Id, cancellation);
        return (
            whole with
            {
                Examinations = [.. whole.Examinations.Where(examination => examination.State != ExaminationState.Draft)],
            },
            [.. words.Where(word => word.WithdrawnAt is null).Select(ToConstraint)]
        );
    }

    /// <summary>The course of a case with the examinations that nobody signed yet.</summary>
    public static async Task<CaseCourse> WithDraftsAsync(
        RecordsContext records,
        CaseRecord injury,
        DateOnly today,
        CancellationToken cancellation
    )
    {
        List<ExaminationRecord> examinations = await ExaminationsAsync(records, injury.Id, cancellation);
        ILookup<Guid, ReadingRecord> readings = await ReadingsAsync(records, injury.Id, cancellation);
        return ToCourse(
            injury,
            [.. examinations.Select(examination => ToExamination(examination, readings[examination.Id]))],
            await PhaseRows.OfAsync(records, injury.HorseId, today, cancellation)
        );
    }

    public static LinkConstraint ToConstraint(LinkWordRecord word) =>
        new(
            word.Kind,
            new PlaceKey(RecordText.Of(word.FirstExaminationId), word.FirstPath, LevelMap.Of(word.FirstLevelCm, word.FirstZone)),
            new PlaceKey(RecordText.Of(word.SecondExaminationId), word.SecondPath, LevelMap.Of(word.SecondLevelCm, word.SecondZone))
        );
}
