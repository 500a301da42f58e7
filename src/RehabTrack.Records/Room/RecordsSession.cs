using RehabTrack.Records.Accounts;
using RehabTrack.Records.History;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Shares;

namespace RehabTrack.Records.Room;

/// <summary>One use case at work: the context of its practice, who asks, and the practice's time.</summary>
internal sealed class RecordsSession(RecordsContext records, Access access, DateTime now)
{
    private readonly HashSet<Guid> touchedCases = [];

    public RecordsContext Records { get; } = records;

    public PersonRecord Person { get; } = access.Person;

    /// <summary>The practice as it stood when the session began; read only.</summary>
    public PracticeRecord Practice { get; } = access.Practice;

    public Reach Reach { get; } = access.Reach;

    /// <summary>To what a share link holds the reach; null for who signed in.</summary>
    public ShareScope? Scope { get; } = access.Scope;

    public DateTime Now { get; } = now;

    /// <summary>The practice's calendar date.</summary>
    public DateOnly Today { get; } = PracticeTime.DateOf(now, access.Practice.TimeZone);

    public IReadOnlyCollection<Guid> TouchedCases => touchedCases;

    public bool Allows(Right right) => RightsTable.ReachOf(Person.Role, right) == Reach.Practice;

    /// <summary>Says that what the analysis reads of a case has changed: its summary is renewed before the commit.</summary>
    public void Touch(Guid caseId) => touchedCases.Add(caseId);

    /// <summary>Notes in the trail, with what the use case writes, what came to be of somebody's coming in.</summary>
    /// <param name="what">What happened.</param>
    /// <param name="recordId">The record it is about; null when none.</param>
    /// <param name="detail">More in a few words; never a secret or clinical text.</param>
    public void Note(AccessEvent what, Guid? recordId, string? detail = null) =>
        Records.Changes.Add(AccessLine.Of(Records, what, recordId, detail));

    /// <summary>
    /// Uses up the confirmation that the person gave; false when there is none. The demo knows no passwords, and the program itself signs
    /// nothing: neither is asked. Stands only when the transaction is kept.
    /// </summary>
    public async Task<bool> UseConfirmationAsync(CancellationToken cancellation) =>
        access.Session is not { IsDemo: false } session || await SessionLife.UseUpAsync(Records, session.Id, Now, cancellation);

    public Guid NewId() => Keeping.NewId.At(Now);
}
