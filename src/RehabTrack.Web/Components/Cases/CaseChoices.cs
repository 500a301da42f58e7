using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Web.Components.Forms;
using RehabTrack.Wording;

namespace RehabTrack.Web.Components.Cases;

/// <summary>What can be chosen of a case, on the page that opens one and on the one that changes it.</summary>
public static class CaseChoices
{
    /// <summary>What is known of the other limb.</summary>
    public static IReadOnlyList<Choice<OtherLimb>> OtherLimbs { get; } =
    [.. Enum.GetValues<OtherLimb>().Select(other => new Choice<OtherLimb>(other, Names.Of(other)))];

    /// <summary>Where the tape can start on the limb.</summary>
    public static IReadOnlyList<Choice<Landmark?>> Landmarks(Limb limb) =>
        [.. AnatomyRules.LandmarksOf(limb).Select(landmark => new Choice<Landmark?>(landmark, Names.Of(landmark)))];
}
