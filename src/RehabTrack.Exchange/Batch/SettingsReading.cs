using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Exchange.Batch;

/// <summary>What a settings file says.</summary>
/// <param name="Settings">The settings; null when there are problems.</param>
/// <param name="Problems">All that is wrong with the file.</param>
public sealed record SettingsReading(AnalysisSettings? Settings, IReadOnlyList<Problem> Problems);
