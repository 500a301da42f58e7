using RehabTrack.Records.Reminders;
using RehabTrack.Wording;

namespace RehabTrack.Web.Features.Reminders;

/// <summary>The letter that reminds of a recheck: no diagnosis, no verdict, no permitted work.</summary>
public static class ReminderText
{
    /// <summary>Writes the letter.</summary>
    /// <param name="letter">What it is written from.</param>
    /// <param name="name">Who it is written to; null for nobody by name.</param>
    public static MailText Of(ReminderLetter letter, string? name)
    {
        ArgumentNullException.ThrowIfNull(letter);
        bool isBooked = letter.BookedOn is not null;
        string?[] lines =
        [
            name is null ? ReminderTexts.GreetingPlain : Say(ReminderTexts.Greeting, name),
            "",
            When(letter),
            letter.Place is null ? null : Say(ReminderTexts.Place, letter.Place),
            letter.TravelNote,
            letter.PracticePhone is { } phone ? Say(isBooked ? ReminderTexts.RingToMove : ReminderTexts.Ring, phone)
            : isBooked ? null
            : ReminderTexts.RingNoNumber,
            "",
            ReminderTexts.NoMoreWork,
            "",
            ReminderTexts.Closing,
            letter.PracticeName,
        ];
        return new MailText(
            Say(ReminderTexts.Subject, letter.HorseName).ReplaceLineEndings(" "),
            string.Join('\n', lines.OfType<string>())
        );
    }

    private static string When(ReminderLetter letter)
    {
        if (letter.BookedOn is { } day)
        {
            return letter.BookedAt is { } time
                ? Say(ReminderTexts.BookedAt, letter.HorseName, Figures.Date(day), time.ToString("HH:mm", TextCulture.Default))
                : Say(ReminderTexts.Booked, letter.HorseName, Figures.Date(day));
        }

        return letter.Due.DueDate is not { } due
            ? ""
            : Say(letter.Due.DaysLeft < 0 ? ReminderTexts.Overdue : ReminderTexts.Due, letter.HorseName, Figures.Date(due));
    }

    private static string Say(string text, params object[] arguments) => string.Format(TextCulture.Default, text, arguments);
}
