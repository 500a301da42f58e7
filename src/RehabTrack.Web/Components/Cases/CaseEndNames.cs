using RehabTrack.Records.Cases;
using RehabTrack.Wording;

namespace RehabTrack.Web.Components.Cases;

/// <summary>How a case ended, in words.</summary>
public static class CaseEndNames
{
    /// <summary>An end, as "sold".</summary>
    public static string Of(CaseEnd end) =>
        CaseTexts.ResourceManager.GetString($"{nameof(CaseEnd)}_{end}", TextCulture.Default)
        ?? throw new ArgumentOutOfRangeException(nameof(end), end, "The end of a case has no name.");

    /// <summary>A closing in a line: how, when, by whom, and the outcome.</summary>
    public static string Line(CaseClosing closing)
    {
        ArgumentNullException.ThrowIfNull(closing);
        return string.Format(
            TextCulture.Default,
            CaseTexts.ClosedLine,
            Names.AsTitle(Of(closing.End)),
            Figures.Date(closing.On),
            closing.By,
            closing.Outcome
        );
    }

    /// <summary>What was closed, in a sentence.</summary>
    public static string Told(string horse, ClosedCases closed)
    {
        ArgumentNullException.ThrowIfNull(closed);
        return string.Format(
            TextCulture.Default,
            closed.Cases == 1 ? CaseTexts.ClosedOne : CaseTexts.ClosedMany,
            horse,
            closed.Bookings,
            closed.Cases
        );
    }
}
