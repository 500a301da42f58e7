using RehabTrack.Records.Room;

namespace RehabTrack.Records.Tests.Room;

public sealed class PracticeTimeTests
{
    [Theory]
    [InlineData("Europe/Vienna")]
    [InlineData("europe/vienna")]
    [InlineData("EUROPE/VIENNA")]
    public void A_zone_is_known_and_read_in_whatever_letters_it_was_saved_whether_or_not_zones_were_listed_before(string zone)
    {
        TimeZoneInfo.ClearCachedData();

        Assert.Equal(new DateOnly(2026, 7, 2), PracticeTime.DateOf(new DateTime(2026, 7, 1, 22, 30, 0, DateTimeKind.Utc), zone));
        TimeZoneInfo.ClearCachedData();
        Assert.True(PracticeTime.IsKnown(zone));
    }

    [Fact]
    public void What_is_no_zone_is_not_known() => Assert.False(PracticeTime.IsKnown("Mars/Olympus"));
}
