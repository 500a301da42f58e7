using System.Globalization;
using System.Text;
using System.Text.Json;
using CsCheck;
using Ical.Net.CalendarComponents;
using RehabTrack.Reports.Calendar;

namespace RehabTrack.Reports.Tests.Calendar;

/// <summary>RFC 5545 sections are named beside what they ask for.</summary>
public sealed class RecheckCalendarTests
{
    private const string Nasty =
        "Reed; \"Long, Acre\"\\n left\r\nBEGIN:VEVENT\nat the ägypt–gate 🐴🐴🐴🐴🐴🐴🐴🐴🐴🐴🐴🐴🐴🐴🐴🐴🐴🐴🐴🐴🐴🐴🐴🐴🐴🐴";

    private static readonly CalendarEntry Timed = new()
    {
        Id = Guid.Parse("0197a000-0000-7000-8000-00000000000a"),
        Sequence = 2,
        HorseName = "Thistle Vane",
        Date = new DateOnly(2027, 3, 28),
        Begins = new DateTime(2027, 3, 28, 7, 0, 0, DateTimeKind.Utc),
        Minutes = 45,
        Place = "Long Acre, yard 2; by the mill",
        TravelNote = "Ring first\nThe ford floods",
        Vet = "Edda Marrow",
        IsCancelled = false,
        BookedAt = new DateTime(2027, 1, 4, 10, 30, 0, DateTimeKind.Utc),
        ChangedAt = new DateTime(2027, 2, 5, 11, 31, 12, DateTimeKind.Utc),
    };

    private static readonly CalendarEntry AllDay = Timed with
    {
        Id = Guid.Parse("0197a000-0000-7000-8000-00000000000b"),
        Sequence = 0,
        HorseName = "Marram Bay",
        Date = new DateOnly(2027, 12, 31),
        Begins = null,
        Place = null,
        TravelNote = null,
        Vet = null,
        IsCancelled = true,
    };

    [Fact]
    public void Lines_end_with_CRLF_and_no_line_is_longer_than_75_octets()
    {
        // 3.1: lines are delimited by CRLF and SHOULD NOT be longer than 75 octets, excluding the line break; UTF-8 (6).
        string file = Write(Timed with { TravelNote = Nasty, HorseName = Nasty, Place = new string('x', 200) }, AllDay);

        Assert.EndsWith("END:VCALENDAR\r\n", file, StringComparison.Ordinal);
        string[] lines = file.Split("\r\n");
        Assert.All(lines, line => Assert.DoesNotContain('\n', line));
        Assert.All(lines, line => Assert.DoesNotContain('\r', line));
        Assert.All(lines, line => Assert.InRange(Encoding.UTF8.GetByteCount(line), 0, 75));
        Assert.DoesNotContain('\uFFFD', file);
        // No character is cut in two by a fold.
        Assert.All(lines, line => Assert.False(line.Length > 0 && (char.IsHighSurrogate(line[^1]) || char.IsLowSurrogate(line[0]))));
    }

    [Fact]
    public void Calendar_and_entries_carry_what_is_required_once()
    {
        // 3.6: PRODID and VERSION once; 3.6.1: UID and DTSTAMP once, DTSTART once where there is no METHOD.
        string file = Write(Timed, AllDay);

        Assert.Equal(1, Count(file, "VERSION:2.0"));
        Assert.Equal(1, Count(file, "PRODID:"));
        Assert.Equal(0, Count(file, "METHOD:"));
        foreach (string name in (string[])["UID:", "DTSTAMP:", "DTSTART", "DTEND", "SEQUENCE:", "STATUS:", "SUMMARY:"])
        {
            Assert.Equal(2, Count(file, name));
        }

        Assert.Contains("DTSTAMP:20270205T113112Z", file, StringComparison.Ordinal);
        Assert.Contains("DTSTART:20270328T070000Z", file, StringComparison.Ordinal);
        Assert.Contains("DTSTART;VALUE=DATE:20271231", file, StringComparison.Ordinal);
        Assert.Contains("DTEND;VALUE=DATE:20280101", file, StringComparison.Ordinal);
    }

    [Fact]
    public void The_same_entries_make_the_same_file_and_a_move_keeps_the_entry()
    {
        string file = Write(Timed);

        Assert.Equal(file, Write(Timed));
        CalendarEvent before = Assert.Single(Ical.Net.Calendar.Load(file)!.Events);
        CalendarEvent after = Assert.Single(
            Ical.Net.Calendar.Load(Write(Timed with { Sequence = 3, Begins = Timed.Begins!.Value.AddDays(2), IsCancelled = true }))!.Events
        );
        Assert.Equal(before.Uid, after.Uid);
        Assert.Equal((2, "CONFIRMED", 3, "CANCELLED"), (before.Sequence, before.Status, after.Sequence, after.Status));
    }

