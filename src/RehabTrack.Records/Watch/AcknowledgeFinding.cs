using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Rechecks.Watch;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Watch;

/// <summary>Acknowledges what stands, with a reason. It puts it out of sight on the start page and lifts nothing.</summary>
public sealed class AcknowledgeFinding(RecordsAccess access) : Command<AcknowledgeFindingInput, Saved>(access)
{
    private protected override Right Right => Right.WorkOnExercise;

    private protected override async Task<Outcome<Saved>> WriteAsync(
        RecordsSession session,
        AcknowledgeFindingInput input,
        CancellationToken cancellation
    )
    {
        CaseRecord? injury = await ExerciseRows
            .OpenCases(session.Records)
            .AsNoTracking()
            .FirstOrDefaultAsync(record => record.Id == input.CaseId, cancellation);
        if (injury is null || await ExerciseRows.HorseAsync(session, injury.HorseId, cancellation) is null)
        {
            return RecordProblems.NotFound("case");
        }

        Checks checks = new();
        string reason = checks.Words("reason", input.Reason);
        StandingFinding? standing = (await WatchRows.OfCaseAsync(session, injury, cancellation)).FirstOrDefault(finding =>
            string.Equals(finding.Key, input.Seen.Key, StringComparison.Ordinal)
        );
        if (standing is null)
        {
            checks.Add(new Problem("finding", "finding-gone"));
        }
        else if (!standing.IsCoveredBy(input.Seen))
        {
            checks.Add(new Problem("finding", "finding-worse"));
        }

        if (checks.Any)
        {
            return checks.Problems;
        }

        AcknowledgementRecord said = new()
        {
            Id = session.NewId(),
            HorseId = injury.HorseId,
            CaseId = injury.Id,
            Finding = standing!.OfCase?.Kind.ToString() ?? standing.Kind.ToString(),
            FindingKey = standing.Key,
            Severity = standing.Severity,
            Weight = standing.Weight,
            Since = standing.Since,
            Reason = reason,
            SaidById = session.Person.Id,
            SaidAt = session.Now,
        };
        session.Records.Acknowledgements.Add(said);
        await session.Records.SaveChangesAsync(cancellation);
        return new Saved(said.Id, said.Version);
    }
}
