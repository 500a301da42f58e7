using RehabTrack.Rechecks.Healing;

namespace RehabTrack.Records.Practices;

/// <summary>Which setting of the error model a measured size belongs to.</summary>
public static class ErrorCv
{
    /// <summary>The sizes whose cv is a setting, in the order of the tables.</summary>
    public static IReadOnlyList<MeasuredSize> Sizes { get; } =
    [MeasuredSize.LigamentArea, MeasuredSize.LesionArea, MeasuredSize.Thickness, MeasuredSize.Width];

    /// <summary>The row of <c>shared/measurement-error.json</c>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A share has no cv of its own.</exception>
    public static string RowOf(MeasuredSize size) =>
        size switch
        {
            MeasuredSize.LigamentArea => "ligamentAreaCv",
            MeasuredSize.LesionArea => "lesionAreaCv",
            MeasuredSize.Thickness => "thicknessCv",
            MeasuredSize.Width => "widthCv",
            MeasuredSize.LesionPercent => throw new ArgumentOutOfRangeException(nameof(size), size, "A share has no cv of its own."),
        };

    /// <summary>The cv of a size.</summary>
    public static double Of(MeasurementErrorSettings error, MeasuredSize size)
    {
        ArgumentNullException.ThrowIfNull(error);
        return size switch
        {
            MeasuredSize.LigamentArea => error.LigamentAreaCv,
            MeasuredSize.LesionArea => error.LesionAreaCv,
            MeasuredSize.Thickness => error.ThicknessCv,
            MeasuredSize.Width => error.WidthCv,
            MeasuredSize.LesionPercent => throw new ArgumentOutOfRangeException(nameof(size), size, "A share has no cv of its own."),
        };
    }

    /// <summary>The same error with another cv of a size.</summary>
    public static MeasurementErrorSettings With(MeasurementErrorSettings error, MeasuredSize size, double cv)
    {
        ArgumentNullException.ThrowIfNull(error);
        return size switch
        {
            MeasuredSize.LigamentArea => error with { LigamentAreaCv = cv },
            MeasuredSize.LesionArea => error with { LesionAreaCv = cv },
            MeasuredSize.Thickness => error with { ThicknessCv = cv },
            MeasuredSize.Width => error with { WidthCv = cv },
            MeasuredSize.LesionPercent => throw new ArgumentOutOfRangeException(nameof(size), size, "A share has no cv of its own."),
        };
    }
}
