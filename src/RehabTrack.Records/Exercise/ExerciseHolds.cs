using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Findings;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Linking;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Exercise;

/// <summary>
/// Places holds on a horse's exercise when a case says something that no decision knew of: a setback, a new injury, or another word on
/// what the last decision rested on; and when the vet who signed is put away. A hold lowers and never raises. Only a vet's later
/// signature lifts it, but for a draft's: that goes with its ground.
/// </summary>
internal static class ExerciseHolds
{
    /// <summary>Looks at a case that was just written, and adds the holds that are missing.</summary>
    public static async Task PlaceAsync(
        RecordsSession session,
        CaseRecord injury,
        CaseCourse course,
        IReadOnlyList<LinkConstraint> words,
        AnalysisSettings settings,
        CaseAnalysis analysis,
        CancellationToken cancellation
    )
    {
        List<ExerciseEntryRecord> lines = await LinesAsync(session, injury.HorseId, cancellation);
        if (ExerciseRows.LastSignature(lines) is not { } signature)
        {
            return;
        }

        if (IsSetback(analysis) && await IsNewsAsync(session.Records, injury, signature, cancellation))
        {
            Place(session, lines, signature, KindOf(course, words, settings, session.Today));
        }
        else if (await HasNewGroundAsync(session, injury, course, words, settings, lines, signature, cancellation))
        {
            Place(session, lines, signature, PermitHoldKind.BasisChanged);
        }

        await OfDraftsAsync(session, injury, words, settings, IsSetback(analysis), lines, signature, cancellation);
    }

    /// <summary>Looks at the drafts of a case: a hold stands as long as one of them shows a setback that no other examination shows.</summary>
    public static async Task ReviewDraftsAsync(RecordsSession session, Guid caseId, CancellationToken cancellation)
    {
        RecordsContext records = session.Records;
        CaseRecord injury = await records.Cases.AsNoTracking().FirstAsync(record => record.Id == caseId, cancellation);
        List<ExerciseEntryRecord> lines = await LinesAsync(session, injury.HorseId, cancellation);
        if (ExerciseRows.LastSignature(lines) is not { } signature)
        {
            return;
        }

        AnalysisSettings settings = SettingsStore.Of(session.Practice);
        (CaseCourse course, IReadOnlyList<LinkConstraint> words) = await CaseRows.StandingAsync(
            records,
            injury,
            session.Today,
            cancellation
        );
        bool isSetback = IsSetback(CaseAnalyser.Analyse(course, words, settings, session.Today));
        await OfDraftsAsync(session, injury, words, settings, isSetback, lines, signature, cancellation);
    }

    /// <summary>Where a person who is put away signed last, nothing is permitted until another vet signs.</summary>
    public static async Task WithdrawAsync(RecordsSession session, Guid personId, CancellationToken cancellation)
    {
        RecordsContext records = session.Records;
        Guid[] horses = await ExerciseRows
            .Signatures(records)
            .Where(line => line.EnteredById == personId && ExerciseRows.OpenCases(records).Any(injury => injury.HorseId == line.HorseId))
            .Select(line => line.HorseId)
            .Distinct()
            .ToArrayAsync(cancellation);
        foreach (Guid horse in horses)
        {
            List<ExerciseEntryRecord> lines = await LinesAsync(session, horse, cancellation);
            if (ExerciseRows.LastSignature(lines) is { } signature && signature.EnteredById == personId)
            {
                Place(session, lines, signature, PermitHoldKind.VetWithdrawn);
            }
        }
    }

    /// <summary>A case comes back that was put away when a vet signed last: what was signed did not know of it.</summary>
    public static async Task ReturnAsync(RecordsSession session, CaseRecord injury, CancellationToken cancellation)
    {
        List<ExerciseEntryRecord> lines = await LinesAsync(session, injury.HorseId, cancellation);
        if (
            injury.ClosedAt is null
            && ExerciseRows.LastSignature(lines) is { } signature
            && signature.RecordedAt >= injury.ArchivedAt
            && await session.Records.Examinations.AnyAsync(
                examination => examination.CaseId == injury.Id && examination.ArchivedAt == null,
                cancellation
            )
        )
        {
            Place(session, lines, signature, PermitHoldKind.BasisChanged);
        }
    }

