using System.Globalization;
using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Permits;

namespace RehabTrack.Wording;

/// <summary>What is permitted and why, in words for the people who work the horse.</summary>
public static class PermitSentences
{
    /// <summary>What is permitted in one line that can be read out: the outing, or that there is none.</summary>
    public static string Headline(Permit permit, CultureInfo? culture = null)
    {
        ArgumentNullException.ThrowIfNull(permit);
        return permit.Work.HasOuting ? Names.AsTitle(Outing(permit.Work.Outing, culture), culture) : Said($"None_{permit.State}", culture);
    }

    /// <summary>Minutes by gait, as "walk 20 min, trot 5 min"; a gait without minutes is left out, none at all is "no work".</summary>
    public static string Outing(OutingMinutes minutes, CultureInfo? culture = null)
    {
        string[] told =
        [
            .. Enum.GetValues<Gait>()
                .Where(gait => minutes.Of(gait) > 0)
                .Select(gait => Said("Gait", culture, Names.Of(gait, culture), minutes.Of(gait))),
        ];
        return told.Length == 0 ? Said("NoWork", culture) : string.Join(", ", told);
    }

    /// <summary>How often, as "twice a day, 6 days a week"; null without an outing.</summary>
    public static string? HowOften(Work work, CultureInfo? culture = null)
    {
        ArgumentNullException.ThrowIfNull(work);
        if (!work.HasOuting)
        {
            return null;
        }

        string day = work.OutingsADay switch
        {
            1 => Said("OnceADay", culture),
            2 => Said("TwiceADay", culture),
            _ => Said("TimesADay", culture, work.OutingsADay),
        };
        string week = work.DaysAWeek switch
        {
            PlanRows.DaysOfWeek => Said("EveryDay", culture),
            1 => Said("OneDayAWeek", culture),
            _ => Said("DaysAWeek", culture, work.DaysAWeek),
        };
        return $"{day}, {week}";
    }

    /// <summary>How and where, as "in hand or ridden, straight lines only, firm, even ground"; null without an outing.</summary>
    public static string? HowAndWhere(Work work, CultureInfo? culture = null)
    {
        ArgumentNullException.ThrowIfNull(work);
        return work.HasOuting
            ? string.Join(
                "; ",
                Members(work.Modes, WorkModes.None, mode => Names.Of(mode, culture), culture),
                Names.Of(work.Circles, culture),
                Members(work.Surfaces, Surfaces.None, surface => Names.Of(surface, culture), culture)
            )
            : null;
    }

    /// <summary>How the horse may stand, as "Otherwise: box.".</summary>
    public static string Standing(Work work, CultureInfo? culture = null)
    {
        ArgumentNullException.ThrowIfNull(work);
        return Said("Standing", culture, Names.Of(work.Turnout, culture));
    }

    /// <summary>A reason in a sentence.</summary>
    public static string Of(PermitReason reason, CultureInfo? culture = null)
    {
        ArgumentNullException.ThrowIfNull(reason);
        return Said(
            $"Reason_{reason.Code}{Suffix(reason)}",
            culture,
            Figures.Date(reason.Since, null, culture),
            Figures.Date(reason.Until, null, culture),
            Figures.Days(reason.Days, null, culture),
            reason.Step is { } step ? Names.AsTitle(step, culture) : null,
            reason.Week,
            reason.Done,
            reason.Most
        );
    }

    private static string Suffix(PermitReason reason) =>
        reason.Code switch
        {
            PermitReasonCode.PausedByVet or PermitReasonCode.PausedByPerson or PermitReasonCode.Lowered when reason.Until is not null =>
                "_Until",
            _ => "",
        };

    private static string Members<T>(T set, T none, Func<T, string> name, CultureInfo? culture)
        where T : struct, Enum =>
        Enum.GetValues<T>()
            .Where(member => !EqualityComparer<T>.Default.Equals(member, none) && set.HasFlag(member))
            .Select(name)
            .Aggregate(string.Empty, (soFar, next) => soFar.Length == 0 ? next : Said("Or", culture, soFar, next));

    private static string Said(string key, CultureInfo? culture, params object?[] arguments) =>
        string.Format(
            culture ?? TextCulture.Default,
            PermitTexts.ResourceManager.GetString(key, culture ?? TextCulture.Default)
                ?? throw new ArgumentOutOfRangeException(nameof(key), key, "PermitTexts has no such text."),
            arguments
        );
}
