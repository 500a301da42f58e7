using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Healing;

/// <summary>The thresholds of trend and verdict; defaults and sources stand in <c>shared/trend.json</c>.</summary>
public sealed record TrendSettings
{
    private static readonly ReferenceTable Table = ReferenceTable.Load("trend");
    private static readonly int Interval = (int)ReferenceTable.Load("schedule")["intervalDays"];

    /// <summary>How many of the last examinations decide, at least 3.</summary>
    public int WindowExaminations { get; init; } = (int)Table["windowExaminations"];

    /// <summary>Slowest acceptable rate of lesion volume and area, log per 60 days, below 0; without a plan, or while it allows walk.</summary>
    public double SlowestAcceptableLogPer60Days { get; init; } = Table["slowestAcceptableLogPer60Days"];

    /// <summary>The same while the plan allows trot, log per 60 days, below 0.</summary>
    public double SlowestAcceptableAtTrotLogPer60Days { get; init; } = Table["slowestAcceptableAtTrotLogPer60Days"];

    /// <summary>The same while the plan allows canter or gallop, log per 60 days, below 0.</summary>
    public double SlowestAcceptableAtCanterLogPer60Days { get; init; } = Table["slowestAcceptableAtCanterLogPer60Days"];

    /// <summary>Ligament area over that of the other sound limb above which a level is told to be enlarged, a share.</summary>
    public double OtherLimbEnlargement { get; init; } = Table["otherLimbEnlargement"];

    /// <summary>The slowest acceptable rate in a phase of the plan, log per 60 days; without a plan that of walk.</summary>
    public double SlowestAcceptableIn(PlanPhase? phase) =>
        (phase ?? PlanPhase.Walk) switch
        {
            PlanPhase.Walk => SlowestAcceptableLogPer60Days,
            PlanPhase.Trot => SlowestAcceptableAtTrotLogPer60Days,
            PlanPhase.CanterOrGallop => SlowestAcceptableAtCanterLogPer60Days,
        };

    /// <summary>Slope over its SE above which the course is worsening.</summary>
    public double WorseningZ { get; init; } = Table["worseningZ"];

    /// <summary>Slope over its SE below minus which the course is healing.</summary>
    public double HealingZ { get; init; } = Table["healingZ"];

    /// <summary>Normal quantile of the one-sided bound for a stall.</summary>
    public double StallZ { get; init; } = Table["stallZ"];

    /// <summary>The fastest fall that the error allows for: above the slowest acceptable rate it is too slow. In the unit of the slope.</summary>
    /// <param name="slope">The slope.</param>
    /// <param name="standardError">Its standard error with the known SDs.</param>
    public double StallBound(double slope, double standardError) => slope - (StallZ * standardError);

    /// <summary>Prior degrees of freedom of the moderated variance.</summary>
    public double PriorDegreesOfFreedom { get; init; } = Table["priorDegreesOfFreedom"];

    /// <summary>Length of the acute phase, days: the trend starts after it.</summary>
    public int AcutePhaseDays { get; init; } = (int)Table["acutePhaseDays"];

    /// <summary>A baseline within these days of onset is provisional.</summary>
    public int ProvisionalBaselineDays { get; init; } = (int)Table["provisionalBaselineDays"];

    /// <summary>Target as a share of the first trend examination, when the vet set none.</summary>
    public double TargetFraction { get; init; } = Table["targetFraction"];

    /// <summary>Absolute guard of a rise above the best so far: lesion or ligament area, cm².</summary>
    public double GuardAreaCm2 { get; init; } = Table["guardAreaCm2"];

    /// <summary>Absolute guard of a rise above the best so far: volume, cm³.</summary>
    public double GuardVolumeCm3 { get; init; } = Table["guardVolumeCm3"];

    /// <summary>Absolute guard of a rise above the best so far: thickness, cm.</summary>
    public double GuardThicknessCm { get; init; } = Table["guardThicknessCm"];

    /// <summary>Rise of the ligament area at a level between examinations above which it is amber, a share.</summary>
    public double AmberLigamentRise { get; init; } = Table["amberLigamentRise"];

    /// <summary>Rise of the ligament area at a level between examinations above which it is red, a share.</summary>
    public double RedLigamentRise { get; init; } = Table["redLigamentRise"];

    /// <summary>A course of grades counts as changed when chance alone gives it with at most this probability.</summary>
    public double GradesProbability { get; init; } = Table["gradesProbability"];

    /// <summary>The interval of rechecks, days, at which "more examinations would settle it" is reckoned.</summary>
    public int UsualIntervalDays { get; init; } = Interval;

    /// <summary>An examination's tape counts as shifted beyond this many of its standard deviations.</summary>
    public double TapeShiftZ { get; init; } = Table["tapeShiftZ"];

    /// <summary>The smallest tape shift that is told, cm.</summary>
    public double TapeShiftCm { get; init; } = Table["tapeShiftCm"];
}
