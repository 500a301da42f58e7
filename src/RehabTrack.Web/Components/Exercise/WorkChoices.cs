using RehabTrack.Rechecks.Exercise;
using RehabTrack.Web.Components.Forms;
using RehabTrack.Wording;

namespace RehabTrack.Web.Components.Exercise;

/// <summary>What there is to choose from where work is typed.</summary>
public static class WorkChoices
{
    /// <summary>Whether in circles.</summary>
    public static IReadOnlyList<Choice<Circles>> Circles { get; } =
    [.. Enum.GetValues<Circles>().Select(circles => new Choice<Circles>(circles, Names.Of(circles)))];

    /// <summary>How free the horse may stand.</summary>
    public static IReadOnlyList<Choice<Turnout>> Turnout { get; } =
    [.. Enum.GetValues<Turnout>().Select(turnout => new Choice<Turnout>(turnout, Names.Of(turnout)))];
}
