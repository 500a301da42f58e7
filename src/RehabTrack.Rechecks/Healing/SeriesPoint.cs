namespace RehabTrack.Rechecks.Healing;

/// <summary>The measure at one examination, with its error: a point of the healing chart.</summary>
public sealed record SeriesPoint
{
    /// <summary>The examination.</summary>
    public required string ExaminationId { get; init; }

    /// <summary>Its date.</summary>
    public required DateOnly Date { get; init; }

    /// <summary>The value in the measure's unit (cm³, cm², cm); at least 0.</summary>
    public required double Value { get; init; }

    /// <summary>
    /// Lower end of the 95 % error band of this one value, measure's unit, at least 0. Both ends are wider where another person measured
    /// than at most examinations of the trend.
    /// </summary>
    public required double Lower95 { get; init; }

    /// <summary>Upper end of the 95 % error band of this one value, measure's unit.</summary>
    public required double Upper95 { get; init; }

    /// <summary>Whether all lesion levels were read with sure links; an incomplete one is drawn open.</summary>
    public required bool Complete { get; init; }

    /// <summary>Whether the point counts in the trend (acute phase over, same stance).</summary>
    public required bool InTrend { get; init; }

    /// <summary>Whether the point lies in the window that decides.</summary>
    public required bool InWindow { get; init; }
}
