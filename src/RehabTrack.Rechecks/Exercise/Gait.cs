namespace RehabTrack.Rechecks.Exercise;

/// <summary>The gaits of an outing, slowest first.</summary>
public enum Gait
{
    /// <summary>Walk.</summary>
    Walk,

    /// <summary>Trot.</summary>
    Trot,

    /// <summary>Canter.</summary>
    Canter,

    /// <summary>Gallop.</summary>
    Gallop,
}
