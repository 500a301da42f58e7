using RehabTrack.Rechecks.Permits;
using RehabTrack.Wording;

namespace RehabTrack.Web.Components.Exercise;

/// <summary>The signs of a day's log in words.</summary>
public static class SignWords
{
    /// <summary>The signs above none, as "heat slight, lameness seen"; empty when there are none.</summary>
    public static string Of(DayLog log)
    {
        ArgumentNullException.ThrowIfNull(log);
        (string Text, SignGrade Grade)[] graded =
        [
            (ExerciseTexts.Heat, log.Heat),
            (ExerciseTexts.Swelling, log.Swelling),
            (ExerciseTexts.Pain, log.Pain),
        ];
        return string.Join(
            ", ",
            [
                .. graded
                    .Where(sign => sign.Grade > SignGrade.None)
                    .Select(sign => string.Format(TextCulture.Default, sign.Text, Names.Of(sign.Grade))),
                .. log.Lameness == true ? [ExerciseTexts.Lameness] : Array.Empty<string>(),
            ]
        );
    }
}
