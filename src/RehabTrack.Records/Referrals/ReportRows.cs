using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Linking;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Examinations;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Room;
using RehabTrack.Records.Shares;

namespace RehabTrack.Records.Referrals;

/// <summary>Puts reports together, from what was signed, and reads those that were released.</summary>
internal static class ReportRows
{
    /// <summary>The case and its horse; null when it is not there.</summary>
    public static Task<CaseRecord?> CaseAsync(RecordsContext records, Guid caseId, CancellationToken cancellation) =>
        Cases(records).FirstOrDefaultAsync(injury => injury.Id == caseId, cancellation);

    /// <summary>The period in which a referring vet stands beside a horse today; null when they do not.</summary>
    public static Task<HorseLinkRecord?> PeriodAsync(RecordsContext records, Guid horseId, Guid personId, CancellationToken cancellation) =>
        LivingShares
            .Periods(records)
            .Where(period => period.HorseId == horseId && period.PersonId == personId && period.Relation == HorseRelation.ReferringVet)
            .OrderByDescending(period => period.Id)
            .FirstOrDefaultAsync(cancellation);

    /// <summary>What was released for the person who asks, while they stand beside the horse; behind a share link the one that it opens.</summary>
    public static IQueryable<ReportRecord> Own(RecordsSession session)
    {
        Guid personId = session.Person.Id;
        IQueryable<ReportRecord> own = LivingShares.Reports(session.Records).Where(report => report.PersonId == personId);
        if (session.Scope is { } scope)
        {
            Guid only = scope.ReportId ?? Guid.Empty;
            own = own.Where(report => report.Id == only);
        }

        return own;
    }

    /// <summary>What was released on cases that are not put away.</summary>
    public static IQueryable<ReportRecord> OfPractice(RecordsContext records)
    {
        IQueryable<CaseRecord> cases = Cases(records);
        return records.Reports.AsNoTracking().Where(report => report.ArchivedAt == null && cases.Any(injury => injury.Id == report.CaseId));
    }

    public static ReportContent Read(ReportRecord report) =>
        JsonSerializer.Deserialize<ReportContent>(report.ContentJson, RecordJson.Options)!;

    /// <summary>What a report on a case says now. Only what was signed goes in, and of that no note, no reason and nothing said inside.</summary>
    public static async Task<ReportContent> ContentAsync(
        RecordsSession session,
        CaseRecord injury,
        string? words,
        CancellationToken cancellation
    )
    {
        RecordsContext records = session.Records;
        HorseRecord horse = await records.Horses.AsNoTracking().FirstAsync(record => record.Id == injury.HorseId, cancellation);
        List<ExerciseEntryRecord> lines = [.. (await ExerciseRows.LinesAsync(records, [horse.Id], cancellation))[horse.Id]];
        DecisionSigned? decided = Last<DecisionSigned>(lines, ExerciseEntryKind.DecisionSigned);
        PlanSigned? planned = Last<PlanSigned>(lines, ExerciseEntryKind.PlanSigned);
        IReadOnlyDictionary<Guid, string> vet = await PersonNames.OfAsync(records, [injury.ResponsibleVetId], cancellation);
        return new ReportContent
        {
            PracticeName = session.Practice.Name,
            PracticePhone = session.Practice.Phone,
            Date = session.Today,
            ReleasedBy = session.Person.Name,
            HorseName = horse.Name,
            Microchip = horse.Microchip,
            BirthYear = horse.BirthYear ?? horse.BirthDate?.Year,
            Sex = horse.Sex,
            Limb = injury.Limb,
            Structure = injury.Structure,
            Onset = injury.Onset,
            FirstDiagnosis = injury.FirstDiagnosis,
            ResponsibleVet = PersonNames.Name(vet, injury.ResponsibleVetId),
            Words = words,
            Examinations = await ExaminationsAsync(session, injury, cancellation),
            Verdict = await VerdictAsync(records, injury.Id, cancellation),
            Decision = decided is null ? null : decided.Decision with { Reason = "" },
            DecidedOn = decided?.RecordedOn,
            Plan = planned is null
                ? null
                : planned.Plan with
                {
                    Steps =
                    [
                        .. planned.Plan.Steps.Select(step =>
                            step with
                            {
                                Note = "",
                                Gate = step.Gate is null ? null : step.Gate with { Rules = [] },
                            }
                        ),
                    ],
                },
        };
    }

