namespace RehabTrack.Rechecks.Exercise;

/// <summary>What a vet's signature on a visit decides.</summary>
public enum DecisionKind
{
    /// <summary>On to a step and a day in it; work grows by effective time up to the next gate.</summary>
    Advance,

    /// <summary>The same work; nothing grows.</summary>
    Hold,

    /// <summary>Back to an earlier step, or an earlier day of the same step. Later signatures of the past are void.</summary>
    StepBack,

    /// <summary>No work until a vet advances or steps back.</summary>
    Stop,

    /// <summary>No work for a time.</summary>
    Pause,

    /// <summary>The plan ends.</summary>
    Close,
}
