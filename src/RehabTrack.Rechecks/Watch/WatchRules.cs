using RehabTrack.Rechecks.Findings;

namespace RehabTrack.Rechecks.Watch;

/// <summary>Which findings of a case's analysis need a person.</summary>
public static class WatchRules
{
    /// <summary>
    /// Whether it stands in the list of the practice: what the latest examination says above a note, and that somebody else measured,
    /// because every change since then is held against a wider error.
    /// </summary>
    public static bool IsWatched(Finding finding)
    {
        ArgumentNullException.ThrowIfNull(finding);
        return !finding.IsEarlier && (finding.Severity != FindingSeverity.Note || finding.Kind == FindingKind.MeasurerChanged);
    }
}
