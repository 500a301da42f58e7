using RehabTrack.Rechecks.Permits;
using RehabTrack.Rechecks.Suggestions;

namespace RehabTrack.Records.Exercise;

/// <summary>The signs that a vet found at a visit; null and not checked are never "no".</summary>
public sealed record Visit
{
    /// <summary>What the rules ask for.</summary>
    public VisitSigns Signs { get; init; } = new();

    /// <summary>Lameness by the AAEP scale, 0 to 5; null when not looked for.</summary>
    public int? LamenessAaep { get; init; }

    /// <summary>How it was looked for: straight or circle, hard or soft, in hand or ridden.</summary>
    public string? LamenessContext { get; init; }

    /// <summary>How long a flexion test was held, s; null when not done or not written down.</summary>
    public int? FlexionSeconds { get; init; }

    /// <summary>How the horse answered to the flexion test.</summary>
    public SignGrade FlexionResponse { get; init; }

    /// <summary>Heat.</summary>
    public SignGrade Heat { get; init; }

    /// <summary>Swelling.</summary>
    public SignGrade Swelling { get; init; }

    /// <summary>Pain on palpation.</summary>
    public SignGrade Pain { get; init; }

    /// <summary>Whatever else is to be kept, in the vet's words.</summary>
    public string? Note { get; init; }

    /// <summary>The signs as the rules take them: what was checked by hand answers for heat, swelling and pain.</summary>
    public VisitSigns ForRules
    {
        get
        {
            SignGrade[] checkedByHand = [Heat, Swelling, Pain];
            return checkedByHand.Any(grade => grade > SignGrade.None) ? Signs with { HeatSwellingOrPain = true }
                : checkedByHand.All(grade => grade == SignGrade.None)
                    ? Signs with
                    {
                        HeatSwellingOrPain = Signs.HeatSwellingOrPain ?? false,
                    }
                : Signs;
        }
    }
}
