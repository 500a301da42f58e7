using System.Reflection;
using System.Runtime.CompilerServices;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata;

namespace RehabTrack.Records.Keeping;

/// <summary>Reads every row of every table, of all practices: to prove that it can be read, and for nothing else.</summary>
internal static class KeptRows
{
    private const int MostTold = 20;

    private static readonly MethodInfo OfOne = typeof(KeptRows).GetMethod(
        nameof(TableAsync),
        BindingFlags.NonPublic | BindingFlags.Static
    )!;

    public static async IAsyncEnumerable<KeptTable> ReadAsync(
        RecordsContext records,
        [EnumeratorCancellation] CancellationToken cancellation
    )
    {
        foreach (IEntityType kind in records.Model.GetEntityTypes().OrderBy(kind => kind.GetTableName(), StringComparer.Ordinal))
        {
            yield return await (Task<KeptTable>)OfOne.MakeGenericMethod(kind.ClrType).Invoke(null, [records, kind, cancellation])!;
        }
    }

    private static async Task<KeptTable> TableAsync<T>(RecordsContext records, IEntityType kind, CancellationToken cancellation)
        where T : class
    {
        IProperty[] key = [.. kind.FindPrimaryKey()!.Properties];
        List<(string, string)> unreadable = [];
        List<string> spoiled = [];
        long rows = 0;
        try
        {
            await foreach (
                T record in records.Set<T>().IgnoreQueryFilters().AsNoTracking().AsAsyncEnumerable().WithCancellation(cancellation)
            )
            {
                rows++;
                if (unreadable.Count < MostTold && KeptJson.Trouble(record) is { } why)
                {
                    unreadable.Add((KeyOf(record), why));
                }

                if (spoiled.Count < MostTold && KeptFiles.IsSpoiled(record))
                {
                    spoiled.Add(KeyOf(record));
                }
            }
        }
        catch (Exception broken) when (broken is FormatException or InvalidOperationException or ArgumentException or InvalidCastException)
        {
            // A column that is not what its name says ends the reading of the table.
            unreadable.Add(("", broken.Message));
        }

        return new KeptTable(kind.GetTableName()!, rows, unreadable, spoiled);

        string KeyOf(T record) => string.Join(' ', key.Select(part => part.GetGetter().GetClrValue(record)));
    }
}
