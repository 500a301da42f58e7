using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Bookings;
using RehabTrack.Records.Covers;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Records.Shares;

namespace RehabTrack.Records.Cases;

/// <summary>
/// Closes a case that is resolved, or all open cases of a horse that left, signed by a vet with the outcome. What was booked for a closed
/// case is cancelled, so that calendars learn of it, and nothing reminds of it any more; the share links of a horse that left are taken
/// back. The plan and the horse's other cases stay; after the last case no work is signed.
/// </summary>
public sealed class CloseCase(RecordsAccess access) : Command<CloseCaseInput, ClosedCases>(access)
{
    private protected override Right Right => Right.CloseCases;

    private protected override bool NeedsConfirmation => true;

    private protected override async Task<Outcome<ClosedCases>> WriteAsync(
        RecordsSession session,
        CloseCaseInput input,
        CancellationToken cancellation
    )
    {
        RecordsContext records = session.Records;
        CaseRecord? told = await BookingRows.CaseAsync(records, input.CaseId, cancellation);
        if (told is null)
        {
            return RecordProblems.NotFound("case");
        }

        if (told.ClosedAt is not null)
        {
            return CaseRules.Closed;
        }

        if (told.Version != input.Version)
        {
            return RecordProblems.ChangedMeanwhile;
        }

        if (await HorseVets.RefusalAsync(session, told.HorseId, cancellation) is { } refusal)
        {
            return refusal;
        }

        List<CaseRecord> open = await records
            .Cases.Where(injury =>
                injury.HorseId == told.HorseId
                && injury.ArchivedAt == null
                && injury.ClosedAt == null
                && (input.End != CaseEnd.Resolved || injury.Id == told.Id)
            )
            .ToListAsync(cancellation);
        Guid[] ids = [.. open.Select(injury => injury.Id)];
        Checks checks = new();
        string outcome = checks.Words("outcome", input.Outcome);
        if (input.On > session.Today)
        {
            checks.Add(new Problem("on", "closed-in-the-future", RecordText.Of(input.On), RecordText.Of(session.Today)));
        }

        foreach (Guid id in ids)
        {
            if (await BookingRows.LastExaminationAsync(records, id, cancellation) is { } last && input.On < last)
            {
                checks.Add(new Problem("on", "closed-before-last-examination", RecordText.Of(input.On), RecordText.Of(last)));
                break;
            }
        }

        if (checks.Any)
        {
            return checks.Problems;
        }

        foreach (CaseRecord injury in open)
        {
            injury.ClosedAt = session.Now;
            injury.ClosedById = session.Person.Id;
            injury.End = input.End;
            injury.EndedOn = input.On;
            injury.Outcome = outcome;
        }

        List<BookingRecord> bookings = await BookingRows
            .Standing(records)
            .Where(booking => ids.Contains(booking.CaseId) && booking.Date >= session.Today)
            .ToListAsync(cancellation);
        bookings.ForEach(booking => CancelBooking.Cancel(booking, null, session.Now));
        if (input.End != CaseEnd.Resolved)
        {
            await LivingShares.RevokeOfHorseAsync(session, told.HorseId, cancellation);
        }

        await records.SaveChangesAsync(cancellation);
        return new ClosedCases(open.Count, bookings.Count);
    }
}
