using System.Globalization;
using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Rechecks.Suggestions;
using RehabTrack.Records.Exercise;
using RehabTrack.Web.Components.Exercise;
using RehabTrack.Wording;

namespace RehabTrack.Web.Features.Decisions;

/// <summary>A signed decision in words: what was signed, what the visit answered and found.</summary>
public static class DecisionWords
{
    /// <summary>As "Hold, 4 Nov 2026, by H. Brandt".</summary>
    public static string Title(DecisionView decision)
    {
        ArgumentNullException.ThrowIfNull(decision);
        return Say(
            DecisionPage.PastLine,
            Names.AsTitle(Names.Of(Of(decision).Kind)),
            Figures.Date(decision.Line.Date),
            decision.Line.EnteredBy
        );
    }

    /// <summary>The decision itself.</summary>
    public static Decision Of(DecisionView decision)
    {
        ArgumentNullException.ThrowIfNull(decision);
        return ((DecisionSigned)decision.Line.Entry).Decision;
    }

    /// <summary>Its parameters in one sentence: first day, place, ceilings, last day, recheck, work for bad days.</summary>
    /// <param name="decision">The decision.</param>
    /// <param name="plan">The plan it was signed on; null when that is not known.</param>
    public static string Parameters(Decision decision, PlanVersion? plan)
    {
        ArgumentNullException.ThrowIfNull(decision);
        string?[] told =
        [
            Say(DecisionPage.ParamFrom, Figures.Date(decision.From)),
            decision.Place is { } place && plan is not null && place.Step < plan.Steps.Count
                ? Say(DecisionPage.ParamPlace, PlanWords.Step(plan, place.Step), Text(place.Days + 1))
                : null,
            decision.Limits is { } limits ? Say(DecisionPage.ParamLimits, Ceilings(limits)) : null,
            decision.ValidUntil is { } until
                ? Say(decision.Kind == DecisionKind.Pause ? DecisionPage.ParamPause : DecisionPage.ParamValid, Figures.Date(until))
                : null,
            decision.RecheckDate is { } recheck ? Say(DecisionPage.ParamRecheck, Figures.Date(recheck)) : null,
            decision.Floor is { } floor ? Say(DecisionPage.ParamFloor, PlanWords.Line(floor)) : null,
        ];
        return Say(DecisionPage.Params, Joined(told));
    }

    /// <summary>What was answered of the questions of the rules, in one sentence; what was not recorded is left out.</summary>
    public static string Answers(VisitSigns signs)
    {
        ArgumentNullException.ThrowIfNull(signs);
        string?[] told =
        [
            Either(signs.Sound, DecisionPage.Answer_Sound, DecisionPage.Answer_Lame),
            Either(signs.SoundAtTrotInHand, DecisionPage.Answer_SoundAtTrot, DecisionPage.Answer_LameAtTrot),
            Either(signs.PainBackWithWork, DecisionPage.Answer_PainBack, DecisionPage.Answer_NoPainBack),
            Either(signs.UnderAntiInflammatory, DecisionPage.Answer_Medicine, DecisionPage.Answer_NoMedicine),
            signs is { HadShockWave: true, LastShockWave: { } last }
                ? Say(DecisionPage.Answer_ShockWaveOn, Figures.Date(last))
                : Either(signs.HadShockWave, DecisionPage.Answer_ShockWave, DecisionPage.Answer_NoShockWave),
            Either(signs.HadNeurectomy, DecisionPage.Answer_Neurectomy, DecisionPage.Answer_NoNeurectomy),
        ];
        string joined = Joined(told);
        return joined.Length == 0 ? DecisionPage.AnsweredNothing : Say(DecisionPage.Answered, joined);
    }

    /// <summary>The signs that were found by hand, in one sentence.</summary>
    public static string Signs(Visit visit)
    {
        ArgumentNullException.ThrowIfNull(visit);
        string context = visit.LamenessContext is { Length: > 0 } said ? " " + Say(DecisionPage.SignContext, said) : "";
        string?[] told =
        [
            visit.LamenessAaep is { } lameness ? Say(DecisionPage.SignLameness, lameness) + context : null,
            visit.FlexionResponse == SignGrade.NotChecked
                ? null
                : Say(
                    visit.FlexionSeconds is null ? DecisionPage.SignFlexion : DecisionPage.SignFlexionHeld,
                    Names.Of(visit.FlexionResponse),
                    visit.FlexionSeconds
                ),
            Graded(ExerciseTexts.Heat, visit.Heat),
            Graded(ExerciseTexts.Swelling, visit.Swelling),
            Graded(ExerciseTexts.Pain, visit.Pain),
        ];
        string joined = Joined(told);
        return joined.Length == 0 ? DecisionPage.RestedNothing : Say(DecisionPage.RestedSigns, joined);
    }

    /// <summary>A rate after a verdict, as ", −12 % per 60 days"; empty when there is none.</summary>
    public static string Rate(double? percent) =>
        percent is { } known && double.IsFinite(known) ? Say(DecisionPage.RestedRate, Figures.SignedPercent(known)) : "";

    private static string Ceilings(OutingLimits limits)
    {
        (Gait Gait, int? Minutes)[] all =
        [
            (Gait.Walk, limits.Walk),
            (Gait.Trot, limits.Trot),
            (Gait.Canter, limits.Canter),
            (Gait.Gallop, limits.Gallop),
        ];
        return string.Join(
            ", ",
            all.Where(one => one.Minutes is not null).Select(one => $"{Names.Of(one.Gait)} {Say(ExerciseTexts.Fixed, one.Minutes)}")
        );
    }

    private static string? Graded(string text, SignGrade grade) => grade == SignGrade.NotChecked ? null : Say(text, Names.Of(grade));

    private static string? Either(bool? answer, string yes, string no) =>
        answer is null ? null
        : answer.Value ? yes
        : no;

    private static string Joined(string?[] parts) => string.Join(", ", parts.Where(part => !string.IsNullOrEmpty(part)));

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);

    private static string Say(string text, params ReadOnlySpan<object?> arguments) => string.Format(TextCulture.Default, text, arguments);
}
