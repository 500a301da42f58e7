using RehabTrack.Records.Cases;
using RehabTrack.Records.Overview;
using RehabTrack.Wording;

namespace RehabTrack.Web.Features.Start;

/// <summary>The sentences of the start page.</summary>
public static class OverviewWords
{
    /// <summary>As "2 rechecks overdue, 3 horses need a look"; what to expect of the day.</summary>
    /// <param name="view">The start page.</param>
    /// <param name="standing">How many horses need a person.</param>
    public static string InBrief(OverviewView view, int standing)
    {
        ArgumentNullException.ThrowIfNull(view);
        List<string> parts = [];
        Add(parts, standing, StartPage.BriefLookOne, StartPage.BriefLook);
        Add(parts, view.OverdueCount, StartPage.BriefOverdueOne, StartPage.BriefOverdue);
        Add(parts, view.SoonCount, StartPage.BriefSoonOne, StartPage.BriefSoon);
        string brief = Names.AsTitle(parts.Count == 0 ? StartPage.BriefNone : string.Join(", ", parts));
        return Say(StartPage.Brief, view.PracticeName, brief);
    }

    /// <summary>When a recheck is due.</summary>
    public static string DueOn(CaseSummaryView? summary) =>
        summary is null ? "" : Say(StartPage.DueOn, Figures.Date(summary.DueOn), Figures.Date(summary.LastSigned));

    /// <summary>The word beside a recheck that is near.</summary>
    public static string SoonMark(CaseSummaryView? summary, DateOnly today) =>
        (summary?.DueOn?.DayNumber - today.DayNumber) switch
        {
            null => "",
            0 => StartPage.DueToday,
            1 => StartPage.DueTomorrow,
            { } days => Say(StartPage.DueInDays, Figures.Days(days)),
        };

    /// <summary>When a case was last examined.</summary>
    public static string LastExamined(CaseSummaryView? summary) =>
        summary is null ? "" : Say(StartPage.LastExamined, Figures.Date(summary.LastExamination));

    /// <summary>What a draft is of.</summary>
    public static string Draft(DraftRow draft)
    {
        ArgumentNullException.ThrowIfNull(draft);
        return draft.EnteredBy is { } by
            ? Say(StartPage.DraftBy, Names.Of(draft.Limb), Figures.Date(draft.Date), by)
            : Say(StartPage.Draft, Names.Of(draft.Limb), Figures.Date(draft.Date));
    }

    private static void Add(List<string> parts, int count, string one, string many)
    {
        if (count > 0)
        {
            parts.Add(count == 1 ? one : Say(many, count));
        }
    }

    private static string Say(string text, params object[] arguments) => string.Format(TextCulture.Default, text, arguments);
}
