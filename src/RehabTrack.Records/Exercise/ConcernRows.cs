using RehabTrack.Records.Keeping;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Exercise;

/// <summary>Opens concerns.</summary>
internal static class ConcernRows
{
    public static void Open(RecordsSession session, ExerciseEntryRecord line) =>
        session.Records.Concerns.Add(
            new ConcernRecord
            {
                Id = session.NewId(),
                HorseId = line.HorseId,
                EntryId = line.Id,
                Date = line.Date,
                OpenedAt = session.Now,
            }
        );
}
