using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.History;

/// <summary>
/// Notes in the trail who came in and who was not let in, for those who let people in before anybody is an actor. A note is a
/// transaction of its own: never call it while another connection of the same work holds one. A use case notes through its session.
/// </summary>
public sealed class AccessBook(RecordsAccess access)
{
    /// <summary>Notes it.</summary>
    /// <param name="practiceId">The practice; the empty id when it belongs to none, as a sign-in of somebody unknown.</param>
    /// <param name="personId">The person; null when nobody is known.</param>
    /// <param name="what">What happened.</param>
    /// <param name="detail">More in a few words, at most 200 letters. Never a secret, a token, what somebody typed as a name, or clinical text.</param>
    /// <param name="cancellation">Gives up.</param>
    public async Task NoteAsync(
        Guid practiceId,
        Guid? personId,
        AccessEvent what,
        string? detail = null,
        CancellationToken cancellation = default
    )
    {
        Writer writer = new(personId ?? Guid.Empty, access.Now, Guid.Empty, nameof(AccessBook));
        await using RecordsContext records = await access.OpenAsync(practiceId, null, cancellation);
        await AccessNote.WriteAsync(records, writer, what, null, detail, cancellation);
    }

    /// <summary>Notes that a page, a file or a form was refused to somebody who is known; the same within a minute once.</summary>
    /// <param name="actor">Who asked.</param>
    /// <param name="place">The method and the pattern of the address, at most 200 letters: never an address as it was asked for.</param>
    public async Task NoteRefusalAsync(Actor actor, string place)
    {
        ArgumentNullException.ThrowIfNull(actor);
        await using RecordsContext records = await access.OpenAsync(actor.PracticeId, null, CancellationToken.None);
        await RefusedRight.NoteAsync(records, actor, place, null, access.Now);
    }
}
