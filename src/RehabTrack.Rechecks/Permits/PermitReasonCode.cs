namespace RehabTrack.Rechecks.Permits;

/// <summary>Why a permit is as it is.</summary>
public enum PermitReasonCode
{
    /// <summary>No plan is signed.</summary>
    NoPlan,

    /// <summary>The signed plan has problems and permits nothing.</summary>
    PlanHasProblems,

    /// <summary>The plan ended: a vet closed it.</summary>
    PlanClosed,

    /// <summary>The plan ended: no case that it was signed for is open.</summary>
    NoOpenCase,

    /// <summary>A vet stopped the work.</summary>
    Stopped,

    /// <summary>The responsible vet withdrew.</summary>
    VetWithdrawn,

    /// <summary>A vet paused the work.</summary>
    PausedByVet,

    /// <summary>Somebody paused the work or said that the horse is away.</summary>
    PausedByPerson,

    /// <summary>A concern was reported.</summary>
    Concern,

    /// <summary>The log shows heat, swelling, pain or lameness.</summary>
    SignInLog,

    /// <summary>Out of work or without a log for longer than the setting: a vet's word is needed.</summary>
    AwayTooLong,

    /// <summary>The recheck before the next step was missed by more than the grace.</summary>
    GateMissed,

    /// <summary>A recheck was missed by more than the grace.</summary>
    RecheckMissed,

    /// <summary>The signature was valid until a day that has passed.</summary>
    SignatureOver,

    /// <summary>The recheck before the next step is due: growth has stopped.</summary>
    GateDue,

    /// <summary>A recheck is due: growth has stopped.</summary>
    RecheckDue,

    /// <summary>A vet decided to hold.</summary>
    HeldByVet,

    /// <summary>A setback: growth has stopped.</summary>
    Setback,

    /// <summary>An examination that nobody signed yet shows a setback: growth has stopped.</summary>
    UnsignedSetback,

    /// <summary>What the last decision rested on was changed: growth has stopped.</summary>
    BasisChanged,

    /// <summary>No log for longer than the setting: growth has stopped.</summary>
    NoLog,

    /// <summary>Somebody lowered the work for a time.</summary>
    Lowered,

    /// <summary>As many days of this week as a week permits were worked: the horse rests.</summary>
    RestDay,

    /// <summary>Of the most minutes of a week so many are done that less is left for today.</summary>
    WeekMinutesDone,

    /// <summary>Effective time is behind the signed weeks: the least of the rows between holds.</summary>
    BehindSignedWeeks,

    /// <summary>A vet signed lower ceilings than the plan's.</summary>
    LowerCeilings,

    /// <summary>The plan's caps lower the step's work.</summary>
    Capped,

    /// <summary>The new plan version was not signed as an advance: no more than before.</summary>
    PlanNotAdvance,

    /// <summary>A decision was signed without the examination that it needs: it only lowers.</summary>
    DecisionWithoutExamination,

    /// <summary>A decision would pass a gate that is not due, or more than one: it only lowers.</summary>
    DecisionBeforeGate,

    /// <summary>A decision was signed on another plan version, or on none, or places the horse where it cannot stand: it only lowers.</summary>
    DecisionOutOfPlace,

    /// <summary>The step's row is not filled in: no outing.</summary>
    StepUnfilled,

    /// <summary>No floor was signed: nothing on bad days.</summary>
    NoFloor,

    /// <summary>The work of the step on this day of effective time.</summary>
    Step,
}
