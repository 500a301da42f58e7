using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Healing;

/// <summary>
/// How much a measurement wobbles when nothing changed: <c>sd² = (cv·x)² + s0²</c>, times a factor for areas of a hind origin and a factor
/// when another person measured than before. The gain error that all levels of one examination share is kept apart.
/// </summary>
public sealed class MeasurementError
{
    private readonly MeasurementErrorSettings _settings;
    private readonly bool _isHind;

    /// <summary>The error model of a limb.</summary>
    /// <param name="settings">Coefficients, floors and factors.</param>
    /// <param name="limb">The limb; an unknown one counts as a fore limb.</param>
    public MeasurementError(MeasurementErrorSettings settings, Limb limb)
    {
        ArgumentNullException.ThrowIfNull(settings);
        _settings = settings;
        _isHind = AnatomyRules.IsHind(limb);
    }

    /// <summary>SD of the logarithm of the gain that all levels of one examination share; it cancels in a percent of one image.</summary>
    public double SharedGainLog => _settings.SharedGainLog;

    /// <summary>The scale on which lesion areas are compared.</summary>
    public WorkingScale LesionAreaScale => new(_settings.LesionAreaCv, _settings.AreaFloorCm2);

    /// <summary>The scale on which ligament areas are compared.</summary>
    public WorkingScale LigamentAreaScale => new(_settings.LigamentAreaCv, _settings.AreaFloorCm2);

    /// <summary>The scale on which thicknesses are compared.</summary>
    public WorkingScale ThicknessScale => new(_settings.ThicknessCv, _settings.LengthFloorCm);

    /// <summary>
    /// The scale on which the lesion's share is compared: the errors of both areas of one image, without the gain, which cancels; the floor
    /// is that of a lesion area in a ligament of 1 cm², in %.
    /// </summary>
    public WorkingScale LesionPercentScale =>
        new(
            Math.Sqrt((_settings.LesionAreaCv * _settings.LesionAreaCv) + (_settings.LigamentAreaCv * _settings.LigamentAreaCv)),
            100 * _settings.AreaFloorCm2
        );

    /// <summary>SD of a ligament area, cm², gain not included.</summary>
    /// <param name="area">The mean area.</param>
    /// <param name="part">The part; areas of the origin of a hind limb wobble more.</param>
    /// <param name="otherMeasurer">Whether another person measured than before.</param>
    /// <param name="tracings">The number of tracings behind the mean, at least 1.</param>
    public SquareCentimetres OfLigamentArea(SquareCentimetres area, Part part, bool otherMeasurer, int tracings = 1) =>
        new(AreaFactor(part, otherMeasurer) * Wobble(_settings.LigamentAreaCv, area.Value, _settings.AreaFloorCm2) / Math.Sqrt(tracings));

    /// <summary>SD of a lesion area, cm², gain not included.</summary>
    /// <param name="area">The mean area, 0 included.</param>
    /// <param name="part">The part; areas of the origin of a hind limb wobble more.</param>
    /// <param name="otherMeasurer">Whether another person measured than before.</param>
    /// <param name="tracings">The number of tracings behind the mean, at least 1.</param>
    public SquareCentimetres OfLesionArea(SquareCentimetres area, Part part, bool otherMeasurer, int tracings = 1) =>
        new(AreaFactor(part, otherMeasurer) * Wobble(_settings.LesionAreaCv, area.Value, _settings.AreaFloorCm2) / Math.Sqrt(tracings));

    /// <summary>SD of a thickness, cm.</summary>
    /// <param name="thickness">The thickness.</param>
    /// <param name="otherMeasurer">Whether another person measured than before.</param>
    public Centimetres OfThickness(Centimetres thickness, bool otherMeasurer) =>
        new(MeasurerFactor(otherMeasurer) * Wobble(_settings.ThicknessCv, thickness.Value, _settings.LengthFloorCm));

    /// <summary>SD of a width, cm.</summary>
    /// <param name="width">The width.</param>
    /// <param name="otherMeasurer">Whether another person measured than before.</param>
    public Centimetres OfWidth(Centimetres width, bool otherMeasurer) =>
        new(MeasurerFactor(otherMeasurer) * Wobble(_settings.WidthCv, width.Value, _settings.LengthFloorCm));

    /// <summary>SD of a lesion's share where only the share was recorded, %; the gain cancels in it.</summary>
    /// <param name="share">The share, %.</param>
    /// <param name="part">The part.</param>
    /// <param name="otherMeasurer">Whether another person measured than before.</param>
    public Percent OfLesionPercent(Percent share, Part part, bool otherMeasurer)
    {
        WorkingScale scale = LesionPercentScale;
        return new(AreaFactor(part, otherMeasurer) * Wobble(scale.Cv, share.Value, scale.Floor));
    }

    /// <summary>By what an SD is multiplied, at least 0; 1 for the same measurer.</summary>
    /// <param name="otherMeasurer">Whether another person measured than before.</param>
    public double MeasurerFactor(bool otherMeasurer) => otherMeasurer ? _settings.OtherMeasurerFactor : 1;

    /// <summary>SD of the logarithm of a size that scatters with this cv, for a log-normal size: <c>√ln(1 + cv²)</c>.</summary>
    public static double LogStandardDeviation(double cv) => Math.Sqrt(Math.Log(1 + (cv * cv)));

    private double AreaFactor(Part part, bool otherMeasurer) =>
        (_isHind && part == Part.Origin ? _settings.HindOriginFactor : 1) * MeasurerFactor(otherMeasurer);

    private static double Wobble(double cv, double size, double floor) => Math.Sqrt((cv * size * cv * size) + (floor * floor));
}
