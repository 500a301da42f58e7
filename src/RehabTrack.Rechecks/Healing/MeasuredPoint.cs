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

    /// <summary>SD on the working scale, above 0.</summary>
    public required double StandardDeviation { get; init; }

    public required double Lower95 { get; init; }

    public required double Upper95 { get; init; }

    /// <summary>So small that it cannot be told from none.</summary>
    public required bool IsNotMeasurable { get; init; }
}
