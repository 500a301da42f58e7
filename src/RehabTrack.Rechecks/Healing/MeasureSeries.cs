namespace RehabTrack.Rechecks.Healing;

/// <summary>One measure over the examinations that have it, in order of date.</summary>
internal sealed record MeasureSeries(Measure Measure, IReadOnlyList<MeasuredPoint> Points);
