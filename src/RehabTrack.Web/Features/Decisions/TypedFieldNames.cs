using RehabTrack.Wording;

namespace RehabTrack.Web.Features.Decisions;

/// <summary>The words that stand beside the fields of a decision, for where a field is told without its form.</summary>
internal static class TypedFieldNames
{
    private static readonly Dictionary<string, Func<string>> Words = new(StringComparer.Ordinal)
    {
        ["kind"] = () => DecisionPage.Title,
        ["decision-from"] = () => DecisionPage.From,
        ["decision-step"] = () => DecisionPage.PlaceStep,
        ["decision-days"] = () => DecisionPage.PlaceDays,
        ["decision-valid"] = () => DecisionPage.ValidUntil,
        ["decision-recheck"] = () => DecisionPage.Recheck,
        ["decision-reason"] = () => DecisionPage.Reason,
        ["decision-corrects"] = () => DecisionPage.Corrects,
        ["lameness"] = () => DecisionPage.Lameness,
        ["lameness-context"] = () => DecisionPage.LamenessContext,
        ["flexion-seconds"] = () => DecisionPage.FlexionSeconds,
        ["flexion-response"] = () => DecisionPage.FlexionResponse,
        ["heat"] = () => DecisionPage.Heat,
        ["swelling"] = () => DecisionPage.Swelling,
        ["pain"] = () => DecisionPage.Pain,
        ["visit-note"] = () => DecisionPage.Note,
    };

    /// <summary>The words of a field; a tick of a set is named by its own words, and what has none by its id.</summary>
    public static string Of(string field) =>
        Words.TryGetValue(field, out Func<string>? words) ? words() : field.Replace("|", ": ", StringComparison.Ordinal);
}
