using RehabTrack.Records.Backups;

namespace RehabTrack.Records.Tests.Backups;

public sealed class BackupScheduleTests
{
    private const string Zone = "Europe/Vienna";
    private static readonly TimeOnly HalfPastTwo = new(2, 30);

    [Theory]
    // Vienna is an hour ahead of UTC in winter: 02:30 there is 01:30 UTC.
    [InlineData("2026-11-24T01:29:59Z", "2026-11-23T01:30:00Z", "2026-11-24T01:30:00Z")]
    [InlineData("2026-11-24T01:30:00Z", "2026-11-24T01:30:00Z", "2026-11-25T01:30:00Z")]
    [InlineData("2026-11-24T23:30:00Z", "2026-11-24T01:30:00Z", "2026-11-25T01:30:00Z")]
    // On 29 March 2026 there is no 02:30 in Vienna: the clocks go from 02:00 to 03:00.
    [InlineData("2026-03-29T12:00:00Z", "2026-03-29T01:30:00Z", "2026-03-30T00:30:00Z")]
    public void One_is_due_every_day_by_the_clock_of_the_practice(string now, string last, string next)
    {
        Assert.Equal(Utc(last), BackupSchedule.LastDue(Utc(now), HalfPastTwo, Zone));
        Assert.Equal(Utc(next), BackupSchedule.NextDue(Utc(now), HalfPastTwo, Zone));
    }

    [Fact]
    public void Of_a_year_of_days_the_last_fortnight_and_the_last_of_eight_weeks_are_kept()
    {
        BackupSettings settings = new();
        List<BackupCopy> there = [];
        for (DateTime night = Utc("2026-01-01T01:30:00Z"); night <= Utc("2026-11-24T01:30:00Z"); night = night.AddDays(1))
        {
            there.Add(Copy(night));
            foreach (BackupCopy old in BackupRetention.Superfluous(there, settings, Zone))
            {
                Assert.True(there.Remove(old));
            }
        }

        // 24 November 2026 is a Tuesday: of its week it is the last so far, and of the seven weeks before it the Sundays.
        Assert.Equal(
            [
                .. Enumerable.Range(0, 14).Select(days => Utc("2026-11-24T01:30:00Z").AddDays(-days)),
                .. Enumerable.Range(2, 5).Select(weeks => Utc("2026-11-22T01:30:00Z").AddDays(-7 * weeks)),
            ],
            there.Select(copy => copy.At).OrderDescending()
        );
    }

    [Fact]
    public void One_made_by_hand_is_never_cleared_away_and_takes_no_place()
    {
        BackupCopy byHand = Copy(Utc("2020-05-05T09:00:00Z"), byHand: true);
        BackupCopy newer = Copy(Utc("2026-11-24T01:30:00Z"));
        BackupCopy older = Copy(Utc("2026-11-23T01:30:00Z"));

        Assert.Equal(
            [older],
            BackupRetention.Superfluous([older, byHand, newer], new BackupSettings { KeepDaily = 1, KeepWeekly = 0 }, Zone)
        );
    }

    [Fact]
    public void The_newest_stays_even_when_none_shall_be_kept_and_after_a_long_absence_the_old_ones_do()
    {
        BackupCopy[] old = [.. Enumerable.Range(1, 14).Select(day => Copy(new DateTime(2021, 3, day, 2, 0, 0, DateTimeKind.Utc)))];
        BackupCopy today = Copy(Utc("2026-11-24T01:30:00Z"));

        Assert.Equal(old[..1], BackupRetention.Superfluous([.. old, today], new BackupSettings { KeepWeekly = 0 }, Zone));
        Assert.DoesNotContain(
            today,
            BackupRetention.Superfluous([.. old, today], new BackupSettings { KeepDaily = 0, KeepWeekly = 0 }, Zone)
        );
    }

    private static BackupCopy Copy(DateTime at, bool byHand = false) =>
        new(at.ToString("O", System.Globalization.CultureInfo.InvariantCulture), at, 1, byHand);

    private static DateTime Utc(string text) => DateTimeOffset.Parse(text, System.Globalization.CultureInfo.InvariantCulture).UtcDateTime;
}
