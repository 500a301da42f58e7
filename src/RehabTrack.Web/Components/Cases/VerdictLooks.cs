using RehabTrack.Rechecks.Healing;

namespace RehabTrack.Web.Components.Cases;

/// <summary>How a verdict looks: amber and red only where a person must act.</summary>
public static class VerdictLooks
{
    /// <summary>The class that gives shape and colour, for marks and verdict banners alike.</summary>
    public static string Of(Verdict verdict) =>
        verdict switch
        {
            Verdict.Healing or Verdict.AtTarget => "good",
            Verdict.HealingSlowly or Verdict.NotYetReadable => "note",
            Verdict.Stalled => "amber",
            Verdict.Worsening => "red",
        };
}
