using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Room;

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

    /// <summary>The horses that the person who asks stands beside today; through a share link only those that the link opens.</summary>
    public static IQueryable<HorseRecord> Own(RecordsSession session, IQueryable<HorseRecord> horses)
    {
        Guid personId = session.Person.Id;
        IQueryable<HorseLinkRecord> beside = session.Records.HorseLinks.Where(link => link.PersonId == personId && link.Until == null);
        if (session.Scope is { } scope)
        {
            HorseRelation relation = scope.Relation;
            beside = beside.Where(link => link.Relation == relation);
            if (scope.HorseId is { } only)
            {
                horses = horses.Where(horse => horse.Id == only);
            }

            if (relation == HorseRelation.Trainer)
            {
                Guid? yardId = scope.YardId;
                horses = horses.Where(horse => horse.YardId == yardId);
            }
        }

        return horses.Where(horse => beside.Any(link => link.HorseId == horse.Id));
    }

    private sealed record HorsePersonRow(Guid HorseId, HorsePersonView View);
}
