using RehabTrack.Rechecks.Findings;

namespace RehabTrack.Web.Components.Cases;

/// <summary>How a finding looks.</summary>
public static class FindingLooks
{
    /// <summary>The class of its mark: octagon, triangle or ring.</summary>
    public static string Of(FindingSeverity severity) =>
        severity switch
        {
            FindingSeverity.Red => "red",
            FindingSeverity.Amber => "amber",
            FindingSeverity.Note => "note",
        };
}
