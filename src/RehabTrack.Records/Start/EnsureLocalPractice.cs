using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Start;

/// <summary>A step of starting up without the demo: makes the one practice with its one local vet where there is none yet.</summary>
public sealed class EnsureLocalPractice(RecordsAccess access)
{
    /// <summary>The actor of the local vet: the first vet who may sign in.</summary>
    /// <param name="start">What a new practice begins with.</param>
    /// <param name="cancellation">Gives up.</param>
    public async Task<Actor> RunAsync(LocalPractice start, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(start);
        await using RecordsContext any = await access.OpenAsync(Guid.Empty, null, cancellation);
        PersonRecord? vet = await any
            .People.IgnoreQueryFilters()
            .AsNoTracking()
            .Where(person => person.CanSignIn && person.ArchivedAt == null && person.Role == Role.Vet)
            .OrderBy(person => person.Id)
            .FirstOrDefaultAsync(cancellation);
        if (vet is not null)
        {
            return new Actor(vet.PracticeId, vet.Id, vet.Role, vet.Name);
        }

        return await FoundPractice.RunAsync(
            access,
            new FoundPractice.Founding(
                Guid.CreateVersion7(),
                nameof(EnsureLocalPractice),
                start.PracticeName,
                null,
                PracticeTime.IsKnown(start.TimeZone) ? start.TimeZone : "UTC",
                start.Language,
                start.VetName,
                null,
                null,
                "{}"
            ),
            cancellation
        );
    }
}
