using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Records.Shares;

namespace RehabTrack.Records.Exercise;

/// <summary>
/// How much somebody from outside the practice, behind a link or signed in, may write about one horse within an hour: lines of its history are
/// never deleted. What is refused is told, with the word to call; a horse of which that many concerns came has lost its permit with the first.
/// </summary>
internal static class OutsideLimits
{
    private static readonly ShareSettings Settings = new();
    private static readonly TimeSpan Span = TimeSpan.FromHours(1);

    /// <summary>Why no more concerns are taken; null when one more is.</summary>
    public static async Task<Problem?> OfConcernsAsync(RecordsSession session, Guid horseId, CancellationToken cancellation) =>
        session.Reach == Reach.OwnHorses
        && await Lately(session, horseId)
            .CountAsync(line => session.Records.Concerns.Any(concern => concern.EntryId == line.Id), cancellation)
            >= Settings.ConcernsPerHour
            ? new Problem("", "too-many-concerns")
            : null;

    /// <summary>Why no more lines of other kinds are taken; null when one more is.</summary>
    public static async Task<Problem?> OfLinesAsync(RecordsSession session, Guid horseId, CancellationToken cancellation) =>
        session.Reach == Reach.OwnHorses && await Lately(session, horseId).CountAsync(cancellation) >= Settings.LinesPerHour
            ? new Problem("", "too-many-lines")
            : null;

    /// <summary>Why no more logs of days are taken, which are concerns when they hold a sign; null when one more is.</summary>
    public static Task<Problem?> OfLogAsync(RecordsSession session, Guid horseId, DayLog log, CancellationToken cancellation) =>
        log.HasSign ? OfConcernsAsync(session, horseId, cancellation) : OfLinesAsync(session, horseId, cancellation);

    private static IQueryable<ExerciseEntryRecord> Lately(RecordsSession session, Guid horseId)
    {
        DateTime from = session.Now - Span;
        Guid person = session.Person.Id;
        return session.Records.ExerciseEntries.Where(line =>
            line.HorseId == horseId && line.EnteredById == person && line.RecordedAt > from
        );
    }
}
