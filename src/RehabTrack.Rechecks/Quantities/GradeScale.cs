namespace RehabTrack.Rechecks.Quantities;

/// <summary>A grading scale. Grades of different scales are never converted or compared.</summary>
/// <param name="Id">Identity of the scale, as in <c>shared/grading-scales.json</c>, for example <c>echogenicity-0-3</c>.</param>
/// <param name="Lowest">The lowest grade, the one nearest to normal.</param>
/// <param name="Highest">The highest grade, the worst.</param>
public sealed record GradeScale(string Id, int Lowest, int Highest)
{
    /// <summary>The number of grades of the scale.</summary>
    public int Count => Highest - Lowest + 1;

    /// <summary>Whether the grade stands on this scale.</summary>
    public bool Contains(int grade) => grade >= Lowest && grade <= Highest;
}
