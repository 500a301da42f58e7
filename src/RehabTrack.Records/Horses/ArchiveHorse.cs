using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Horses;

/// <summary>Puts a horse away with its cases: no longer listed, no longer due, all of it kept.</summary>
public sealed class ArchiveHorse(RecordsAccess access) : Command<RecordInput, Saved>(access)
{
    private protected override Right Right => Right.ChangeHorses;

    private protected override async Task<Outcome<Saved>> WriteAsync(
        RecordsSession session,
        RecordInput input,
        CancellationToken cancellation
    )
    {
        HorseRecord? horse = await session.Records.Horses.FirstOrDefaultAsync(
            record => record.Id == input.Id && record.ArchivedAt == null,
            cancellation
        );
        if (horse is null)
        {
            return RecordProblems.NotFound("horse");
        }

        if (horse.Version != input.Version)
        {
            return RecordProblems.ChangedMeanwhile;
        }

        horse.ArchivedAt = session.Now;
        await session.Records.SaveChangesAsync(cancellation);
        return new Saved(horse.Id, horse.Version);
    }
}
