using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Archive;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Horses;

/// <summary>
/// Brings a horse back that was put away, with the cases that were not put away by themselves. What was signed for it counts as before: days
/// without a log let nothing grow meanwhile.
/// </summary>
public sealed class BringBackHorse(RecordsAccess access) : Command<RecordInput, Saved>(access)
{
    private protected override Right Right => Right.ChangeHorses;

    private protected override Task<Outcome<Saved>> WriteAsync(RecordsSession session, RecordInput input, CancellationToken cancellation) =>
        ArchivedRecords.BringBackAsync(
            session,
            session.Records.Horses,
            input,
            "horse",
            async horse =>
            {
                if (horse.Microchip is { } chip && await HorseChips.TakenAsync(session.Records, chip, horse.Id, cancellation) is { } taken)
                {
                    return [taken];
                }

                Guid[] cases = await session
                    .Records.Cases.Where(injury => injury.HorseId == horse.Id && injury.ArchivedAt == null)
                    .Select(injury => injury.Id)
                    .ToArrayAsync(cancellation);
                Array.ForEach(cases, session.Touch);
                return [];
            },
            cancellation
        );
}
