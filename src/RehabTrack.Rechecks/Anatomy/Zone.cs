namespace RehabTrack.Rechecks.Anatomy;

/// <summary>A zone of a scheme: a level that is named, not measured.</summary>
/// <param name="Scheme">The scheme.</param>
/// <param name="Ordinal">Its place in the scheme from the top down, 0 for the first.</param>
public readonly record struct Zone(ZoneScheme Scheme, int Ordinal)
{
    /// <summary>The name within the scheme, for example <c>2B</c>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The scheme has no such zone.</exception>
    public string Name => ZoneSchemes.NamesOf(Scheme)[Ordinal];
}