    // Cases and horses that are not put away.
    private static IQueryable<CaseRecord> Cases(RecordsContext records) =>
        records
            .Cases.AsNoTracking()
            .Where(injury =>
                injury.ArchivedAt == null && records.Horses.Any(horse => horse.Id == injury.HorseId && horse.ArchivedAt == null)
            );

    private static async Task<IReadOnlyList<ReportExamination>> ExaminationsAsync(
        RecordsSession session,
        CaseRecord injury,
        CancellationToken cancellation
    )
    {
        RecordsContext records = session.Records;
        List<ExaminationRecord> signed =
        [
            .. (await CaseRows.ExaminationsAsync(records, injury.Id, cancellation)).Where(examination =>
                examination.State == ExaminationState.Signed
            ),
        ];
        ILookup<Guid, ReadingRecord> readings = await CaseRows.ReadingsAsync(records, injury.Id, cancellation);
        IReadOnlyDictionary<Guid, string> names = await PersonNames.OfAsync(
            records,
            signed.Select(examination => examination.SignedById),
            cancellation
        );
        (CaseCourse course, IReadOnlyList<LinkConstraint> constraints) = await CaseRows.StandingAsync(
            records,
            injury,
            session.Today,
            cancellation
        );
        Dictionary<string, ExaminationBurden> burdens = CaseAnalyser
            .Analyse(course, constraints, SettingsStore.Of(session.Practice), session.Today)
            .Burdens.ToDictionary(burden => burden.ExaminationId, StringComparer.Ordinal);
        return
        [
            .. signed.Select(examination =>
            {
                ExaminationContent content = ExaminationStore.ContentOf(examination, [.. readings[examination.Id]]);
                ExaminationBurden? burden = burdens.GetValueOrDefault(RecordText.Of(examination.Id));
                return new ReportExamination
                {
                    Date = content.Date,
                    Stance = content.Stance,
                    Examiner = content.Examiner,
                    Transducer = content.Transducer,
                    Landmark = content.Landmark,
                    Zones = content.Zones,
                    SignedBy = PersonNames.Name(names, examination.SignedById) ?? "",
                    Readings =
                    [
                        .. content.Readings.Select(row => new DraftReading(null, row.Values with { Note = null, Measurer = null })),
                    ],
                    VolumeCm3 = burden?.Volume?.Value,
                    WorstPercent = burden?.WorstPercent?.Value,
                    TotalPercent = burden?.TotalPercent?.Value,
                    LesionLengthCm = burden?.LesionLength?.Value,
                };
            }),
        ];
    }

    private static async Task<ReportVerdict?> VerdictAsync(RecordsContext records, Guid caseId, CancellationToken cancellation)
    {
        SignedFiguresRecord? last = await records
            .SignedFigures.AsNoTracking()
            .Where(figures => figures.CaseId == caseId)
            .OrderByDescending(figures => figures.At)
            .ThenByDescending(figures => figures.Id)
            .FirstOrDefaultAsync(cancellation);
        if (last is null)
        {
            return null;
        }

        SeenFigures figures = SignedFigures.Read(last.FiguresJson);
        IReadOnlyDictionary<Guid, string> names = await PersonNames.OfAsync(records, [last.PersonId], cancellation);
        return new ReportVerdict
        {
            Verdict = figures.Verdict,
            AsOf = figures.AsOf,
            SignedBy = PersonNames.Name(names, last.PersonId) ?? "",
            Measure = figures.Measure,
            RatePercentPer60Days = figures.RatePercentPer60Days,
            Lower95Percent = figures.Lower95Percent,
            Upper95Percent = figures.Upper95Percent,
            EngineVersion = figures.EngineVersion,
        };
    }

    private static T? Last<T>(IEnumerable<ExerciseEntryRecord> lines, ExerciseEntryKind kind)
        where T : PermitEntry =>
        lines.LastOrDefault(line => line.Kind == kind) is { } last ? (T)ExerciseRows.Read(last, last.Number) : null;
}
