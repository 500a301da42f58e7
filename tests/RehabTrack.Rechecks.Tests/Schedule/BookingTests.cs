using RehabTrack.Rechecks.Schedule;

namespace RehabTrack.Rechecks.Tests.Schedule;

public sealed class BookingTests
{
    private static readonly DateOnly Today = new(2026, 3, 28);
    private static readonly ScheduleSettings Settings = new() { FurthestDays = 730, LongestVisitMinutes = 480 };

    [Theory]
    [InlineData("2026-03-28", 45, null, "")]
    [InlineData("2028-03-27", 480, null, "")]
    [InlineData("2026-03-27", 45, null, "recheck-in-the-past")]
    [InlineData("2028-03-28", 45, null, "recheck-too-far")]
    [InlineData("2026-04-01", 45, "2026-03-31", "")]
    [InlineData("2026-03-31", 45, "2026-03-31", "recheck-before-last-examination")]
    [InlineData("2026-03-01", 0, "2026-03-31", "recheck-before-last-examination,visit-minutes-out-of-range")]
    [InlineData("2026-04-01", 481, null, "visit-minutes-out-of-range")]
    public void A_recheck_is_booked_after_the_last_examination_from_today_on(string date, int minutes, string? last, string codes) =>
        Assert.Equal(
            codes,
            string.Join(
                ',',
                BookingRules.Check(Day(date), minutes, last is null ? null : Day(last), Settings, Today).Select(one => one.Code)
            )
        );

    [Theory]
    [InlineData(null, true)]
    [InlineData(1, true)]
    [InlineData(730, true)]
    [InlineData(0, false)]
    [InlineData(731, false)]
    public void An_interval_lies_between_a_day_and_two_years(int? days, bool kept) =>
        Assert.Equal(kept, BookingRules.CheckInterval(days, Settings).Count == 0);

    [Theory]
    [InlineData("09:00", 45, "09:44", true)]
    [InlineData("09:00", 45, "09:45", false)]
    [InlineData("09:30", 30, "09:00", true)]
    [InlineData("10:00", 30, "09:00", false)]
    public void Visits_that_touch_do_not_overlap(string first, int minutes, string second, bool clash) =>
        Assert.Equal(clash, BookingClash.Of(Visit("a", first, minutes), [Visit("b", second, 45)]).Count == 1);

    [Fact]
    public void A_visit_over_midnight_is_in_the_way_of_the_next_day()
    {
        BookedVisit late = Visit("a", "23:30", 60);
        BookedVisit early = Visit("b", "00:15", 30) with { Date = Today.AddDays(1) };

        Assert.Equal(new BookingClash("b", true, false), Assert.Single(BookingClash.Of(late, [early])));
        Assert.Empty(BookingClash.Of(late, [early with { Date = Today }]));
    }

    [Fact]
    public void The_night_the_clocks_change_counts_by_the_wall_clock()
    {
        DateOnly spring = new(2026, 3, 29);
        DateOnly autumn = new(2026, 10, 25);

        Assert.All(
            (DateOnly[])[spring, autumn],
            day =>
            {
                Assert.Single(BookingClash.Of(Visit("a", "01:45", 30) with { Date = day }, [Visit("b", "02:00", 30) with { Date = day }]));
                Assert.Empty(BookingClash.Of(Visit("a", "01:45", 15) with { Date = day }, [Visit("b", "02:00", 30) with { Date = day }]));
            }
        );
    }

    [Fact]
    public void Vet_and_place_are_told_apart_and_a_visit_without_a_time_is_in_nobodys_way()
    {
        BookedVisit visit = Visit("a", "09:00", 45) with { Place = "Long Acre" };
        BookedVisit[] others =
        [
            visit,
            Visit("same vet", "09:10", 30),
            Visit("same place", "09:20", 30) with
            {
                VetId = "other",
                Place = " long acre ",
            },
            Visit("neither", "09:00", 45) with
            {
                VetId = "other",
            },
            Visit("unknown", "09:00", 45) with
            {
                VetId = null,
            },
            Visit("all day", "09:00", 45) with
            {
                Time = null,
            },
        ];

        Assert.Equal(
            [new BookingClash("same vet", true, false), new BookingClash("same place", false, true)],
            BookingClash.Of(visit, others)
        );
    }

    private static BookedVisit Visit(string id, string time, int minutes) =>
        new(id, Today, TimeOnly.ParseExact(time, "HH:mm", null), minutes, "vet", null);

    private static DateOnly Day(string date) => DateOnly.ParseExact(date, "yyyy-MM-dd", null);
}
