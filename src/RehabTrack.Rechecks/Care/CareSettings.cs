using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Care;

/// <summary>The days that care goes by; defaults and sources stand in <c>shared/care.json</c>.</summary>
public sealed record CareSettings
{
    private static readonly ReferenceTable Table = ReferenceTable.Load("care");

    /// <summary>An examination within so many days after an injection into the lesion is marked, at least 0.</summary>
    public int InjectionDays { get; init; } = (int)Table["injectionDays"];
}
