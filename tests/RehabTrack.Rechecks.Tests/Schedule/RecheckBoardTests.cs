using CsCheck;
using RehabTrack.Rechecks.Schedule;

namespace RehabTrack.Rechecks.Tests.Schedule;

/// <summary>Days are counted from the last signed examination; the interval is 60 days.</summary>
public sealed class RecheckBoardTests
{
    private static readonly DateOnly Last = new(2026, 3, 1);
    private static readonly ScheduleSettings Settings = new()
    {
        IntervalDays = 60,
        SoonDays = 14,
        DoneDays = 14,
        EarlyDays = 7,
    };

    [Theory]
    [InlineData(0, RecheckStanding.Done)]
    [InlineData(14, RecheckStanding.Done)]
    [InlineData(15, RecheckStanding.NotDue)]
    [InlineData(46, RecheckStanding.Soon)]
    [InlineData(60, RecheckStanding.Due)]
    [InlineData(61, RecheckStanding.Overdue)]
    public void Without_a_booking_the_due_date_speaks(int today, RecheckStanding standing) => Assert.Equal(standing, On(today));

    [Theory]
    [InlineData(10, 55, RecheckStanding.Booked)]
    [InlineData(55, 55, RecheckStanding.Booked)]
    [InlineData(56, 55, RecheckStanding.Missed)]
    [InlineData(60, 70, RecheckStanding.Booked)]
    [InlineData(61, 70, RecheckStanding.Overdue)]
    [InlineData(71, 70, RecheckStanding.Missed)]
    public void A_booking_is_told_until_its_day_has_passed_and_never_hides_an_overdue_recheck(
        int today,
        int booked,
        RecheckStanding standing
    ) => Assert.Equal(standing, On(today, booked));

    [Theory]
    [InlineData(55, RecheckStanding.Unsigned)]
    [InlineData(48, RecheckStanding.Unsigned)]
    [InlineData(47, RecheckStanding.Missed)]
    [InlineData(58, RecheckStanding.Unsigned)]
    [InlineData(0, RecheckStanding.Missed)]
    [InlineData(59, RecheckStanding.Missed)]
    public void A_draft_near_the_booked_day_waits_for_its_signature_and_one_of_tomorrow_does_not(int draft, RecheckStanding standing) =>
        Assert.Equal(standing, On(58, 55, draft));

    [Theory]
    [InlineData(50, RecheckStanding.Soon)]
    [InlineData(60, RecheckStanding.Unsigned)]
    public void Without_a_booking_a_draft_counts_once_the_recheck_is_due(int today, RecheckStanding standing) =>
        Assert.Equal(standing, On(today, draft: 45));

    [Theory]
    [InlineData(-1, false)]
    [InlineData(0, false)]
    [InlineData(1, true)]
    [InlineData(30, true)]
    public void An_examination_serves_a_booking_only_when_it_comes_after_the_one_the_booking_follows(int examined, bool served) =>
        Assert.Equal(served, new RecheckBooking(Last.AddDays(5), Last).IsServedBy(Last.AddDays(examined), Settings));

    [Fact]
    public void A_served_booking_counts_no_more()
    {
        RecheckBooking booking = new(Last.AddDays(2), Last.AddDays(-60));

        Assert.Equal(
            RecheckStanding.Done,
            RecheckBoard.Of(RecheckDue.Of(Last, Settings, Last.AddDays(5)), booking, Last, null, Settings, Last.AddDays(5))
        );
    }

    [Fact]
    public void Whatever_is_booked_an_overdue_horse_is_never_shown_as_in_order() =>
        Gen.Select(Gen.Int[61, 300], Gen.Int[1, 400])
            .Sample(
                (today, booked) => Assert.Contains(On(today, booked), (RecheckStanding[])[RecheckStanding.Overdue, RecheckStanding.Missed]),
                seed: "0000KT2kSG20"
            );

    private static RecheckStanding On(int today, int? booked = null, int? draft = null)
    {
        DateOnly day = Last.AddDays(today);
        return RecheckBoard.Of(
            RecheckDue.Of(Last, Settings, day),
            booked is { } at ? new RecheckBooking(Last.AddDays(at), Last) : null,
            Last,
            draft is { } written ? Last.AddDays(written) : null,
            Settings,
            day
        );
    }
}
