using RehabTrack.Rechecks.Healing;

namespace RehabTrack.Rechecks.Repeats;

/// <summary>One of several measurements of one thing that did not change between them.</summary>
/// <param name="Subject">Names what was measured: an image, or a place of a horse on a day. Equal names are one subject.</param>
/// <param name="Kind">What was done anew.</param>
/// <param name="Size">What was measured.</param>
/// <param name="Measurer">Who measured; null when not given.</param>
/// <param name="Value">The value in the size's unit (cm² or cm), at least 0.</param>
public sealed record RepeatTracing(string Subject, RepeatKind Kind, MeasuredSize Size, string? Measurer, double Value);
