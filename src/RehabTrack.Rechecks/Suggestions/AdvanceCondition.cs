namespace RehabTrack.Rechecks.Suggestions;

/// <summary>What an advance needs.</summary>
public enum AdvanceCondition
{
    /// <summary>The lesion fell by more than the error at its worst level, or is at target.</summary>
    LesionFallen,

    /// <summary>The ligament area fell by more than the error at the same level.</summary>
    LigamentFallen,

    /// <summary>The lesion is shown not to have grown: the upper bound of its change lies below the amber line.</summary>
    LesionStable,

    /// <summary>The ligament area is shown not to have grown: the upper bound of its change lies below the amber line.</summary>
    LigamentStable,

    /// <summary>The level is brighter: its echogenicity grade is lower than before, on the same scale.</summary>
    Brighter,

    /// <summary>The level is better aligned: its fibre-alignment grade is lower than before, on the same scale.</summary>
    BetterAligned,

    /// <summary>Sound, with nothing that hides lameness.</summary>
    Sound,

    /// <summary>Sound at trot in hand, with nothing that hides lameness.</summary>
    SoundAtTrotInHand,

    /// <summary>Long enough since the latest of onset, re-injury and plan start.</summary>
    LongEnough,

    /// <summary>Echogenicity near normal at the worst level.</summary>
    EchogenicityNearNormal,

    /// <summary>Fibre alignment near normal at the worst level.</summary>
    FibreAlignmentNearNormal,
}
