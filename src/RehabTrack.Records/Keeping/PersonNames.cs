using Microsoft.EntityFrameworkCore;

namespace RehabTrack.Records.Keeping;

/// <summary>Names of persons by id, put away or not.</summary>
internal static class PersonNames
{
    public static async Task<IReadOnlyDictionary<Guid, string>> OfAsync(
        RecordsContext records,
        IEnumerable<Guid?> ids,
        CancellationToken cancellation
    )
    {
        Guid[] wanted = [.. ids.OfType<Guid>().Distinct()];
        return wanted.Length == 0
            ? new Dictionary<Guid, string>()
            : await records
                .People.Where(person => wanted.Contains(person.Id))
                .Select(person => new { person.Id, person.Name })
                .ToDictionaryAsync(person => person.Id, person => person.Name, cancellation);
    }

    public static string? Name(IReadOnlyDictionary<Guid, string> names, Guid? id) =>
        id is { } known ? names.GetValueOrDefault(known) : null;
}
