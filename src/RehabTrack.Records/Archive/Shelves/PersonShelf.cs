using RehabTrack.Records.Keeping;
using RehabTrack.Records.People;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Archive.Shelves;

/// <summary>People, but for those who were erased: they have nothing to come back to. They belong to no horse.</summary>
internal sealed class PersonShelf(RecordsSession session, Guid? horseId)
    : RecordShelf<PersonRecord>(ArchivedKind.Person, nameof(ArchivePerson))
{
    private readonly RecordsContext records = session.Records;

    protected override IQueryable<PersonRecord> Records =>
        ErasedPeople.Without(records, records.People.Where(person => person.ArchivedAt != null && horseId == null));

    protected override Task<IReadOnlyList<ArchivedThing>> ShowAsync(PersonRecord[] page, CancellationToken cancellation) =>
        Task.FromResult<IReadOnlyList<ArchivedThing>>([
            .. page.Select(person => new ArchivedPerson
            {
                Id = person.Id,
                Version = person.Version,
                At = person.ArchivedAt!.Value,
                Name = person.Name,
                Role = person.Role,
                CanSignIn = person.CanSignIn,
            }),
        ]);
}
