namespace RehabTrack.Rechecks.Exercise;

/// <summary>The ground an outing may go over: a set. Empty is unfilled, and permits no outing.</summary>
[Flags]
public enum Surfaces
{
    /// <summary>Not filled in: no outing.</summary>
    None = 0,

    /// <summary>Firm and even.</summary>
    FirmEven = 1,

    /// <summary>Soft or deep, as sand.</summary>
    Soft = 2,

    /// <summary>Hard, as a road.</summary>
    Hard = 4,

    /// <summary>Uneven or sloping.</summary>
    Uneven = 8,
}
