namespace RehabTrack.Rechecks.Suggestions;

/// <summary>What a rule suggests to the vet, in rising precedence: stop outranks step back, that outranks hold, that outranks advance.</summary>
public enum SuggestedMove
{
    /// <summary>One step up.</summary>
    Advance,

    /// <summary>No more work than now.</summary>
    Hold,

    /// <summary>Less work.</summary>
    StepBack,

    /// <summary>No work; call the vet.</summary>
    Stop,
}
