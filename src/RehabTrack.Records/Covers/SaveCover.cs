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
        CoverRecord cover = new()
        {
            Id = session.NewId(),
            VetId = input.VetId,
            CoveringVetId = input.CoveringVetId,
            From = input.From,
            To = input.To,
        };
        (IReadOnlyList<Problem> wrong, IReadOnlyList<Problem> cautions) = await CoverRules.CheckAsync(session, cover, cancellation);
        if (wrong.Count > 0)
        {
            return Outcome<Saved>.Failed(wrong);
        }

        session.Records.Covers.Add(cover);
        await session.Records.SaveChangesAsync(cancellation);
        return Outcome<Saved>.Of(new Saved(cover.Id, cover.Version), cautions);
    }
}
