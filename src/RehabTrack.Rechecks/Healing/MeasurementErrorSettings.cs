using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Healing;

/// <summary>
/// The error of measurement that every statement is judged against; defaults and sources stand in
/// <c>shared/measurement-error.json</c>. A cv is a coefficient of variation, a pure number.
/// </summary>
public sealed record MeasurementErrorSettings
{
    private static readonly ReferenceTable Table = ReferenceTable.Load("measurement-error");

    /// <summary>cv of a ligament area.</summary>
    public double LigamentAreaCv { get; init; } = Table["ligamentAreaCv"];

    /// <summary>cv of a lesion area.</summary>
    public double LesionAreaCv { get; init; } = Table["lesionAreaCv"];

    /// <summary>The part of an area's SD that does not shrink with the area, cm².</summary>
    public double AreaFloorCm2 { get; init; } = Table["areaFloorCm2"];

    /// <summary>cv of a thickness.</summary>
    public double ThicknessCv { get; init; } = Table["thicknessCv"];

    /// <summary>cv of a width.</summary>
    public double WidthCv { get; init; } = Table["widthCv"];

    /// <summary>The part of a length's SD that does not shrink with the length, cm.</summary>
    public double LengthFloorCm { get; init; } = Table["lengthFloorCm"];

    /// <summary>Factor on areas of part origin in a hind limb.</summary>
    public double HindOriginFactor { get; init; } = Table["hindOriginFactor"];

    /// <summary>Factor when another person measured than before.</summary>
    public double OtherMeasurerFactor { get; init; } = Table["otherMeasurerFactor"];

    /// <summary>Gain error (log) shared by all levels of one examination.</summary>
    public double SharedGainLog { get; init; } = Table["sharedGainLog"];
}