    private static async Task<List<ExerciseEntryRecord>> LinesAsync(RecordsSession session, Guid horseId, CancellationToken cancellation)
    {
        RecordsContext records = session.Records;
        List<ExerciseEntryRecord> lines = await records
            .ExerciseEntries.Where(entry => entry.HorseId == horseId)
            .OrderBy(entry => entry.Number)
            .ToListAsync(cancellation);
        lines.AddRange(
            records.ExerciseEntries.Local.Where(entry => entry.HorseId == horseId && lines.TrueForAll(line => line.Id != entry.Id))
        );
        return lines;
    }

    /// <summary>Whether a hold of a kind was placed after the last signature and has not ended.</summary>
    private static bool Stands(IEnumerable<ExerciseEntryRecord> lines, ExerciseEntryRecord signature, PermitHoldKind kind) =>
        lines
            .Where(line => line.Number > signature.Number && line.Kind is ExerciseEntryKind.HoldPlaced or ExerciseEntryKind.HoldEnded)
            .Select(line => ExerciseRows.Read(line, line.Number))
            .LastOrDefault(entry => entry is HoldPlaced placed && placed.Kind == kind || entry is HoldEnded ended && ended.Kind == kind)
        is HoldPlaced;

    private static void Place(RecordsSession session, List<ExerciseEntryRecord> lines, ExerciseEntryRecord signature, PermitHoldKind kind)
    {
        if (!Stands(lines, signature, kind))
        {
            Add(
                session,
                lines,
                signature.HorseId,
                new HoldPlaced
                {
                    Order = 0,
                    RecordedOn = session.Today,
                    Kind = kind,
                    From = session.Today,
                }
            );
        }
    }

    private static void Add(RecordsSession session, List<ExerciseEntryRecord> lines, Guid horseId, PermitEntry entry) =>
        lines.Add(ExerciseRows.Add(session, horseId, lines.Count + 1, entry));

    private static async Task OfDraftsAsync(
        RecordsSession session,
        CaseRecord injury,
        IReadOnlyList<LinkConstraint> words,
        AnalysisSettings settings,
        bool isSetbackAlready,
        List<ExerciseEntryRecord> lines,
        ExerciseEntryRecord signature,
        CancellationToken cancellation
    )
    {
        RecordsContext records = session.Records;
        bool isShown =
            !isSetbackAlready
            && await records.Examinations.AnyAsync(
                examination =>
                    examination.CaseId == injury.Id
                    && examination.ArchivedAt == null
                    && examination.State == ExaminationState.Draft
                    && examination.WrittenAt > signature.RecordedAt,
                cancellation
            )
            && IsSetback(
                CaseAnalyser.Analyse(
                    await CaseRows.WithDraftsAsync(records, injury, session.Today, cancellation),
                    words,
                    settings,
                    session.Today
                )
            );
        if (isShown)
        {
            Place(session, lines, signature, PermitHoldKind.UnsignedSetback);
        }
        else if (
            Stands(lines, signature, PermitHoldKind.UnsignedSetback) && !await RestsOnAnotherAsync(session, injury, settings, cancellation)
        )
        {
            Add(
                session,
                lines,
                signature.HorseId,
                new HoldEnded
                {
                    Order = 0,
                    RecordedOn = session.Today,
                    Kind = PermitHoldKind.UnsignedSetback,
                    From = session.Today,
                }
            );
        }
    }

