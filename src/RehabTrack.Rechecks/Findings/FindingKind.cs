namespace RehabTrack.Rechecks.Findings;

/// <summary>What a person must be told.</summary>
public enum FindingKind
{
    /// <summary>Ligament area up at a level between examinations: amber above 10 %, red above 20 %.</summary>
    LigamentAreaRise,

    /// <summary>A level read for the first time, beside levels followed so far, shows lesion.</summary>
    NewLesionLevel,

    /// <summary>A level that was normal is abnormal now: a setback whatever the total does.</summary>
    NewlyAbnormalLevel,

    /// <summary>The trend is worsening.</summary>
    Worsening,

    /// <summary>The trend shows no progress.</summary>
    NoProgress,

    /// <summary>The trend is healing more slowly than is acceptable.</summary>
    HealingSlowly,

    /// <summary>A level that showed lesion was not read.</summary>
    LesionLevelMissed,

    /// <summary>A link below the setting: the page asks.</summary>
    UncertainLink,

    /// <summary>A whole examination reads lower or higher than the others.</summary>
    TapeShift,

    /// <summary>Another person measured than before: the error is wider.</summary>
    MeasurerChanged,

    /// <summary>Nobody is named as measurer: taken as the same person.</summary>
    MeasurerNotGiven,

    /// <summary>An examination in another stance is not compared.</summary>
    StanceDiffers,

    /// <summary>The tape of an examination starts at a landmark that no measured distance leads to: it is not compared.</summary>
    LandmarkNotMeasured,

    /// <summary>Onset unknown: the trend starts at the first examination.</summary>
    OnsetUnknown,

    /// <summary>The baseline lies within 10 days of onset.</summary>
    ProvisionalBaseline,

    /// <summary>Examinations of the acute phase are left out of the trend.</summary>
    AcutePhaseLeftOut,

    /// <summary>Examinations from before the injury are left out of the trend; they hold the horse's own sound sizes.</summary>
    BeforeInjury,

    /// <summary>A lesion could not be outlined: its area is unknown, not zero.</summary>
    DiffuseLesion,

    /// <summary>An end level still shows lesion: the volume is a lower bound.</summary>
    VolumeLowerBound,

    /// <summary>Levels are missing: no severity, and the total may mislead.</summary>
    LevelsIncomplete,

    /// <summary>A grade was given on another scale than before and is not compared.</summary>
    ScaleChanged,

    /// <summary>The ligament is larger than at the same level of the other sound limb, beyond the line.</summary>
    LargerThanOtherLimb,

    /// <summary>Only the echogenicity grade changed: never the only ground.</summary>
    EchogenicityOnly,

    /// <summary>Fewer than three levels at an examination.</summary>
    TooFewLevels,

    /// <summary>Fibre alignment was read worse at a place than before; the probability is that it truly is.</summary>
    FibreAlignmentWorse,

    /// <summary>The levels of an examination are told in another way than those of the others, by tape or by another zone scheme: it is not compared.</summary>
    LevelsToldOtherwise,

    /// <summary>Levels are zones and no zone length was measured on the horse: no lesion length and no volume.</summary>
    ZoneLengthNotMeasured,

    /// <summary>An examination soon after an injection into the lesion: what it shows may be what was injected.</summary>
    SoonAfterInjection,
}
