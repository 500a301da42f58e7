using RehabTrack.Records.Keeping;

namespace RehabTrack.Records.People;

/// <summary>Of whom nothing is held any more, as the trail tells.</summary>
internal static class ErasedPeople
{
    /// <summary>Those of some people who were not erased.</summary>
    public static IQueryable<PersonRecord> Without(RecordsContext records, IQueryable<PersonRecord> people) =>
        people.Where(person => !records.Changes.Any(line => line.RecordId == person.Id && line.UseCase == nameof(ErasePerson)));
}
