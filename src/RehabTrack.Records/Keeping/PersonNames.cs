using Microsoft.EntityFrameworkCore;

namespace RehabTrack.Records.Keeping;

/// <summary>Names of persons by id, put away or not.</summary>
internal static class PersonNames
{
    private static readonly Func<RecordsContext, Guid[], IAsyncEnumerable<PersonName>> ByIds = EF.CompileAsyncQuery(
        (RecordsContext records, Guid[] ids) =>
            from person in records.People
            where ids.Contains(person.Id)
            select new PersonName(person.Id, person.Name)
    );

    public static async Task<IReadOnlyDictionary<Guid, string>> OfAsync(
        RecordsContext records,
        IEnumerable<Guid?> ids,
        CancellationToken cancellation
    )
    {
        Guid[] wanted = [.. ids.OfType<Guid>().Distinct()];
        return wanted.Length == 0
            ? new Dictionary<Guid, string>()
            : (await ByIds(records, wanted).ToListAsync(cancellation)).ToDictionary(person => person.Id, person => person.Name);
    }

    public static string? Name(IReadOnlyDictionary<Guid, string> names, Guid? id) =>
        id is { } known ? names.GetValueOrDefault(known) : null;

    private sealed record PersonName(Guid Id, string Name);
}
