namespace RehabTrack.Rechecks.Exams;

/// <summary>How the limb stood. Unloaded fibres look darker: examinations compare within one stance only (AS 346).</summary>
public enum Stance
{
    /// <summary>Limb loaded.</summary>
    WeightBearing,

    /// <summary>Limb raised.</summary>
    NonWeightBearing,
}
