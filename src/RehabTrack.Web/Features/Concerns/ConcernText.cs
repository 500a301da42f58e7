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
    public static MailText Of(ConcernLetter letter)
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
                by,
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
