using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Keeping;

namespace RehabTrack.Records.Horses;

/// <summary>Reads the people beside horses.</summary>
internal static class HorsePeople
{
    private static readonly Func<RecordsContext, Guid[], IAsyncEnumerable<HorsePersonRow>> OfHorses = EF.CompileAsyncQuery(
        (RecordsContext records, Guid[] horseIds) =>
            from link in records.HorseLinks
            join person in records.People on link.PersonId equals person.Id
            where horseIds.Contains(link.HorseId) && link.Until == null
            orderby link.From descending, link.Id descending
            select new HorsePersonRow(
                link.HorseId,
                new HorsePersonView(person.Id, person.Name, person.Phone, person.Mail, link.Relation, link.From)
            )
    );

    /// <summary>Those who stand beside the horses today, latest first within a relation.</summary>
    public static async Task<ILookup<Guid, HorsePersonView>> OfHorsesAsync(
        RecordsContext records,
        Guid[] horseIds,
        CancellationToken cancellation
    ) => (await OfHorses(records, horseIds).ToListAsync(cancellation)).ToLookup(row => row.HorseId, row => row.View);

    public static HorsePersonView? First(IEnumerable<HorsePersonView> people, HorseRelation relation) =>
        people.FirstOrDefault(person => person.Relation == relation);

    /// <summary>The horses a person stands beside today.</summary>
    public static IQueryable<HorseRecord> Own(RecordsContext records, IQueryable<HorseRecord> horses, Guid personId) =>
        horses.Where(horse => records.HorseLinks.Any(link => link.HorseId == horse.Id && link.PersonId == personId && link.Until == null));

    private sealed record HorsePersonRow(Guid HorseId, HorsePersonView View);
}
