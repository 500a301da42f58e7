namespace RehabTrack.Records.Examinations;

/// <summary>What carried the sound into the skin.</summary>
public enum Coupling
{
    /// <summary>Gel.</summary>
    Gel,

    /// <summary>Alcohol.</summary>
    Alcohol,
}
