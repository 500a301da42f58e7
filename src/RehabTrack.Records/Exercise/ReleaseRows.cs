using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Exercise;

/// <summary>
/// Reads what was released; nothing else of a decision leaves with it. A release speaks of what its vet signed, so it is shown only while
/// that is the last signature and nothing keeps the permit of the day below it.
/// </summary>
internal static class ReleaseRows
{
    public static Release Read(string json) => JsonSerializer.Deserialize<Release>(json, RecordJson.Options)!;

    /// <summary>All that was released of some horses for this reader; what was released for the other stays in the database.</summary>
    public static async Task<ILookup<Guid, Row>> OfHorsesAsync(
        RecordsContext records,
        Guid[] horseIds,
        bool forOwner,
        CancellationToken cancellation
    ) =>
        (
            await records
                .Decisions.AsNoTracking()
                .Where(decision => horseIds.Contains(decision.HorseId) && decision.ReleasedAt != null && decision.ReleaseJson != null)
                .Select(decision => new Row(
                    decision.HorseId,
                    decision.EntryId,
                    decision.ReleasedAt!.Value,
                    forOwner
                        ? JsonText.Without(decision.ReleaseJson!, "$.trainer")
                        : JsonText.Without(JsonText.Without(decision.ReleaseJson!, "$.owner"), "$.pictures")
                ))
                .ToListAsync(cancellation)
        ).ToLookup(row => row.HorseId);

    /// <summary>What may be read today of what was released of a horse.</summary>
    /// <param name="session">Who asks, and on which day.</param>
    /// <param name="released">All that was released of the horse.</param>
    /// <param name="lines">The lines of the horse.</param>
    /// <param name="history">The same as the heart reads them.</param>
    /// <param name="permit">The permit of today.</param>
    /// <param name="hasConcern">Whether a concern waits for a vet.</param>
    /// <param name="forOwner">Whether the owner asks.</param>
    public static YardRelease Standing(
        RecordsSession session,
        IEnumerable<Row> released,
        IEnumerable<ExerciseEntryRecord> lines,
        PermitHistory history,
        Permit permit,
        bool hasConcern,
        bool forOwner
    )
    {
        Row[] rows = [.. released];
        if (rows.Length == 0)
        {
            return YardRelease.None;
        }

        ExerciseEntryRecord? last = ExerciseRows.LastSignature(lines);
        if (last?.Kind != ExerciseEntryKind.DecisionSigned || rows.FirstOrDefault(row => row.EntryId == last.Id) is not { } latest)
        {
            return YardRelease.None with { Standing = ReleaseStanding.Over, At = rows.Max(row => row.At) };
        }

        Decision decision = ((DecisionSigned)ExerciseRows.Read(last, last.Number)).Decision;
        if (PermitsWork(decision) && decision.From > session.Today)
        {
            return YardRelease.None with { Standing = ReleaseStanding.NotYet, At = latest.At, From = decision.From };
        }

        DateOnly writtenOn = PracticeTime.DateOf(latest.At, session.Practice.TimeZone);
        if (hasConcern || PermitsWork(decision) && IsBelow(history, permit, decision.From > writtenOn ? decision.From : writtenOn))
        {
            return YardRelease.None with { Standing = ReleaseStanding.NotToday, At = latest.At };
        }

        Release release = Read(latest.Json);
        return forOwner
            ? new YardRelease(ReleaseStanding.Counts, latest.At, null, release.Owner, release.Pictures ?? [])
            : new YardRelease(ReleaseStanding.Counts, latest.At, null, release.Trainer, []);
    }

    // What stops, rests or ends work can tell no more than is permitted.
    private static bool PermitsWork(Decision decision) =>
        decision.Kind is DecisionKind.Advance or DecisionKind.Hold or DecisionKind.StepBack;

    // The vet wrote of the work of the day of writing, which may be lowered, dropped or over today. What only stops growth takes nothing away,
    // and neither does a day of rest that was signed with the days of the week.
    private static bool IsBelow(PermitHistory history, Permit permit, DateOnly spokenOf) =>
        permit.Reasons.Any(reason => reason.Code == PermitReasonCode.Lowered)
        || !permit.SignedWork.IsWithin(permit.BeforeWeek)
        || !PermitReader.For(history, spokenOf).SignedWork.IsWithin(permit.BeforeWeek);

    /// <summary>A release as it is kept.</summary>
    /// <param name="HorseId">The horse.</param>
    /// <param name="EntryId">The line of its decision.</param>
    /// <param name="At">When it was released (UTC).</param>
    /// <param name="Json">What was released.</param>
    internal sealed record Row(Guid HorseId, Guid EntryId, DateTime At, string Json);
}
