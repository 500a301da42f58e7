namespace RehabTrack.Web.Features.Concerns;

/// <summary>
/// When letters about concerns go: the first of a horse at once, those that follow within the pause together in one. A flood of concerns makes
/// few letters, and none is left out of all of them.
/// </summary>
/// <param name="pause">The time between two letters about one horse.</param>
public sealed class ConcernRounds(TimeSpan pause)
{
    private readonly Dictionary<Guid, Round> _rounds = [];

    /// <summary>When <see cref="Due"/> has something to do next; null while nothing waits.</summary>
    public DateTimeOffset? Next => _rounds.Count == 0 ? null : _rounds.Values.Min(round => round.Until);

    /// <summary>Takes a concern.</summary>
    /// <param name="ring">The concern.</param>
    /// <param name="now">The present instant.</param>
    /// <returns>Whether its letter goes now; else it waits for the end of the round.</returns>
    public bool IsNow(ConcernRing ring, DateTimeOffset now)
    {
        ArgumentNullException.ThrowIfNull(ring);
        if (_rounds.TryGetValue(ring.HorseId, out Round? round))
        {
            _rounds[ring.HorseId] = round with { Latest = ring, Count = round.Count + 1 };
            return false;
        }

        _rounds.Add(ring.HorseId, new Round(now + pause, null, 0));
        return true;
    }

    /// <summary>The letters whose time has come, each about the latest concern and with the number of those it stands for.</summary>
    /// <param name="now">The present instant.</param>
    public IReadOnlyList<(ConcernRing Latest, int Count)> Due(DateTimeOffset now)
    {
        List<(ConcernRing, int)> due = [];
        foreach ((Guid horse, Round round) in _rounds.Where(one => one.Value.Until <= now).ToArray())
        {
            if (round.Latest is { } latest)
            {
                due.Add((latest, round.Count));
                _rounds[horse] = new Round(now + pause, null, 0);
            }
            else
            {
                _rounds.Remove(horse);
            }
        }

        return due;
    }

    /// <summary>The letters that wait, whatever the time: for a server that ends.</summary>
    public IReadOnlyList<(ConcernRing Latest, int Count)> Waiting() =>
        [.. _rounds.Values.Where(round => round.Latest is not null).Select(round => (round.Latest!, round.Count))];

    private sealed record Round(DateTimeOffset Until, ConcernRing? Latest, int Count);
}
