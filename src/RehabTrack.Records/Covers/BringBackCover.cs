using RehabTrack.Records.Archive;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Covers;

/// <summary>Brings cover back that was taken back, where it could be set today.</summary>
public sealed class BringBackCover(RecordsAccess access) : Command<RecordInput, Saved>(access)
{
    private protected override Right Right => Right.ChangeCover;

    private protected override async Task<Outcome<Saved>> WriteAsync(
        RecordsSession session,
        RecordInput input,
        CancellationToken cancellation
    )
    {
        Outcome<CoverRecord> found = await ArchivedRecords.FindAsync(session.Records.Covers, input, "cover", cancellation);
        if (!found.Succeeded)
        {
            return Outcome<Saved>.Failed(found.Problems);
        }

        CoverRecord cover = found.Value;
        Checks checks = new();
        CoverView[] meanwhile = await CoverRules.CheckAsync(
            session,
            checks,
            cover.VetId,
            cover.CoveringVetId,
            cover.From,
            cover.To,
            cancellation
        );
        if (checks.Any)
        {
            return checks.Problems;
        }

        Outcome<Saved> back = await ArchivedRecords.BringBackAsync(session, cover, cancellation);
        return Outcome<Saved>.Of(back.Value, CoverRules.Cautions(meanwhile, cover.CoveringVetId));
    }
}
