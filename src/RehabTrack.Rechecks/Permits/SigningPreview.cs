namespace RehabTrack.Rechecks.Permits;

/// <summary>What a signature would change, for the vet to see before signing.</summary>
/// <param name="Before">The permit of the day from which it would count, without it.</param>
/// <param name="After">The permit of that day with it.</param>
/// <param name="Lacks">What keeps it from counting in full; empty when it does. With a lack it only lowers.</param>
public sealed record SigningPreview(Permit Before, Permit After, IReadOnlyList<PermitReason> Lacks)
{
    /// <summary>Whether a component of the work would rise: an increase, which is an advance. A day of rest in the week hides none.</summary>
    public bool IsIncrease => !After.BeforeWeek.IsWithin(Before.BeforeWeek);

    /// <summary>The preview of a plan or a decision.</summary>
    /// <param name="history">What happened so far.</param>
    /// <param name="signature">A <see cref="PlanSigned"/> or <see cref="DecisionSigned"/>, with an order after all that happened.</param>
    /// <param name="settings">The days it goes by; null for the defaults.</param>
    /// <exception cref="ArgumentException">The entry is no signature.</exception>
    public static SigningPreview Of(PermitHistory history, PermitEntry signature, PermitSettings? settings = null)
    {
        ArgumentNullException.ThrowIfNull(history);
        ArgumentNullException.ThrowIfNull(signature);
        DateOnly from = signature switch
        {
            PlanSigned plan => plan.From,
            DecisionSigned decision => decision.Decision.From,
            _ => throw new ArgumentException("Only a plan or a decision is signed.", nameof(signature)),
        };
        DateOnly day = from > signature.RecordedOn ? from : signature.RecordedOn;
        Permit before = PermitReader.For(history, day, settings);
        Permit after = PermitReader.For(history.With(signature), day, settings);
        return new(before, after, [.. after.Reasons.Where(IsLack).Except(before.Reasons)]);
    }

    private static bool IsLack(PermitReason reason) =>
        reason.Code
            is PermitReasonCode.PlanHasProblems
                or PermitReasonCode.PlanNotAdvance
                or PermitReasonCode.DecisionWithoutExamination
                or PermitReasonCode.DecisionBeforeGate
                or PermitReasonCode.DecisionOutOfPlace;
}
