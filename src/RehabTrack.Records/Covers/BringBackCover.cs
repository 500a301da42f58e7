using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Archive;
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
        IReadOnlyList<Problem> cautions = [];
        Outcome<Saved> back = await ArchivedRecords.BringBackAsync(
            session,
            session.Records.Covers,
            input,
            "cover",
            async cover =>
            {
                (IReadOnlyList<Problem> wrong, cautions) = await CoverRules.CheckAsync(session, cover, cancellation);
                return wrong;
            },
            cancellation
        );
        return back.Succeeded ? Outcome<Saved>.Of(back.Value, cautions) : back;
    }
}
