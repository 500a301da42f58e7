using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Linking;

/// <summary>The cheapest order-preserving alignment of two rows of levels by position alone.</summary>
/// <param name="Cost">Cost of links, unlinked levels and shift; a pure number, at least 0.</param>
/// <param name="Shift">How much larger the second row reads, cm.</param>
/// <param name="Partners">For each level of the first row the index of its partner in the second, or −1.</param>
public sealed record PlainAlignment(double Cost, Centimetres Shift, IReadOnlyList<int> Partners);
