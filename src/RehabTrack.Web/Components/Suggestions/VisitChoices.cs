using RehabTrack.Rechecks.Suggestions;
using RehabTrack.Web.Components.Forms;
using RehabTrack.Wording;

namespace RehabTrack.Web.Components.Suggestions;

/// <summary>What there is to choose from where a visit is answered for.</summary>
public static class VisitChoices
{
    /// <summary>The step up that is asked about.</summary>
    public static IReadOnlyList<Choice<AskedStep>> Steps { get; } =
    [.. Enum.GetValues<AskedStep>().Select(step => new Choice<AskedStep>(step, Names.AsTitle(SuggestionSentences.Of(step))))];

    /// <summary>Not recorded, no, yes.</summary>
    public static IReadOnlyList<Choice<bool?>> Answers { get; } =
    [new(null, SuggestionTexts.NotRecorded), new(false, SuggestionTexts.No), new(true, SuggestionTexts.Yes)];
}
