namespace RehabTrack.Rechecks.Healing;

/// <summary>A measure at one examination, on the scale on which it is compared.</summary>
internal sealed record MeasuredPoint
{
    /// <summary>Index of the examination in order of date and id.</summary>
    public required int Examination { get; init; }

    public required string ExaminationId { get; init; }

    public required DateOnly Date { get; init; }

    /// <summary>In the measure's unit.</summary>
    public required double Value { get; init; }

    /// <summary>On the working scale.</summary>
    public required double Y { get; init; }

    /// <summary>SD on the working scale, above 0, as if one person had measured throughout.</summary>
    public required double StandardDeviation { get; init; }

    /// <summary>Of a band that is widened where another person measured than at most examinations of the trend.</summary>
    public required double Lower95 { get; init; }

    public required double Upper95 { get; init; }

    /// <summary>So small that it cannot be told from none.</summary>
    public required bool IsNotMeasurable { get; init; }

    /// <summary>How its error hangs on who measured; null where one person measured throughout.</summary>
    public MeasurerErrors? Measurers { get; init; }

    /// <summary>SD on the working scale beside another point, above 0: widened where another person measured than there.</summary>
    public double DeviationFrom(MeasuredPoint reference) =>
        Measurers is { } measurers ? measurers.Deviation(this, reference) : StandardDeviation;

    /// <summary>Whether it is known who measured; true where one person measured throughout.</summary>
    public bool IsMeasurerNamed => Measurers?.IsNamed(this) ?? true;

    /// <summary>Whether a person who measured here measured there too, or either is not named.</summary>
    public bool SharesMeasurerWith(MeasuredPoint other) => Measurers is not { } measurers || measurers.Share(this, other);
}
