using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Findings;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Linking;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Exercise;

/// <summary>
/// Places holds on a horse's exercise when a case says something that no decision knew of: a setback, or another word on what the last
/// decision rested on. A hold stops growth; only a vet's later signature lifts it.
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
        RecordsContext records = session.Records;
        List<ExerciseEntryRecord> lines = await records
            .ExerciseEntries.Where(entry => entry.HorseId == injury.HorseId)
            .OrderBy(entry => entry.Number)
            .ToListAsync(cancellation);
        lines.AddRange(
            records.ExerciseEntries.Local.Where(entry => entry.HorseId == injury.HorseId && lines.TrueForAll(line => line.Id != entry.Id))
        );
        if (ExerciseRows.LastSignature(lines) is not { } signature)
        {
            return;
        }

        HashSet<PermitHoldKind> standing =
        [
            .. lines
                .Where(line => line.Number > signature.Number && line.Kind == ExerciseEntryKind.HoldPlaced)
                .Select(line => ((HoldPlaced)ExerciseRows.Read(line, line.Number)).Kind),
        ];
        void Place(PermitHoldKind kind)
        {
            if (standing.Add(kind))
            {
                ExerciseRows.Add(
                    session,
                    injury.HorseId,
                    lines.Count + 1,
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

        if (IsSetback(analysis) && await IsNewsAsync(records, injury, signature, cancellation))
        {
            Place(PermitHoldKind.Setback);
            return;
        }

        string? ground = await records
            .Decisions.Where(decision => decision.EntryId == signature.Id)
            .Select(decision => decision.GroundJson)
            .FirstOrDefaultAsync(cancellation);
        CaseGround? then = ground is null
            ? null
            : JsonSerializer
                .Deserialize<DecisionGround>(ground, RecordJson.Options)!
                .Cases.FirstOrDefault(candidate => candidate.CaseId == injury.Id);
        if (then is not null && GroundReader.HasChanged(then, course, words, settings))
        {
            Place(PermitHoldKind.BasisChanged);
        }
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
