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
    /// <summary>How many practices the database holds.</summary>
    public async Task<IReadOnlyList<Guid>> PracticesAsync(CancellationToken cancellation = default)
    {
        await using RecordsContext any = await access.OpenAsync(Guid.Empty, null, cancellation);
        return await any
            .Practices.IgnoreQueryFilters()
            .OrderBy(practice => practice.Id)
            .Select(practice => practice.Id)
            .ToListAsync(cancellation);
    }

    /// <summary>One answer a trail: what belongs to no practice first, then the practices in the order of their making.</summary>
    /// <param name="noted">Lines noted earlier that must still be there. A note that names no practice is the only practice's.</param>
    /// <param name="from">Noted lines after which to begin; a trail without one is walked along whole.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <exception cref="ArgumentException">A note names no practice, and there are several or none.</exception>
    public async Task<IReadOnlyList<TrailCheck>> RunAsync(
        IReadOnlyCollection<TrailNote> noted,
        IReadOnlyCollection<TrailNote> from,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(noted);
        ArgumentNullException.ThrowIfNull(from);
        IReadOnlyList<Guid> practices = await PracticesAsync(cancellation);
        ILookup<Guid, TrailAnchor> expected = ByPractice(noted, practices);
        ILookup<Guid, TrailAnchor> begins = ByPractice(from, practices);
        Guid[] trails;
        await using (RecordsContext any = await access.OpenAsync(Guid.Empty, null, cancellation))
        {
            trails = await any.Changes.IgnoreQueryFilters().Select(line => line.PracticeId).Distinct().ToArrayAsync(cancellation);
        }

        List<TrailCheck> checks = [];
        foreach (
            Guid practice in practices.Union(trails).Union(expected.Select(one => one.Key)).Union(begins.Select(one => one.Key)).Order()
        )
        {
            await using RecordsContext records = await access.OpenAsync(practice, null, cancellation);
            TrailAnchor? begin = begins[practice].MaxBy(anchor => anchor.Number);
            checks.Add(await TrailWalk.AlongAsync(records, expected[practice], begin, cancellation));
        }

        return checks;
    }

    private static ILookup<Guid, TrailAnchor> ByPractice(IEnumerable<TrailNote> notes, IReadOnlyList<Guid> practices) =>
        notes.ToLookup(
            note =>
                note.PracticeId
                ?? (practices is [Guid only] ? only : throw new ArgumentException("The note must name its practice.", nameof(notes))),
            note => note.Anchor
        );
}
