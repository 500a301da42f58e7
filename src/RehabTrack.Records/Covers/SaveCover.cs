using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Covers;

/// <summary>
/// Sets a vet to stand in for another from a day to a day. On these days the covering vet may sign for the horses of the vet who is
/// away, in their own name.
/// </summary>
public sealed class SaveCover(RecordsAccess access) : Command<SaveCoverInput, Saved>(access)
{
    private protected override Right Right => Right.ChangeCover;

    private protected override async Task<Outcome<Saved>> WriteAsync(
        RecordsSession session,
        SaveCoverInput input,
        CancellationToken cancellation
    )
    {
        RecordsContext records = session.Records;
        Checks checks = new();
        await VetAsync(checks, records, "vetId", input.VetId, cancellation);
        await VetAsync(checks, records, "coveringVetId", input.CoveringVetId, cancellation);
        if (input.VetId == input.CoveringVetId)
        {
            checks.Add(new Problem("coveringVetId", "cover-by-oneself"));
        }

        if (input.To < input.From)
        {
            checks.Add(new Problem("to", "cover-ends-before-it-begins", RecordText.Of(input.To), RecordText.Of(input.From)));
        }
        else if (input.To < session.Today)
        {
            checks.Add(new Problem("to", "cover-in-the-past", RecordText.Of(input.To), RecordText.Of(session.Today)));
        }

        CoverView[] standing = await CoverRows.FromAsync(records, session.Today, cancellation);
        CoverView[] meanwhile = [.. standing.Where(other => other.From <= input.To && other.To >= input.From)];
        if (meanwhile.FirstOrDefault(other => other.VetId == input.VetId) is { } already)
        {
            checks.Add(
                new Problem("vetId", "cover-set-already", already.CoveringVet, RecordText.Of(already.From), RecordText.Of(already.To))
            );
        }

        if (checks.Any)
        {
            return checks.Problems;
        }

        CoverRecord cover = new()
        {
            Id = session.NewId(),
            VetId = input.VetId,
            CoveringVetId = input.CoveringVetId,
            From = input.From,
            To = input.To,
        };
        records.Covers.Add(cover);
        await records.SaveChangesAsync(cancellation);
        return Outcome<Saved>.Of(
            new Saved(cover.Id, cover.Version),
            [
                .. meanwhile
                    .Where(other => other.VetId == input.CoveringVetId)
                    .Select(other => new Problem("coveringVetId", "vet-away", other.CoveringVet)),
            ]
        );
    }

    private static async Task VetAsync(Checks checks, RecordsContext records, string field, Guid id, CancellationToken cancellation)
    {
        if (!await records.People.AnyAsync(person => person.Id == id && person.Role == Role.Vet && person.ArchivedAt == null, cancellation))
        {
            checks.Add(RecordProblems.NotFound(field));
        }
    }
}
