using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Covers;

/// <summary>
/// Sets a vet to stand in for another from a day to a day, or changes who and when. On these days the covering vet may sign for the horses of
/// the vet who is away, in their own name.
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
        CoverRecord? cover = input.Id is { } id
            ? await session.Records.Covers.FirstOrDefaultAsync(record => record.Id == id && record.ArchivedAt == null, cancellation)
            : new CoverRecord { Id = session.NewId() };
        if (cover is null)
        {
            return RecordProblems.NotFound("cover");
        }

        if (input.Id is not null && cover.Version != input.Version)
        {
            Conflict conflict = new Conflict()
                .Field("vetId", cover.VetId, input.VetId)
                .Field("coveringVetId", cover.CoveringVetId, input.CoveringVetId)
                .Field("from", cover.From, input.From)
                .Field("to", cover.To, input.To);
            if (conflict.Any)
            {
                return conflict.Problems;
            }
        }

        cover.VetId = input.VetId;
        cover.CoveringVetId = input.CoveringVetId;
        cover.From = input.From;
        cover.To = input.To;
        (IReadOnlyList<Problem> wrong, IReadOnlyList<Problem> cautions) = await CoverRules.CheckAsync(session, cover, cancellation);
        if (wrong.Count > 0)
        {
            return Outcome<Saved>.Failed(wrong);
        }

        if (input.Id is null)
        {
            session.Records.Covers.Add(cover);
        }

        await session.Records.SaveChangesAsync(cancellation);
        return Outcome<Saved>.Of(new Saved(cover.Id, cover.Version), cautions);
    }
}
