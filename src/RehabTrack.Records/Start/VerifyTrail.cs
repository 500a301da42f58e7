using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.History;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Start;

/// <summary>
/// Checks the trails of all practices, for whoever has the database in hand: nobody is signed in there, and it tells no word of what the
/// trails say.
/// </summary>
public sealed class VerifyTrail(RecordsAccess access)
{
    /// <summary>One answer a trail, in the order of the practices' making.</summary>
    /// <param name="noted">Lines noted earlier, by practice: they must still be there.</param>
    /// <param name="from">Lines after which to begin, by practice; a practice without one is walked along whole.</param>
    /// <param name="cancellation">Gives up.</param>
    public async Task<IReadOnlyList<TrailCheck>> RunAsync(
        ILookup<Guid, TrailAnchor> noted,
        IReadOnlyDictionary<Guid, TrailAnchor> from,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(noted);
        ArgumentNullException.ThrowIfNull(from);
        Guid[] practices;
        await using (RecordsContext any = await access.OpenAsync(Guid.Empty, null, cancellation))
        {
            practices =
            [
                .. await any.Practices.IgnoreQueryFilters().Select(practice => practice.Id).ToArrayAsync(cancellation),
                .. await any.Changes.IgnoreQueryFilters().Select(line => line.PracticeId).Distinct().ToArrayAsync(cancellation),
            ];
        }

        List<TrailCheck> checks = [];
        foreach (Guid practice in practices.Union(noted.Select(one => one.Key)).Union(from.Keys).Order())
        {
            await using RecordsContext records = await access.OpenAsync(practice, null, cancellation);
            checks.Add(await TrailWalk.AlongAsync(records, noted[practice], from.GetValueOrDefault(practice), cancellation));
        }

        return checks;
    }
}
