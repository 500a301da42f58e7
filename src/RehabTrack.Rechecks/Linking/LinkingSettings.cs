using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Linking;

/// <summary>The parameters of the linker; defaults and sources stand in <c>shared/linking.json</c>.</summary>
public sealed record LinkingSettings
{
    private static readonly ReferenceTable Table = ReferenceTable.Load("linking");

    /// <summary>SD of one tape reading, cm.</summary>
    public double TapeStandardDeviationCm { get; init; } = Table["tapeStandardDeviationCm"];

    /// <summary>SD of the shift of a whole examination, cm.</summary>
    public double ShiftStandardDeviationCm { get; init; } = Table["shiftStandardDeviationCm"];

    /// <summary>Largest shift looked at on either side, cm.</summary>
    public double LargestShiftCm { get; init; } = Table["largestShiftCm"];

    /// <summary>Step of the grid of shifts, cm.</summary>
    public double ShiftStepCm { get; init; } = Table["shiftStepCm"];

    /// <summary>A link below this probability is shown as uncertain and the page asks.</summary>
    public double UncertainBelow { get; init; } = Table["uncertainBelow"];
}
