namespace RehabTrack.Records.History;

/// <summary>What of the trail is taken out, and who takes it.</summary>
/// <param name="Filter">Which lines.</param>
/// <param name="Take">Takes one line after the other, the first first.</param>
public sealed record ExportTrailInput(TrailFilter Filter, Func<TrailRow, ValueTask> Take);
