namespace RehabTrack.Rechecks.Schedule;

/// <summary>What set the date a recheck is due.</summary>
public enum DueBy
{
    /// <summary>The interval after the last signed examination.</summary>
    Interval,

    /// <summary>A gate of the plan that comes before the interval ends.</summary>
    Gate,

    /// <summary>A day that a vet signed, before the interval ends.</summary>
    Signature,
}
