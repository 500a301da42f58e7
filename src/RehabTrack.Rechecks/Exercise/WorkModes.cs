namespace RehabTrack.Rechecks.Exercise;

/// <summary>How the horse may be worked: a set. Empty is unfilled, and permits no outing.</summary>
[Flags]
public enum WorkModes
{
    /// <summary>Not filled in: no outing.</summary>
    None = 0,

    /// <summary>Led in hand.</summary>
    InHand = 1,

    /// <summary>Ridden.</summary>
    Ridden = 2,

    /// <summary>On long reins.</summary>
    LongRein = 4,
}
