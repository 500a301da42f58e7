using RehabTrack.Rechecks.Permits;
using RehabTrack.Wording;

namespace RehabTrack.Web.Features.Days;

/// <summary>The words of what is entered for somebody.</summary>
public static class DayWords
{
    /// <summary>The name of a form.</summary>
    public static string Of(DayForm form) =>
        form switch
        {
            DayForm.Log => DayPage.Form_Log,
            DayForm.Concern => DayPage.Form_Concern,
            DayForm.Away => DayPage.Form_Away,
            DayForm.Lower => DayPage.Form_Lower,
        };

    /// <summary>What a form brings about.</summary>
    public static string LeadOf(DayForm form) =>
        form switch
        {
            DayForm.Log => DayPage.LogLead,
            DayForm.Concern => DayPage.ConcernLead,
            DayForm.Away => string.Format(TextCulture.Default, DayPage.AwayLead, new PermitSettings().AwayDays),
            DayForm.Lower => DayPage.LowerLead,
        };

    /// <summary>What its button says.</summary>
    public static string SaveOf(DayForm form) =>
        form switch
        {
            DayForm.Log => DayPage.SaveLog,
            DayForm.Concern => DayPage.SaveConcern,
            DayForm.Away => DayPage.SaveAway,
            DayForm.Lower => DayPage.SaveLower,
        };
}
