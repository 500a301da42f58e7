namespace RehabTrack.Rechecks.Permits;

/// <summary>All that happened in the exercise of one horse.</summary>
/// <param name="Entries">The entries, in any order; <see cref="PermitEntry.Order"/> says which was recorded first.</param>
public sealed record PermitHistory(IReadOnlyList<PermitEntry> Entries)
{
    /// <summary>Nothing happened.</summary>
    public static PermitHistory Empty { get; } = new([]);

    /// <summary>The same history with one more entry.</summary>
    /// <param name="entry">The entry.</param>
    public PermitHistory With(PermitEntry entry) => new([.. Entries, entry]);
}
