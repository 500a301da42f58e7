using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.People;

/// <summary>Lists people by name.</summary>
public sealed class ListPeople(RecordsAccess access) : UseCase<ListPeopleInput, IReadOnlyList<PersonView>>(access)
{
    private protected override Right Right => Right.SeePeople;

    private protected override async Task<Outcome<IReadOnlyList<PersonView>>> RunAsync(
        RecordsSession session,
        ListPeopleInput input,
        CancellationToken cancellation
    )
    {
        IQueryable<PersonRecord> people = session.Records.People.Where(person => (person.ArchivedAt != null) == input.Archived);
        if (input.Role is { } role)
        {
            people = people.Where(person => person.Role == role);
        }

        foreach (string term in SearchTerms.Of(input.Query))
        {
            people = people.Where(person =>
                person.FoldedName.Contains(term)
                || (person.Mail != null && person.Mail.Contains(term))
                || (person.Phone != null && person.Phone.Contains(term))
            );
        }

        return Outcome<IReadOnlyList<PersonView>>.Of(await PeopleViews.OfAsync(session.Records, people, cancellation), []);
    }
}
