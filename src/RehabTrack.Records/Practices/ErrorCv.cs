using RehabTrack.Rechecks.Healing;

namespace RehabTrack.Records.Practices;

/// <summary>The measured sizes whose cv is a setting of the error model. A share has none: it follows from two areas.</summary>
public static class ErrorCv
{
    private static readonly IReadOnlyDictionary<MeasuredSize, Setting> Settings = new Dictionary<MeasuredSize, Setting>
    {
        [MeasuredSize.LigamentArea] = new(
            "ligamentAreaCv",
            error => error.LigamentAreaCv,
            (error, cv) => error with { LigamentAreaCv = cv }
        ),
        [MeasuredSize.LesionArea] = new("lesionAreaCv", error => error.LesionAreaCv, (error, cv) => error with { LesionAreaCv = cv }),
        [MeasuredSize.Thickness] = new("thicknessCv", error => error.ThicknessCv, (error, cv) => error with { ThicknessCv = cv }),
        [MeasuredSize.Width] = new("widthCv", error => error.WidthCv, (error, cv) => error with { WidthCv = cv }),
    };

    /// <summary>The sizes, in the order of the tables.</summary>
    public static IReadOnlyList<MeasuredSize> Sizes { get; } = [.. Settings.Keys];

    /// <summary>The row of <c>shared/measurement-error.json</c>.</summary>
    /// <param name="size">One of <see cref="Sizes"/>.</param>
    public static string RowOf(MeasuredSize size) => Settings[size].Row;

    /// <summary>The cv of a size.</summary>
    /// <param name="error">The error model.</param>
    /// <param name="size">One of <see cref="Sizes"/>.</param>
    public static double Of(MeasurementErrorSettings error, MeasuredSize size) => Settings[size].Of(error);

    /// <summary>The same error with another cv of a size.</summary>
    /// <param name="error">The error model.</param>
    /// <param name="size">One of <see cref="Sizes"/>.</param>
    /// <param name="cv">Its cv, above 0.</param>
    public static MeasurementErrorSettings With(MeasurementErrorSettings error, MeasuredSize size, double cv) =>
        Settings[size].With(error, cv);

    private sealed record Setting(
        string Row,
        Func<MeasurementErrorSettings, double> Of,
        Func<MeasurementErrorSettings, double, MeasurementErrorSettings> With
    );
}
