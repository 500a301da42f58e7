using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Keeping;

namespace RehabTrack.Records.History;

/// <summary>Walks along the trail of the practice that was entered, one line in memory at a time, up to the first that does not fit.</summary>
internal sealed class TrailWalk
{
    private readonly HashSet<long> emptied = [];
    private readonly List<TrailAnchor> noted;
    private long lines;
    private long number;
    private byte[] hash = TrailHash.BeforeFirst;

    private TrailWalk(IEnumerable<TrailAnchor> noted)
    {
        this.noted = [.. noted];
    }

    /// <summary>Walks.</summary>
    /// <param name="records">The database, entered for the practice.</param>
    /// <param name="noted">Lines that must still be there.</param>
    /// <param name="from">The line after which to begin; null for the first.</param>
    /// <param name="cancellation">Gives up.</param>
    public static async Task<TrailCheck> AlongAsync(
        RecordsContext records,
        IEnumerable<TrailAnchor> noted,
        TrailAnchor? from,
        CancellationToken cancellation
    )
    {
        TrailWalk walk = new(noted);
        TrailBreak? broken =
            await walk.BeginAsync(records, from, cancellation)
            ?? await walk.AllAsync(records, cancellation)
            ?? await walk.EndAsync(records, cancellation);
        string? practice = await records.Practices.Select(record => record.Name).FirstOrDefaultAsync(cancellation);
        return new TrailCheck(records.PracticeId, practice ?? "", walk.lines, walk.number == 0 ? null : walk.End, broken);
    }

    private TrailAnchor End => new(number, Convert.ToHexStringLower(hash));

    private async Task<TrailBreak?> BeginAsync(RecordsContext records, TrailAnchor? from, CancellationToken cancellation)
    {
        if (from is null)
        {
            return null;
        }

        ChangeRecord? line = await records.Changes.AsNoTracking().FirstOrDefaultAsync(line => line.Number == from.Number, cancellation);
        if (line?.Hash is not { } kept || Convert.ToHexStringLower(kept) != from.Hash)
        {
            return new TrailBreak(from.Number, line?.At, TrailFault.NotAsNoted);
        }

        number = from.Number;
        hash = kept;
        // What lies before was walked along when it was noted.
        noted.RemoveAll(one => one.Number < number);
        return CheckNoted(line.At);
    }

    private async Task<TrailBreak?> AllAsync(RecordsContext records, CancellationToken cancellation)
    {
        long after = number;
        await foreach (
            ChangeRecord line in records
                .Changes.AsNoTracking()
                .Where(line => line.Number > after)
                .OrderBy(line => line.Number)
                .AsAsyncEnumerable()
                .WithCancellation(cancellation)
        )
        {
            if (Check(line) is { } why)
            {
                return new TrailBreak(why == TrailFault.Missing ? number + 1 : line.Number, line.At, why);
            }

            number++;
            lines++;
            hash = line.Hash!;
            if (CheckNoted(line.At) is { } broken)
            {
                return broken;
            }
        }

        return null;
    }

    private TrailFault? Check(ChangeRecord line)
    {
        if (line.Number > number + 1)
        {
            return TrailFault.Missing;
        }

        if (line.Number <= number || !Same(line.PreviousHash, hash))
        {
            return TrailFault.OutOfOrder;
        }

        if (!Same(line.Hash, TrailHash.OfLine(line)))
        {
            return TrailFault.Changed;
        }

        return CheckWords(line);
    }

    private TrailFault? CheckWords(ChangeRecord line)
    {
        if (line.Salt is null && line.BeforeJson is null && line.AfterJson.Length == 0 && Erasable.Kinds.Contains(line.Kind))
        {
            emptied.Add(line.Number!.Value);
            return null;
        }

        if (line.Salt is null || !Same(line.BodyHash, TrailHash.OfBody(line.Salt, line.BeforeJson, line.AfterJson)))
        {
            return TrailFault.Changed;
        }

        if (line.Kind == Erasure.Kind)
        {
            emptied.ExceptWith(Erasure.NumbersOf(line.AfterJson));
        }

        return null;
    }

    private TrailBreak? CheckNoted(DateTime at)
    {
        bool differs = noted.Exists(one => one.Number == number && one.Hash != End.Hash);
        return differs ? new TrailBreak(number, at, TrailFault.NotAsNoted) : null;
    }

    private async Task<TrailBreak?> EndAsync(RecordsContext records, CancellationToken cancellation)
    {
        if (noted.OrderBy(one => one.Number).FirstOrDefault(one => one.Number > number) is { } cutOff)
        {
            return new TrailBreak(cutOff.Number, null, TrailFault.NotAsNoted);
        }

        if (emptied.Count > 0)
        {
            long first = emptied.Min();
            DateTime at = await records.Changes.Where(line => line.Number == first).Select(line => line.At).FirstAsync(cancellation);
            return new TrailBreak(first, at, TrailFault.EmptiedUnsaid);
        }

        DateTime? stray = await records
            .Changes.Where(line => line.Number == null)
            .OrderBy(line => line.Id)
            .Select(line => (DateTime?)line.At)
            .FirstOrDefaultAsync(cancellation);
        return stray is null ? null : new TrailBreak(null, stray, TrailFault.WithoutNumber);
    }

    private static bool Same(byte[]? one, byte[]? other) => one is not null && other is not null && one.AsSpan().SequenceEqual(other);
}
