using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Horses;

/// <summary>Finds horses by name, chip, yard, owner or trainer. Owners, trainers and referring vets find their own.</summary>
public sealed class FindHorses(RecordsAccess access) : UseCase<FindHorsesInput, HorsePage>(access)
{
    private const int LargestPage = 100;

    private protected override Right Right => Right.SeeHorses;

    private protected override async Task<Outcome<HorsePage>> RunAsync(
        RecordsSession session,
        FindHorsesInput input,
        CancellationToken cancellation
    )
    {
        RecordsContext records = session.Records;
        int size = Math.Clamp(input.PageSize, 1, LargestPage);
        IQueryable<HorseRecord> horses = records.Horses.AsNoTracking().Where(horse => (horse.ArchivedAt != null) == input.Archived);
        if (session.Reach == Reach.OwnHorses)
        {
            horses = HorsePeople.Own(session, horses);
        }

        foreach (string term in SearchTerms.Of(input.Query))
        {
            horses = horses.Where(horse =>
                horse.Search.Contains(term)
                || records.Yards.Any(yard => yard.Id == horse.YardId && yard.FoldedName.Contains(term))
                || records.HorseLinks.Any(link =>
                    link.HorseId == horse.Id
                    && link.Until == null
                    && records.People.Any(person => person.Id == link.PersonId && person.FoldedName.Contains(term))
                )
            );
        }

        int total = await horses.CountAsync(cancellation);
        int page = Math.Clamp(input.Page, 1, Math.Max(1, (total + size - 1) / size));
        var found = await (
            from horse in horses
            join yard in records.Yards on horse.YardId equals yard.Id into yards
            from yard in yards.DefaultIfEmpty()
            orderby horse.FoldedName, horse.Id
            select new
            {
                horse.Id,
                horse.Name,
                horse.Microchip,
                horse.BirthYear,
                Yard = yard == null ? null : yard.Name,
            }
        )
            .Skip((page - 1) * size)
            .Take(size)
            .ToArrayAsync(cancellation);
        Guid[] ids = [.. found.Select(horse => horse.Id)];
        bool own = session.Reach == Reach.OwnHorses;
        ILookup<Guid, HorsePersonView>? people = own ? null : await HorsePeople.OfHorsesAsync(records, ids, cancellation);
        ILookup<Guid, CaseRow>? cases = own ? null : await CaseRowQueries.OfHorsesAsync(session, ids, onlyOpen: true, cancellation);
        return new HorsePage(
            [
                .. found.Select(horse => new HorseRow
                {
                    Id = horse.Id,
                    Name = horse.Name,
                    Microchip = own ? null : horse.Microchip,
                    BirthYear = own ? null : horse.BirthYear,
                    Yard = horse.Yard,
                    Owner = people is null ? null : HorsePeople.First(people[horse.Id], HorseRelation.Owner)?.Name,
                    Trainer = people is null ? null : HorsePeople.First(people[horse.Id], HorseRelation.Trainer)?.Name,
                    OpenCases = cases is null ? [] : [.. cases[horse.Id]],
                }),
            ],
            total,
            page,
            size
        );
    }
}
