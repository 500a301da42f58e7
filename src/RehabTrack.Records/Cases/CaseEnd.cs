namespace RehabTrack.Records.Cases;

/// <summary>Why a horse left the practice's care before its rehabilitation was over.</summary>
public enum CaseEnd
{
    /// <summary>Another practice goes on with it.</summary>
    Transferred,

    /// <summary>Sold.</summary>
    Sold,

    /// <summary>Retired from work.</summary>
    Retired,

    /// <summary>Died, or was put down.</summary>
    Died,
}
