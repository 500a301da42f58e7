namespace RehabTrack.Rechecks.Analysis;

/// <summary>A setting that the figures rest on and that is another today.</summary>
/// <param name="Table">The reference table it stands in: <c>measurement-error</c>, <c>linking</c> or <c>trend</c>.</param>
/// <param name="Name">Its name there, for example <c>lesionAreaCv</c>.</param>
/// <param name="Then">As it was; null when it is no number.</param>
/// <param name="Today">As it is; null when it is no number.</param>
public sealed record SettingDifference(string Table, string Name, double? Then, double? Today);
