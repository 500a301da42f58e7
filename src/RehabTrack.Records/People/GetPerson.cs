using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.People;

/// <summary>Reads one person, put away or not.</summary>
public sealed class GetPerson(RecordsAccess access) : UseCase<Guid, PersonView>(access)
{
    private protected override Right Right => Right.SeePeople;

    private protected override async Task<Outcome<PersonView>> RunAsync(RecordsSession session, Guid input, CancellationToken cancellation)
    {
        IReadOnlyList<PersonView> found = await PeopleViews.OfAsync(
            session.Records,
            session.Records.People.Where(person => person.Id == input),
            cancellation
        );
        return found is [PersonView person] ? person : RecordProblems.NotFound("person");
    }
}
