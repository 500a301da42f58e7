namespace RehabTrack.Rechecks.Suggestions;

/// <summary>What a visit found beside the pictures, as far as the rules ask for it. Null is not recorded, never "no".</summary>
public sealed record VisitSigns
{
    /// <summary>Heat, swelling, pain on palpation, or lameness after work.</summary>
    public bool? HeatSwellingOrPain { get; init; }

    /// <summary>Pain came back once work began.</summary>
    public bool? PainBackWithWork { get; init; }

    /// <summary>Sound in the work done now.</summary>
    public bool? Sound { get; init; }

    /// <summary>Sound at trot in hand.</summary>
    public bool? SoundAtTrotInHand { get; init; }

    /// <summary>Under an anti-inflammatory or another medicine that hides lameness.</summary>
    public bool? UnderAntiInflammatory { get; init; }

    /// <summary>Whether shock wave was given at any time.</summary>
    public bool? HadShockWave { get; init; }

    /// <summary>The latest shock wave; null when there was none, or when its date is not known.</summary>
    public DateOnly? LastShockWave { get; init; }

    /// <summary>A nerve was cut.</summary>
    public bool? HadNeurectomy { get; init; }

    /// <summary>When the plan began; null when there is none.</summary>
    public DateOnly? PlanStart { get; init; }
}
