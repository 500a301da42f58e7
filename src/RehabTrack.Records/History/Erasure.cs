using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Keeping;

namespace RehabTrack.Records.History;

/// <summary>
/// Empties lines of the trail: their words and their salt go, their hashes stay, and a line of its own says which they were and why. A
/// line that is empty without such a line is one that somebody tampered with.
/// </summary>
internal static class Erasure
{
    /// <summary>The kind of the line that says so.</summary>
    public const string Kind = "Erasure";

    /// <summary>How many lines one line tells of at most.</summary>
    private const int MostNumbers = 10_000;

    /// <summary>Empties lines in the transaction that runs.</summary>
    /// <param name="records">The database, entered for the practice and for whoever writes.</param>
    /// <param name="lines">Which; lines that were emptied before are passed over.</param>
    /// <param name="reason">Why.</param>
    /// <param name="recordId">The record whose words they were; null when it is none's.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <returns>How many were emptied.</returns>
    public static async Task<int> EmptyAsync(
        RecordsContext records,
        IQueryable<ChangeRecord> lines,
        ErasureReason reason,
        Guid? recordId,
        CancellationToken cancellation
    )
    {
        long[] numbers = await lines
            .Where(line => line.Salt != null && line.Number >= 1 && Erasable.Kinds.Contains(line.Kind))
            .OrderBy(line => line.Number)
            .Select(line => line.Number!.Value)
            .ToArrayAsync(cancellation);
        foreach (long[] some in numbers.Chunk(MostNumbers))
        {
            await records
                .Changes.Where(line => line.Number != null && some.Contains(line.Number.Value))
                .ExecuteUpdateAsync(
                    set =>
                        set.SetProperty(line => line.BeforeJson, (string?)null)
                            .SetProperty(line => line.AfterJson, "")
                            .SetProperty(line => line.Salt, (byte[]?)null),
                    cancellation
                );
            records.Changes.Add(
                HistoryInterceptor.Line(
                    records,
                    Kind,
                    recordId ?? Guid.Empty,
                    null,
                    null,
                    new() { ["reason"] = reason, ["numbers"] = some }
                )
            );
        }

        await records.SaveChangesAsync(cancellation);
        return numbers.Length;
    }

    /// <summary>The numbers of the lines that such a line says were emptied.</summary>
    public static IEnumerable<long> NumbersOf(string afterJson)
    {
        using JsonDocument said = JsonDocument.Parse(afterJson);
        return said.RootElement.TryGetProperty("numbers", out JsonElement numbers)
            ? [.. numbers.EnumerateArray().Select(number => number.GetInt64())]
            : [];
    }
}
