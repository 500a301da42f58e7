namespace RehabTrack.Records.Cases;

/// <summary>How a case ended.</summary>
public enum CaseEnd
{
    /// <summary>The horse left: another practice goes on with it.</summary>
    Transferred,

    /// <summary>The horse left: sold.</summary>
    Sold,

    /// <summary>The horse left: retired from work.</summary>
    Retired,

    /// <summary>Died, or was put down.</summary>
    Died,

    /// <summary>The injury is resolved and needs no recheck any more. It ends this case alone.</summary>
    Resolved,
}
