using System.Globalization;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Records.Exercise;
using RehabTrack.Wording;

namespace RehabTrack.Web.Components.Exercise;

/// <summary>A line of a horse's exercise history in words.</summary>
public static class LineWords
{
    /// <summary>As "24 Nov 2026: the plan was signed, version 2 (H. Brandt).".</summary>
    public static string Of(ExerciseLine line)
    {
        ArgumentNullException.ThrowIfNull(line);
        string by = line.OnBehalfOf is { } other
            ? string.Format(TextCulture.Default, ExerciseTexts.LineFor, line.EnteredBy, other)
            : line.EnteredBy;
        return string.Format(
            TextCulture.Default,
            by.Length == 0 ? ExerciseTexts.LineByNobody : ExerciseTexts.Line,
            Figures.Date(line.Date),
            What(line),
            by
        );
    }

    /// <summary>What a line says, without date and person.</summary>
    public static string What(ExerciseLine line)
    {
        ArgumentNullException.ThrowIfNull(line);
        string said = line.Words?.Words is { Length: > 0 } words ? $": {words}" : "";
        return line.Entry switch
        {
            PlanSigned signed => Say(ExerciseTexts.LinePlan, Text(signed.Plan.Number)),
            DecisionSigned signed => Say(ExerciseTexts.LineDecision, Names.Of(signed.Decision.Kind)),
            DayLogged { Log: var log } => Say(
                ExerciseTexts.LineLog,
                PermitSentences.Outing(log.Done),
                log.HasSign ? $"; {SignWords.Of(log)}" : ""
            ) + said,
            ConcernOpened => ExerciseTexts.LineConcern + said,
            WorkPaused { Until: { } until } => Say(ExerciseTexts.LinePausedUntil, Figures.Date(until)) + said,
            WorkPaused => ExerciseTexts.LinePaused + said,
            WorkLowered => ExerciseTexts.LineLowered + said,
            HoldEnded end => Say(ExerciseTexts.LineHoldEnded, Names.Of(end.Kind)),
            HoldPlaced hold => Say(ExerciseTexts.LineHold, Names.Of(hold.Kind)),
            _ => ExerciseTexts.LineOther,
        };
    }

    private static string Say(string text, params ReadOnlySpan<object?> arguments) => string.Format(TextCulture.Default, text, arguments);

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
