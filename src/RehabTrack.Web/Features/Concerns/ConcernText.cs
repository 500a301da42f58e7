using RehabTrack.Records.Exercise;
using RehabTrack.Web.Components;
using RehabTrack.Web.Components.Exercise;
using RehabTrack.Web.Features.Reminders;
using RehabTrack.Wording;

namespace RehabTrack.Web.Features.Concerns;

/// <summary>The letter that tells a vet of a concern.</summary>
public static class ConcernText
{
    /// <summary>Writes the letter.</summary>
    /// <param name="letter">What it is written from.</param>
    /// <param name="count">How many concerns of the horse it stands for: 1, or all since the last letter.</param>
    public static MailText Of(ConcernLetter letter, int count = 1)
    {
        ArgumentNullException.ThrowIfNull(letter);
        string horse = letter.Yard is null ? letter.HorseName : Say(ConcernTexts.HorseAt, letter.HorseName, letter.Yard);
        string by = Names.AsTitle(
            Say(ConcernTexts.ReportedAt, ConcernWords.ByOf(letter.Line), Moments.Of(letter.Line.RecordedAt, letter.TimeZone))
        );
        return new MailText(
            Say(ConcernTexts.Subject, letter.HorseName).ReplaceLineEndings(" "),
            string.Join(
                '\n',
                horse,
                ConcernWords.SaidOf(letter.Line),
                count > 1 ? by + '\n' + Say(ConcernTexts.MoreSince, count) : by,
                "",
                ConcernTexts.Dropped,
                ConcernTexts.WhyYou,
                "",
                letter.PracticeName
            )
        );
    }

    private static string Say(string text, params object[] arguments) => string.Format(TextCulture.Default, text, arguments);
}
