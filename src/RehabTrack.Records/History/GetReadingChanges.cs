using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.History;

/// <summary>
/// Reads who changed a reading, latest first: every line that tells of it, also from when it stood elsewhere, and the one with which its
/// examination was made.
/// </summary>
public sealed class GetReadingChanges(RecordsAccess access) : UseCase<ReadingPlace, IReadOnlyList<ChangeView>>(access)
{
    private const double SameLevelCm = 1e-6;

    private protected override Right Right => Right.SeeHistory;

    private protected override async Task<Outcome<IReadOnlyList<ChangeView>>> RunAsync(
        RecordsSession session,
        ReadingPlace input,
        CancellationToken cancellation
    )
    {
        RecordsContext records = session.Records;
        ReadingRecord[] readings = await records
            .Readings.AsNoTracking()
            .Where(reading => reading.ExaminationId == input.ExaminationId)
            .ToArrayAsync(cancellation);
        HashSet<Guid> ids = [.. readings.Where(reading => IsAt(reading, input)).Select(reading => reading.Id)];
        if (ids.Count == 0)
        {
            return RecordProblems.NotFound("reading");
        }

        ChangeRecord[] lines = await records
            .Changes.AsNoTracking()
            .Where(change => change.RecordId == input.ExaminationId)
            .OrderByDescending(change => change.At)
            .ThenByDescending(change => change.Id)
            .ToArrayAsync(cancellation);
        IReadOnlyList<ChangeView> told = await ChangeViews.OfAsync(
            records,
            lines,
            line => ChangeFields.OfReadings(line.BeforeJson, line.AfterJson, ids),
            cancellation
        );
        return Outcome<IReadOnlyList<ChangeView>>.Of([.. told.Where(line => line.Fields.Count > 0 || line.IsNew)], []);
    }

    private static bool IsAt(ReadingRecord reading, ReadingPlace place) =>
        reading.Part is { } part
        && place.Parts.Contains(part)
        && (
            place.Zone is { } zone
                ? reading.Zone == zone
                : place.LevelCm is { } level && reading.LevelCm is { } read && Math.Abs(read - level) < SameLevelCm
        );
}
