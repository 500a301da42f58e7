using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Bookings;

/// <summary>Notes a call about a recheck, or anything else worth knowing before the next one. Notes are internal and only ever added.</summary>
public sealed class NoteCall(RecordsAccess access) : Command<NoteCallInput, Saved>(access)
{
    private protected override Right Right => Right.BookRechecks;

    private protected override async Task<Outcome<Saved>> WriteAsync(
        RecordsSession session,
        NoteCallInput input,
        CancellationToken cancellation
    )
    {
        RecordsContext records = session.Records;
        CaseRecord? injury = await BookingRows.CaseAsync(records, input.CaseId, cancellation);
        if (injury is null)
        {
            return RecordProblems.NotFound("case");
        }

        Checks checks = new();
        string? words = checks.Text("words", input.Words);
        if (words is null && input.Outcome == CallOutcome.Note)
        {
            checks.Add(new Problem("words", "field-empty"));
        }

        if (input.PersonId is { } id && !await records.People.AnyAsync(person => person.Id == id, cancellation))
        {
            checks.Add(RecordProblems.NotFound("personId"));
        }

        if (checks.Any)
        {
            return checks.Problems;
        }

        CallRecord call = new()
        {
            Id = session.NewId(),
            CaseId = injury.Id,
            Outcome = input.Outcome,
            PersonId = input.PersonId,
            Words = words,
            NotedById = session.Person.Id,
            NotedAt = session.Now,
        };
        records.Calls.Add(call);
        await records.SaveChangesAsync(cancellation);
        return new Saved(call.Id, call.Version);
    }
}
