using RehabTrack.Rechecks.Schedule;
using RehabTrack.Records.Bookings;
using RehabTrack.Wording;

namespace RehabTrack.Web.Features.Board;

/// <summary>The sentences of the board.</summary>
public static class BoardWords
{
    private static readonly Dictionary<RecheckStanding, string> Headings = new()
    {
        [RecheckStanding.Overdue] = RecheckPage.Overdue,
        [RecheckStanding.Missed] = RecheckPage.Missed,
        [RecheckStanding.Unsigned] = RecheckPage.Unsigned,
        [RecheckStanding.Due] = RecheckPage.Due,
        [RecheckStanding.Soon] = RecheckPage.Soon,
        [RecheckStanding.Booked] = RecheckPage.Booked,
        [RecheckStanding.Done] = RecheckPage.Done,
        [RecheckStanding.NotDue] = RecheckPage.NotDue,
    };

    private static readonly Dictionary<CallOutcome, string> Outcomes = new()
    {
        [CallOutcome.Spoke] = RecheckPage.Call_Spoke,
        [CallOutcome.LeftMessage] = RecheckPage.Call_LeftMessage,
        [CallOutcome.NoAnswer] = RecheckPage.Call_NoAnswer,
        [CallOutcome.Note] = RecheckPage.Call_Note,
    };

    /// <summary>What stands above the rows of a standing.</summary>
    public static string Heading(RecheckStanding standing) => Headings[standing];

    /// <summary>How a standing is marked: amber where somebody must act.</summary>
    public static string MarkOf(RecheckStanding standing) =>
        standing switch
        {
            RecheckStanding.Overdue or RecheckStanding.Missed => "mark amber",
            RecheckStanding.Done => "mark good",
            RecheckStanding.NotDue => "mark note",
            _ => "mark",
        };

    /// <summary>What came of a call.</summary>
    public static string Of(CallOutcome outcome) => Outcomes[outcome];

    /// <summary>How the practice stands, in one line.</summary>
    public static string InBrief(BoardView view)
    {
        ArgumentNullException.ThrowIfNull(view);
        int waiting = view.Rows.Count(row =>
            row.Standing is RecheckStanding.Overdue or RecheckStanding.Missed or RecheckStanding.Due or RecheckStanding.Soon
        );
        int booked = view.Rows.Count(row => row.Booking is not null && row.Standing != RecheckStanding.Missed);
        return waiting == 0
            ? Say(RecheckPage.LeadQuiet, Figures.Number(booked, "0"))
            : Say(RecheckPage.Lead, Figures.Number(waiting, "0"), Figures.Number(booked, "0"));
    }

    /// <summary>When it is due, how far away or over, and by what.</summary>
    public static string Due(BoardRow row)
    {
        ArgumentNullException.ThrowIfNull(row);
        if (row.Due.DueDate is not { } date || row.Due.DaysLeft is not { } left)
        {
            return RecheckPage.NeverSigned;
        }

        string when = left switch
        {
            -1 => Say(RecheckPage.OverOne, Figures.Date(date)),
            < 0 => Say(RecheckPage.Over, Figures.Date(date), -left),
            0 => RecheckPage.DueToday,
            1 => RecheckPage.DueInOne,
            _ => Say(RecheckPage.DueIn, Figures.Date(date), left),
        };
        string by = row.Due.By switch
        {
            DueBy.Gate => RecheckPage.DueByGate,
            DueBy.Signature => RecheckPage.DueBySignature,
            DueBy.Interval when row.StepIntervalDays == row.IntervalDays => RecheckPage.StepInterval,
            DueBy.Interval when row.OwnIntervalDays is not null => RecheckPage.OwnInterval,
            DueBy.Interval => RecheckPage.DueByInterval,
        };
        return Say(by, when, row.IntervalDays);
    }

    /// <summary>When the horse was last examined here; null when it was not.</summary>
    public static string? Examined(BoardRow row)
    {
        ArgumentNullException.ThrowIfNull(row);
        return row.LastSigned is { } last ? Say(RecheckPage.LastExamined, Figures.Date(last)) : null;
    }

    /// <summary>What is booked: day, time, place and vet.</summary>
    public static string Booked(BookingView booking)
    {
        ArgumentNullException.ThrowIfNull(booking);
        string day = Say(RecheckPage.BookedFor, Day(booking.Date));
        string when = booking.Time is { } time ? Say(RecheckPage.AtTime, day, Clock(time), booking.Minutes) : Say(RecheckPage.AllDay, day);
        string?[] parts = [when, booking.Place, booking.Vet is null ? null : Say(RecheckPage.With, booking.Vet)];
        return string.Join(", ", parts.OfType<string>());
    }

    /// <summary>A day with its weekday, as "Thu 3 Dec 2026".</summary>
    public static string Day(DateOnly date) => $"{date.ToString("ddd", TextCulture.Default)} {Figures.Date(date)}";

    /// <summary>A time of day, as "09:30".</summary>
    public static string Clock(TimeOnly time) => time.ToString("HH:mm", TextCulture.Default);

    /// <summary>What else is booked at that time.</summary>
    public static string Clash(ClashView clash)
    {
        ArgumentNullException.ThrowIfNull(clash);
        return Say(clash.SameVet ? RecheckPage.ClashVet : RecheckPage.ClashPlace, clash.HorseName, Clock(clash.Time));
    }

    /// <summary>The last call: what came of it, with whom, in which words.</summary>
    public static string Call(CallView call)
    {
        ArgumentNullException.ThrowIfNull(call);
        string what = call.Person is null ? Of(call.Outcome) : Say(RecheckPage.CallWith, Of(call.Outcome), call.Person);
        return call.Words is null ? what : Say(RecheckPage.LastCall, what, call.Words);
    }

    /// <summary>A text with its arguments filled in.</summary>
    public static string Say(string text, params object[] arguments) => string.Format(TextCulture.Default, text, arguments);
}
