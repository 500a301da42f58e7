using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Keeping;

namespace RehabTrack.Records.People;

/// <summary>Makes views of people.</summary>
internal static class PeopleViews
{
    public static async Task<IReadOnlyList<PersonView>> OfAsync(
        RecordsContext records,
        IQueryable<PersonRecord> people,
        CancellationToken cancellation
    )
    {
        PersonRecord[] found = await people.AsNoTracking().OrderBy(person => person.FoldedName).ToArrayAsync(cancellation);
        var horses = await (
            from link in records.HorseLinks
            join horse in records.Horses on link.HorseId equals horse.Id
            where link.Until == null && horse.ArchivedAt == null && people.Any(person => person.Id == link.PersonId)
            orderby horse.FoldedName
            select new
            {
                link.PersonId,
                horse.Id,
                horse.Name,
                link.Relation,
            }
        ).ToArrayAsync(cancellation);
        ILookup<Guid, PersonHorse> byPerson = horses.ToLookup(row => row.PersonId, row => new PersonHorse(row.Id, row.Name, row.Relation));
        return [.. found.Select(person => Of(person, [.. byPerson[person.Id]]))];
    }

    private static PersonView Of(PersonRecord person, IReadOnlyList<PersonHorse> horses) =>
        new()
        {
            Id = person.Id,
            Version = person.Version,
            Name = person.Name,
            Role = person.Role,
            Phone = person.Phone,
            Mail = person.Mail,
            Language = person.Language,
            CanSignIn = person.CanSignIn,
            Archived = person.ArchivedAt is not null,
            Horses = horses,
        };
}
