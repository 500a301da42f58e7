namespace RehabTrack.Records.Rights;

/// <summary>Who asks. A claim only: the gate looks the person up at that moment.</summary>
/// <param name="PracticeId">The practice.</param>
/// <param name="PersonId">The person.</param>
/// <param name="Role">The role the person signed in with.</param>
/// <param name="Name">The person's name, for greeting.</param>
public sealed record Actor(Guid PracticeId, Guid PersonId, Role Role, string Name)
{
    /// <summary>The share link through which the person comes; null for who signed in. It opens what the link opens and nothing else.</summary>
    public Guid? ShareId { get; init; }

    /// <summary>The session in which the person signed in; null for a share link, and for the program itself, as when the demo is told.</summary>
    public Guid? SessionId { get; init; }
}
