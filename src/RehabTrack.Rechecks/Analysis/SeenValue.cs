namespace RehabTrack.Rechecks.Analysis;

/// <summary>The measure that spoke, at one examination, with its error.</summary>
public sealed record SeenValue
{
    /// <summary>The examination.</summary>
    public required string ExaminationId { get; init; }

    /// <summary>Its date.</summary>
    public required DateOnly Date { get; init; }

    /// <summary>The value in the measure's unit (cm³, cm², %, cm, grade), at least 0.</summary>
    public required double Value { get; init; }

    /// <summary>The value less one standard error, measure's unit, at least 0; the value itself for a grade.</summary>
    public required double Below { get; init; }

    /// <summary>The value plus one standard error, measure's unit; the value itself for a grade.</summary>
    public required double Above { get; init; }

    /// <summary>Lower end of the 95 % error band of this one value, measure's unit, at least 0.</summary>
    public required double Lower95 { get; init; }

    /// <summary>Upper end of the 95 % error band of this one value, measure's unit.</summary>
    public required double Upper95 { get; init; }

    /// <summary>Whether another value lies further from this one than one standard error of this one.</summary>
    /// <param name="other">A value of the same measure at the same examination.</param>
    public bool DiffersFrom(double other) => other < Below || other > Above;
}
