using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Linking;

/// <summary>
/// The parameters of the linker; defaults, units and sources stand in <c>shared/linking.json</c>. A standard deviation of a logarithm
/// "between readings" is that of the difference of two readings of one place.
/// </summary>
public sealed record LinkingSettings
{
    private static readonly ReferenceTable Table = ReferenceTable.Load("linking");

    /// <summary>SD of one tape reading, cm.</summary>
    public double TapeStandardDeviationCm { get; init; } = Table["tapeStandardDeviationCm"];

    /// <summary>SD of the shift of a whole examination, cm.</summary>
    public double ShiftStandardDeviationCm { get; init; } = Table["shiftStandardDeviationCm"];

    /// <summary>Largest shift looked at on either side, cm.</summary>
    public double LargestShiftCm { get; init; } = Table["largestShiftCm"];

    /// <summary>Step of the grid of shifts of the plain alignment, cm.</summary>
    public double ShiftStepCm { get; init; } = Table["shiftStepCm"];

    /// <summary>Step of the grid over which the full model sums the shift, cm.</summary>
    public double ShiftSumStepCm { get; init; } = Table["shiftSumStepCm"];

    /// <summary>Cost of a level without partner in the plain alignment.</summary>
    public double UnlinkedCost { get; init; } = Table["unlinkedCost"];

    /// <summary>Share of the places of a ligament that an examination leaves out, 0 to 1.</summary>
    public double MissedShare { get; init; } = Table["missedShare"];

    /// <summary>Share of the levels of an examination that were read at no lasting place, 0 to 1.</summary>
    public double AddedShare { get; init; } = Table["addedShare"];

    /// <summary>Chance that such a level is read again at a later examination, 0 to 1.</summary>
    public double AddedAgainShare { get; init; } = Table["addedAgainShare"];

    /// <summary>Distance between neighbouring levels where a path gives no hint, cm.</summary>
    public double UsualSpacingCm { get; init; } = Table["usualSpacingCm"];

    /// <summary>SD of log ligament area between readings.</summary>
    public double LogLigamentAreaStandardDeviation { get; init; } = Table["logLigamentAreaStandardDeviation"];

    /// <summary>SD of log ligament area between unrelated places.</summary>
    public double LogLigamentAreaBackground { get; init; } = Table["logLigamentAreaBackground"];

    /// <summary>The largest penalty of the ligament term.</summary>
    public double LigamentPenaltyCap { get; init; } = Table["ligamentPenaltyCap"];

    /// <summary>
    /// The largest penalty of the ligament term where the later reading is the larger: a swelling is a finding, it must not hide behind
    /// a broken link.
    /// </summary>
    public double LigamentGrowthPenaltyCap { get; init; } = Table["ligamentGrowthPenaltyCap"];

    /// <summary>Prior SD of the common log change of the ligament area of an examination.</summary>
    public double CommonLigamentChangeStandardDeviation { get; init; } = Table["commonLigamentChangeStandardDeviation"];

    /// <summary>SD of log thickness between readings; thickness serves where a ligament area is missing.</summary>
    public double LogThicknessStandardDeviation { get; init; } = Table["logThicknessStandardDeviation"];

    /// <summary>SD of log thickness between unrelated places.</summary>
    public double LogThicknessBackground { get; init; } = Table["logThicknessBackground"];

    /// <summary>SD of log lesion area between readings, after the common change.</summary>
    public double LogLesionAreaStandardDeviation { get; init; } = Table["logLesionAreaStandardDeviation"];

    /// <summary>SD of log lesion area between unrelated places.</summary>
    public double LogLesionAreaBackground { get; init; } = Table["logLesionAreaBackground"];

    /// <summary>Share of the case's usual ligament area below which a lesion area is no longer judged by its logarithm.</summary>
    public double LesionFloorShare { get; init; } = Table["lesionFloorShare"];

    /// <summary>The same share of the case's usual lesion area, where no ligament area was recorded.</summary>
    public double LesionFloorOfLesions { get; init; } = Table["lesionFloorOfLesions"];

    /// <summary>What it counts, in log, that both readings saw no lesion.</summary>
    public double NoLesionAgreement { get; init; } = Table["noLesionAgreement"];

    /// <summary>The largest penalty of the lesion term.</summary>
    public double LesionPenaltyCap { get; init; } = Table["lesionPenaltyCap"];

    /// <summary>Prior SD of the common log change of the lesion from one examination to the next.</summary>
    public double CommonLesionChangeStandardDeviation { get; init; } = Table["commonLesionChangeStandardDeviation"];

    /// <summary>Largest common log change of the lesion looked at, either side.</summary>
    public double CommonLesionChangeLimit { get; init; } = Table["commonLesionChangeLimit"];

    /// <summary>Step of the grid of the common log change of the lesion.</summary>
    public double CommonLesionChangeStep { get; init; } = Table["commonLesionChangeStep"];

    /// <summary>A link counts as a gain in the reported alignment from this probability on.</summary>
    public double LinkFrom { get; init; } = Table["linkFrom"];

    /// <summary>The largest number of passes that align each examination anew against the others.</summary>
    public double LargestPasses { get; init; } = Table["largestPasses"];

    /// <summary>A link below this probability is shown as uncertain and the page asks.</summary>
    public double UncertainBelow { get; init; } = Table["uncertainBelow"];

    /// <summary>Another track is named as an alternative from this probability on.</summary>
    public double AlternativeFrom { get; init; } = Table["alternativeFrom"];
}
