namespace RehabTrack.Rechecks.Quantities;

/// <summary>A grade with the scale it was given on.</summary>
public sealed record Grade
{
    /// <summary>Makes a grade.</summary>
    /// <param name="scale">The scale.</param>
    /// <param name="value">The grade, between the scale's lowest and highest.</param>
    /// <exception cref="ArgumentOutOfRangeException">The grade does not stand on the scale.</exception>
    public Grade(GradeScale scale, int value)
    {
        ArgumentNullException.ThrowIfNull(scale);
        if (!scale.Contains(value))
        {
            throw new ArgumentOutOfRangeException(
                nameof(value),
                value,
                $"The scale {scale.Id} runs from {scale.Lowest} to {scale.Highest}."
            );
        }

        Scale = scale;
        Value = value;
    }

    /// <summary>The scale the grade was given on.</summary>
    public GradeScale Scale { get; }

    /// <summary>The grade; higher is worse.</summary>
    public int Value { get; }
}
