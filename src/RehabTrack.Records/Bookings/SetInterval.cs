using RehabTrack.Rechecks.Quantities;
using RehabTrack.Rechecks.Schedule;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Bookings;

/// <summary>Gives a case a rhythm of its own, or takes it back to the practice's.</summary>
public sealed class SetInterval(RecordsAccess access) : Command<SetIntervalInput, Saved>(access)
{
    private protected override Right Right => Right.ChangeCases;

    private protected override async Task<Outcome<Saved>> WriteAsync(
        RecordsSession session,
        SetIntervalInput input,
        CancellationToken cancellation
    )
    {
        CaseRecord? injury = await BookingRows.CaseAsync(session.Records, input.CaseId, cancellation);
        if (injury is null)
        {
            return RecordProblems.NotFound("case");
        }

        if (injury.ClosedAt is not null)
        {
            return CaseRules.Closed;
        }

        List<Problem> problems = [.. BookingRules.CheckInterval(input.Days, BookingRows.Usual)];
        if (problems.Count > 0)
        {
            return problems;
        }

        Conflict conflict = new Conflict().Field("recheckIntervalDays", injury.RecheckIntervalDays, input.Days);
        if (injury.Version != input.Version && conflict.Any)
        {
            return conflict.Problems;
        }

        injury.RecheckIntervalDays = input.Days;
        await session.Records.SaveChangesAsync(cancellation);
        return new Saved(injury.Id, injury.Version);
    }
}