    /// <summary>Whether an unsigned examination, of this or another case of the horse, shows a setback still.</summary>
    private static async Task<bool> RestsOnAnotherAsync(
        RecordsSession session,
        CaseRecord injury,
        AnalysisSettings settings,
        CancellationToken cancellation
    )
    {
        List<CaseRecord> open = await ExerciseRows
            .OpenCases(session.Records)
            .AsNoTracking()
            .Where(other => other.HorseId == injury.HorseId)
            .ToListAsync(cancellation);
        foreach (CaseRecord other in open)
        {
            (CaseCourse standing, IReadOnlyList<LinkConstraint> words) = await CaseRows.StandingAsync(
                session.Records,
                other,
                session.Today,
                cancellation
            );
            CaseCourse whole =
                other.Id == injury.Id ? standing : await CaseRows.WithDraftsAsync(session.Records, other, session.Today, cancellation);
            if (
                IsSetback(CaseAnalyser.Analyse(whole, words, settings, session.Today))
                && KindOf(whole, words, settings, session.Today) == PermitHoldKind.UnsignedSetback
            )
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>A setback that the examinations signed here show by themselves, or one that others show.</summary>
    private static PermitHoldKind KindOf(CaseCourse course, IReadOnlyList<LinkConstraint> words, AnalysisSettings settings, DateOnly today)
    {
        CaseCourse signed = course with
        {
            Examinations = [.. course.Examinations.Where(examination => examination.State == ExaminationState.Signed)],
        };
        HashSet<string> ids = [.. signed.Examinations.Select(examination => examination.Id)];
        LinkConstraint[] said = [.. words.Where(word => ids.Contains(word.First.ExaminationId) && ids.Contains(word.Second.ExaminationId))];
        return
            signed.Examinations.Count == course.Examinations.Count
            || (signed.Examinations.Count > 0 && IsSetback(CaseAnalyser.Analyse(signed, said, settings, today)))
            ? PermitHoldKind.Setback
            : PermitHoldKind.UnsignedSetback;
    }

    /// <summary>
    /// Whether the last signature did not know of this case, or what the last decision rested on says something else now. A plan is
    /// signed without a ground of its own: that of the last decision stands.
    /// </summary>
    private static async Task<bool> HasNewGroundAsync(
        RecordsSession session,
        CaseRecord injury,
        CaseCourse course,
        IReadOnlyList<LinkConstraint> words,
        AnalysisSettings settings,
        List<ExerciseEntryRecord> lines,
        ExerciseEntryRecord signature,
        CancellationToken cancellation
    )
    {
        if (course.Examinations.Count > 0 && NewId.InstantOf(injury.Id) > signature.RecordedAt)
        {
            return true;
        }

        if (lines.LastOrDefault(line => line.Kind == ExerciseEntryKind.DecisionSigned) is not { } decided)
        {
            return false;
        }

        string? ground = await session
            .Records.Decisions.Where(decision => decision.EntryId == decided.Id)
            .Select(decision => decision.GroundJson)
            .FirstOrDefaultAsync(cancellation);
        CaseGround? then = ground is null
            ? null
            : JsonSerializer
                .Deserialize<DecisionGround>(ground, RecordJson.Options)!
                .Cases.FirstOrDefault(candidate => candidate.CaseId == injury.Id);
        return then is not null && GroundReader.HasChanged(then, course, words, settings);
    }

    private static bool IsSetback(CaseAnalysis analysis) =>
        analysis.Trend.Verdict == Verdict.Worsening
        || analysis.Findings.Any(finding =>
            finding
                is {
                    IsEarlier: false,
                    Severity: FindingSeverity.Red,
                    Kind: FindingKind.NewlyAbnormalLevel or FindingKind.NewLesionLevel or FindingKind.Worsening
                }
        );

    // What a decision was signed over is no news.
    private static async Task<bool> IsNewsAsync(
        RecordsContext records,
        CaseRecord injury,
        ExerciseEntryRecord signature,
        CancellationToken cancellation
    ) =>
        await records.Examinations.AnyAsync(
            examination =>
                examination.CaseId == injury.Id
                && examination.ArchivedAt == null
                && examination.State != ExaminationState.Draft
                && examination.WrittenAt > signature.RecordedAt,
            cancellation
        );
}
