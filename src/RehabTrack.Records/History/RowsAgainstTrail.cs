using System.Reflection;
using System.Runtime.CompilerServices;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata;
using RehabTrack.Records.Keeping;

namespace RehabTrack.Records.History;

/// <summary>
/// Holds every record that the trail tells of, of all practices, against what was told of it last: a value that was changed past the program
/// stands in no line. What the trail does not tell, or what was erased from it, cannot be held against anything.
/// </summary>
internal static class RowsAgainstTrail
{
    private const int AtOnce = 200;

    private static readonly MethodInfo OfOne = typeof(RowsAgainstTrail).GetMethod(
        nameof(OfKindAsync),
        BindingFlags.NonPublic | BindingFlags.Static
    )!;

    /// <summary>The records that are not as they were told.</summary>
    public static async IAsyncEnumerable<UnlikeTold> FindAsync(
        RecordsContext records,
        [EnumeratorCancellation] CancellationToken cancellation
    )
    {
        foreach (IEntityType kind in records.Model.GetEntityTypes().Where(kind => HistoryInterceptor.IsTold(kind.ClrType)))
        {
            IAsyncEnumerable<UnlikeTold> found =
                (IAsyncEnumerable<UnlikeTold>)OfOne.MakeGenericMethod(kind.ClrType).Invoke(null, [records, kind, cancellation])!;
            await foreach (UnlikeTold one in found)
            {
                yield return one;
            }
        }
    }

    private static async IAsyncEnumerable<UnlikeTold> OfKindAsync<T>(
        RecordsContext records,
        IEntityType type,
        [EnumeratorCancellation] CancellationToken cancellation
    )
        where T : KeptRecord
    {
        (string Name, IProperty Property)[] fields = [.. FieldsOf(type)];
        (string Name, IProperty Property)[] readingFields = [.. FieldsOf(records.Model.FindEntityType(typeof(ReadingRecord))!)];
        Guid after = Guid.Empty;
        while (true)
        {
            T[] some = await records
                .Set<T>()
                .IgnoreQueryFilters()
                .AsNoTracking()
                .Where(record => record.Id > after)
                .OrderBy(record => record.Id)
                .Take(AtOnce)
                .ToArrayAsync(cancellation);
            if (some.Length == 0)
            {
                yield break;
            }

            after = some[^1].Id;
            Guid[] ids = [.. some.Select(record => record.Id)];
            Dictionary<Guid, ToldRecord> told = await ToldAsync(records, HistoryInterceptor.KindOf(typeof(T)), ids, cancellation);
            ILookup<Guid, ReadingRecord> readings =
                typeof(T) == typeof(ExaminationRecord)
                    ? (
                        await records
                            .Readings.IgnoreQueryFilters()
                            .AsNoTracking()
                            .Where(reading => ids.Contains(reading.ExaminationId))
                            .ToArrayAsync(cancellation)
                    ).ToLookup(reading => reading.ExaminationId)
                    : Enumerable.Empty<ReadingRecord>().ToLookup(reading => reading.ExaminationId);
            foreach (T record in some)
            {
                if (told.TryGetValue(record.Id, out ToldRecord? lines))
                {
                    foreach (
                        string field in Differing(fields, record, lines.Fields)
                            .Concat(Differing(readingFields, readings[record.Id], lines.Readings))
                    )
                    {
                        yield return new UnlikeTold(HistoryInterceptor.KindOf(typeof(T)), record.Id, field);
                    }
                }
            }
        }
    }

    private static async Task<Dictionary<Guid, ToldRecord>> ToldAsync(
        RecordsContext records,
        string kind,
        Guid[] ids,
        CancellationToken cancellation
    )
    {
        Dictionary<Guid, ToldRecord> told = [];
        await foreach (
            var line in records
                .Changes.IgnoreQueryFilters()
                .Where(line => ids.Contains(line.RecordId) && line.Kind == kind && line.Number >= 1)
                .OrderBy(line => line.Number)
                .Select(line => new
                {
                    line.RecordId,
                    line.BeforeJson,
                    line.AfterJson,
                })
                .AsAsyncEnumerable()
                .WithCancellation(cancellation)
        )
        {
            if (!told.TryGetValue(line.RecordId, out ToldRecord? record))
            {
                record = new ToldRecord();
                told.Add(line.RecordId, record);
            }

            record.Take(line.BeforeJson, line.AfterJson);
        }

        return told;
    }

    private static IEnumerable<(string, IProperty)> FieldsOf(IEntityType type) =>
        type.GetProperties()
            .Where(property => !ShareLinkRecord.NotedAtTheDoor.Contains(property.Name, StringComparer.Ordinal))
            .Select(property => (JsonNamingPolicy.CamelCase.ConvertName(property.Name), property));

    private static IEnumerable<string> Differing(
        (string Name, IProperty Property)[] fields,
        object record,
        Dictionary<string, string> told
    ) =>
        fields
            .Where(field => told.TryGetValue(field.Name, out string? said) && said != Json(field.Property.GetGetter().GetClrValue(record)))
            .Select(field => field.Name);

    private static IEnumerable<string> Differing(
        (string Name, IProperty Property)[] fields,
        IEnumerable<ReadingRecord> kept,
        Dictionary<Guid, Dictionary<string, string>> told
    )
    {
        Dictionary<Guid, ReadingRecord> byId = kept.ToDictionary(reading => reading.Id);
        foreach ((Guid id, Dictionary<string, string> said) in told)
        {
            if (byId.TryGetValue(id, out ReadingRecord? reading))
            {
                foreach (string field in Differing(fields, reading, said))
                {
                    yield return $"readings[{id:D}].{field}";
                }
            }
            else
            {
                yield return $"readings[{id:D}]";
            }
        }
    }

    private static string Json(object? value) => JsonSerializer.Serialize(value, RecordJson.Options);
}
