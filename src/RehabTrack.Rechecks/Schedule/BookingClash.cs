namespace RehabTrack.Rechecks.Schedule;

/// <summary>Two booked rechecks in each other's way. It is told, never forbidden: only people know whether it can be done.</summary>
/// <param name="OtherId">The other booked recheck.</param>
/// <param name="SameVet">Whether the same vet is to be at both.</param>
/// <param name="SamePlace">Whether both are at the same place.</param>
public sealed record BookingClash(string OtherId, bool SameVet, bool SamePlace)
{
    /// <summary>What stands in the way of a visit.</summary>
    /// <param name="visit">The visit.</param>
    /// <param name="others">The other booked rechecks; the visit itself among them is left out by its id.</param>
    /// <returns>
    /// A clash for each visit that overlaps in time and shares vet or place, in the order given. A visit without a time takes no time of
    /// the day and is in nobody's way. Visits that touch, one ending as the other begins, do not overlap. Times are those of the wall
    /// clock, so on a day when clocks change the hour that exists twice is taken for one.
    /// </returns>
    public static IReadOnlyList<BookingClash> Of(BookedVisit visit, IEnumerable<BookedVisit> others)
    {
        ArgumentNullException.ThrowIfNull(visit);
        ArgumentNullException.ThrowIfNull(others);
        return
        [
            .. others
                .Where(other => other.Id != visit.Id && Overlap(visit, other))
                .Select(other => new BookingClash(other.Id, IsSame(visit.VetId, other.VetId), IsSame(visit.Place, other.Place)))
                .Where(clash => clash.SameVet || clash.SamePlace),
        ];
    }

    private static bool Overlap(BookedVisit one, BookedVisit other) =>
        one.Time is { } first
        && other.Time is { } second
        && one.Date.ToDateTime(first) < other.Date.ToDateTime(second).AddMinutes(other.Minutes)
        && other.Date.ToDateTime(second) < one.Date.ToDateTime(first).AddMinutes(one.Minutes);

    private static bool IsSame(string? one, string? other) =>
        one is not null && other is not null && string.Equals(one.Trim(), other.Trim(), StringComparison.OrdinalIgnoreCase);
}
