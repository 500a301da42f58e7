using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Tests.Exams;

public sealed class ZoneRulesTests
{
    private static readonly ReadingDraft Draft = new() { Part = Part.Body, LigamentAreaCm2 = 1 };

    private static IEnumerable<(string, string)> ProblemsOf(ReadingDraft draft) =>
        ReadingRules.Check(draft).Select(problem => (problem.Field, problem.Code));

    [Fact]
    public void A_zone_of_the_scheme_makes_a_reading_there()
    {
        ReadingDraft draft = Draft with { ZoneScheme = ZoneScheme.HindNine, Zone = "4a" };

        Assert.Empty(ReadingRules.Check(draft));
        Assert.Equal("4A", ReadingRules.Make("r", draft).Level.Zone!.Value.Name);
    }

    [Fact]
    public void What_is_wrong_with_a_zone_is_said_with_the_zones_there_are()
    {
        Assert.Equal([("zone", "zone-unknown")], ProblemsOf(Draft with { ZoneScheme = ZoneScheme.HindSeven, Zone = "4A" }));
        Assert.Equal([("zone", "zone-missing")], ProblemsOf(Draft with { ZoneScheme = ZoneScheme.HindSeven }));
        Assert.Equal([("zone", "zone-without-scheme")], ProblemsOf(Draft with { Zone = "2A" }));
        Assert.Equal([("level_cm", "missing")], ProblemsOf(Draft));
        Assert.Equal(
            [("level_cm", "level-and-zones")],
            ProblemsOf(Draft with { ZoneScheme = ZoneScheme.HindSeven, Zone = "2A", LevelCm = 12 })
        );
        Assert.Equal(
            ["4A", "1A, 1B, 2A, 2B, 3A, 3B, 3C"],
            ReadingRules.Check(Draft with { ZoneScheme = ZoneScheme.HindSeven, Zone = "4A" })[0].Arguments
        );
    }

    [Fact]
    public void A_scheme_belongs_to_its_limb_and_fixed_points_need_a_tape()
    {
        FixedPoint division = new(FixedPointKind.Division, new Centimetres(24));

        Assert.Empty(ZoneRules.Check(null, Limb.LeftFore, [division]));
        Assert.Empty(ZoneRules.Check(ZoneScheme.ForeSeven, Limb.LeftFore, []));
        Assert.Equal(
            [("zone_scheme", "zone-scheme-other-limb"), ("division_cm", "fixed-point-by-zones")],
            ZoneRules.Check(ZoneScheme.HindNine, Limb.LeftFore, [division]).Select(problem => (problem.Field, problem.Code))
        );
    }

    [Theory]
    [InlineData(null, true)]
    [InlineData(1.0, true)]
    [InlineData(4.1, true)]
    [InlineData(8.0, true)]
    [InlineData(0.9, false)]
    [InlineData(8.1, false)]
    [InlineData(double.NaN, false)]
    public void A_zone_length_lies_within_the_limits(double? length, bool fits) =>
        Assert.Equal(fits, ZoneRules.CheckLength(length).Count == 0);
}
