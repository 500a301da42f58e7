namespace RehabTrack.Rechecks.Suggestions;

/// <summary>The rules of <c>shared/rules.json</c>, in the order of the table.</summary>
public enum RuleCode
{
    /// <summary>Heat, swelling, pain on palpation, or lameness after work.</summary>
    SignsPresent,

    /// <summary>Ligament area up beyond the red line at a level.</summary>
    LigamentAreaRed,

    /// <summary>A new lesion, or a level that was normal and is abnormal now.</summary>
    NewOrNewlyAbnormalLevel,

    /// <summary>The trend of the case or of a lesion is worsening.</summary>
    Worsening,

    /// <summary>Ligament area up beyond the amber line at a level.</summary>
    LigamentAreaAmber,

    /// <summary>Pain came back once work began.</summary>
    PainBackWithWork,

    /// <summary>No progress in the case or in a lesion.</summary>
    NoProgress,

    /// <summary>Not sound.</summary>
    NotSound,

    /// <summary>A lesion level was not read.</summary>
    LesionLevelNotRead,

    /// <summary>The link of a lesion level is uncertain.</summary>
    LesionLinkUncertain,

    /// <summary>The verdict is not yet readable.</summary>
    NotYetReadable,

    /// <summary>Sound under anti-inflammatories, soon after shock wave, or after neurectomy: no evidence.</summary>
    SoundnessMasked,

    /// <summary>Soundness, or the medicines and treatments that could hide lameness, are not recorded.</summary>
    SoundnessNotRecorded,

    /// <summary>Nothing speaks against, and the evidence that an advance needs is not there.</summary>
    EvidenceMissing,

    /// <summary>More of the same work.</summary>
    Advance,

    /// <summary>Trot.</summary>
    AdvanceToTrot,

    /// <summary>Canter or gallop.</summary>
    AdvanceToCanter,
}
