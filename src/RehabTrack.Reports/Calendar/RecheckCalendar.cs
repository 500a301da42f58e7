using System.Globalization;
using Ical.Net;
using Ical.Net.CalendarComponents;
using Ical.Net.DataTypes;
using Ical.Net.Serialization;
using RehabTrack.Wording;

namespace RehabTrack.Reports.Calendar;

/// <summary>
/// Booked rechecks as an iCalendar file (RFC 5545). Times are UTC, so that no time zone has to be told; days without a time are whole days.
/// The same entries always make the same file.
/// </summary>
public static class RecheckCalendar
{
    /// <summary>The media type of such a file.</summary>
    public const string MediaType = "text/calendar; charset=utf-8";

    /// <summary>Writes the file.</summary>
    /// <param name="practiceName">The practice, which names the calendar.</param>
    /// <param name="entries">The entries, in the order they shall stand.</param>
    /// <param name="culture">The language; null takes the usual.</param>
    public static string Write(string practiceName, IEnumerable<CalendarEntry> entries, CultureInfo? culture = null)
    {
        ArgumentNullException.ThrowIfNull(entries);
        CultureInfo wanted = culture ?? TextCulture.Default;
        string name = Plain(string.Format(wanted, CalendarTexts.CalendarName, practiceName));
        Ical.Net.Calendar calendar = new() { ProductId = "-//RehabTrack//Rechecks 1//EN", Scale = "GREGORIAN" };
        // NAME and REFRESH-INTERVAL are those of RFC 7986; the older name of the first is what most programs still read.
        calendar.AddProperty("NAME", name);
        calendar.AddProperty("X-WR-CALNAME", name);
        CalendarProperty refresh = new("REFRESH-INTERVAL", "PT1H");
        refresh.AddParameter("VALUE", "DURATION");
        calendar.AddProperty(refresh);
        calendar.Events.AddRange(entries.Select(entry => Event(entry, wanted)));
        return LineFolds.Renew(
            new CalendarSerializer().SerializeToString(calendar) ?? throw new InvalidOperationException("A calendar has always a text.")
        );
    }

    private static CalendarEvent Event(CalendarEntry entry, CultureInfo culture)
    {
        CalDateTime start = entry.Begins is { } begins ? Utc(begins) : new CalDateTime(entry.Date);
        string?[] lines = [entry.Vet is null ? null : string.Format(culture, CalendarTexts.Comes, entry.Vet), entry.TravelNote];
        string description = Plain(string.Join('\n', lines.OfType<string>()));
        return new CalendarEvent
        {
            Uid = entry.Id.ToString("D"),
            Sequence = entry.Sequence,
            // Without a METHOD this is the moment the entry was last revised, not the moment the file was made.
            DtStamp = Utc(entry.ChangedAt),
            LastModified = Utc(entry.ChangedAt),
            Created = Utc(entry.BookedAt),
            Start = start,
            End = entry.Begins is { } from ? Utc(from.AddMinutes(entry.Minutes)) : new CalDateTime(entry.Date.AddDays(1)),
            Summary = Plain(string.Format(culture, CalendarTexts.Title, entry.HorseName)),
            Location = entry.Place is { } place ? Plain(place) : null,
            Description = description.Length == 0 ? null : description,
            Status = entry.IsCancelled ? EventStatus.Cancelled : EventStatus.Confirmed,
            Transparency = entry.IsCancelled || entry.Begins is null ? TransparencyType.Transparent : TransparencyType.Opaque,
        };
    }

    /// <summary>A calendar knows no control characters (RFC 5545, 3.1), and a program that meets one reads none of its entries.</summary>
    private static string Plain(string text) =>
        string.Concat(text.Where(letter => letter is '\n' or '\r' or '\t' || !char.IsControl(letter)));

    private static CalDateTime Utc(DateTime instant) => new(DateTime.SpecifyKind(instant, DateTimeKind.Utc), hasTime: true);
}