    [Fact]
    public void A_title_holds_the_horse_and_the_word_recheck_and_nothing_else() =>
        Assert.Equal("Thistle Vane: recheck", Assert.Single(Ical.Net.Calendar.Load(Write(Timed))!.Events).Summary);

    [Fact]
    public void A_calendar_without_entries_can_be_read() => Assert.Empty(Ical.Net.Calendar.Load(Write())!.Events);

    [Fact]
    public async Task Both_readers_understand_the_same()
    {
        string file = Write(Timed with { TravelNote = Nasty }, AllDay);
        List<CalendarEvent> ours = [.. Ical.Net.Calendar.Load(file)!.Events];
        JsonElement other = await OtherReader.ReadAsync(file);
        JsonElement[] theirs = [.. other.GetProperty("entries").EnumerateArray()];

        Assert.Equal(("2.0", "Rechecks of Hollin Down"), (other.GetProperty("version").GetString(), other.GetProperty("name").GetString()));
        Assert.Equal(2, theirs.Length);
        Assert.Equal(ours.Select(one => one.Uid), theirs.Select(one => Text(one, "uid")));
        Assert.Equal(ours.Select(one => one.Summary), theirs.Select(one => Text(one, "summary")));
        Assert.Equal(ours.Select(one => one.Description), theirs.Select(one => Text(one, "description")));
        Assert.Equal(["Long Acre, yard 2; by the mill", null], theirs.Select(one => Text(one, "location")));
        Assert.Equal(["CONFIRMED", "CANCELLED"], theirs.Select(one => Text(one, "status")));
        Assert.Equal([2, 0], theirs.Select(one => one.GetProperty("sequence").GetInt32()));
        Assert.Equal(["Edda Marrow comes.\n" + Nasty.ReplaceLineEndings("\n"), null], theirs.Select(one => Text(one, "description")));
        // 07:00 UTC on the day the clocks go forward in Vienna: 09:00 there.
        Assert.Equal(1806217200, theirs[0].GetProperty("start").GetProperty("unix").GetInt64());
        Assert.Equal(1806217200 + (45 * 60), theirs[0].GetProperty("end").GetProperty("unix").GetInt64());
        Assert.Equal(
            ("2027-12-31", true),
            (Text(theirs[1].GetProperty("start"), "text"), theirs[1].GetProperty("start").GetProperty("isDate").GetBoolean())
        );
        Assert.Equal("2028-01-01", Text(theirs[1].GetProperty("end"), "text"));
    }

    [Fact]
    public void Whatever_is_written_comes_back() =>
        Gen.Select(Gen.String[1, 120], Gen.String[0, 200], Gen.Int[0, 24 * 60], Gen.Int[1, 480])
            .Sample(
                (name, note, minute, minutes) =>
                {
                    string horse = Clean(name);
                    CalendarEntry entry = Timed with
                    {
                        HorseName = horse,
                        TravelNote = null,
                        Place = Clean(note),
                        Begins = Timed.Begins!.Value.AddMinutes(minute),
                        Minutes = minutes,
                    };
                    string file = Write(entry);
                    CalendarEvent read = Assert.Single(Ical.Net.Calendar.Load(file)!.Events);
                    Assert.Equal(horse + ": recheck", read.Summary);
                    Assert.Equal(entry.Begins, read.Start!.AsUtc);
                    Assert.Equal(entry.Begins.Value.AddMinutes(minutes), read.End!.AsUtc);
                    Assert.All(file.Split("\r\n"), line => Assert.InRange(Encoding.UTF8.GetByteCount(line), 0, 75));
                },
                iter: 300,
                seed: "0000KT2kSG20"
            );

    /// <summary>What a name can hold once it was entered: no control characters, no half characters, no blanks around it.</summary>
    private static string Clean(string text) =>
        new string([.. text.Where(one => !char.IsControl(one) && !char.IsSurrogate(one) && one < '\uFFF0')]).Trim() + "é";

    private static string Write(params CalendarEntry[] entries) =>
        RecheckCalendar.Write("Hollin Down", entries, CultureInfo.GetCultureInfo("en"));

    private static string? Text(JsonElement element, string name) => element.GetProperty(name).GetString();

    private static int Count(string file, string start) =>
        file.Split("\r\n").Count(line => line.StartsWith(start, StringComparison.Ordinal));
}
