using System.Globalization;
using Ical.Net.CalendarComponents;
using RehabTrack.Naughty;
using RehabTrack.Reports.Calendar;

namespace RehabTrack.Reports.Tests.Calendar;

/// <summary>Text that has broken other programs, in the entries of a calendar, read back by another library.</summary>
public sealed class NaughtyEntryTests
{
    [Fact]
    public void Horse_place_and_note_are_read_back_and_no_entry_is_planted()
    {
        string[] texts = [.. NaughtyStrings.All.Where(text => !string.IsNullOrWhiteSpace(text))];
        string file = RecheckCalendar.Write("Hollin Down", texts.Select(Entry), CultureInfo.GetCultureInfo("en"));

        Ical.Net.Calendar calendar = Ical.Net.Calendar.Load(file)!;

        Assert.Equal(texts.Length, calendar.Events.Count);
        foreach (CalendarEvent entry in calendar.Events)
        {
            string text = texts[int.Parse(entry.Uid![..8], CultureInfo.InvariantCulture)];
            Assert.Contains(Plain(text), Plain(entry.Summary!), StringComparison.Ordinal);
            Assert.Equal(Plain(text), Plain(entry.Location!));
            Assert.Contains(Plain(text), Plain(entry.Description!), StringComparison.Ordinal);
        }
    }

    /// <summary>A calendar knows one end of a line, and no control characters (RFC 5545, 3.1 and 3.3.11).</summary>
    private static string Plain(string text) =>
        string.Concat(text.ReplaceLineEndings("\n").Where(letter => letter == '\n' || letter == '\t' || !char.IsControl(letter))).Trim();

    private static CalendarEntry Entry(string text, int at) =>
        new()
        {
            Id = Guid.Parse($"{at:00000000}-0000-7000-8000-000000000000"),
            Sequence = 0,
            HorseName = text,
            Date = new DateOnly(2027, 3, 28),
            Begins = new DateTime(2027, 3, 28, 7, 0, 0, DateTimeKind.Utc),
            Minutes = 45,
            Place = text,
            TravelNote = text,
            Vet = "Edda Marrow",
            IsCancelled = false,
            BookedAt = new DateTime(2027, 1, 4, 10, 30, 0, DateTimeKind.Utc),
            ChangedAt = new DateTime(2027, 2, 5, 11, 31, 12, DateTimeKind.Utc),
        };
}
