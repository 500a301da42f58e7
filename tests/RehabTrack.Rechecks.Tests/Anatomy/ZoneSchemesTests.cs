using System.Text.Json;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Tests.Anatomy;

/// <summary>Equine Clinical Medicine, Surgery and Reproduction, 2nd ed., page 320.</summary>
public sealed class ZoneSchemesTests
{
    [Theory]
    [InlineData(ZoneScheme.ForeSeven, "fore-7", Landmark.AccessoryCarpalBone, "1A 1B 2A 2B 3A 3B 3C")]
    [InlineData(ZoneScheme.HindSeven, "hind-7", Landmark.TarsometatarsalJoint, "1A 1B 2A 2B 3A 3B 3C")]
    [InlineData(ZoneScheme.HindNine, "hind-9", Landmark.PointOfHock, "1A 1B 2A 2B 3A 3B 4A 4B 4C")]
    public void A_scheme_has_its_zones_from_its_landmark_down(ZoneScheme scheme, string code, Landmark landmark, string names)
    {
        Assert.Equal(names.Split(' '), ZoneSchemes.NamesOf(scheme));
        Assert.Equal(landmark, ZoneSchemes.LandmarkOf(scheme));
        Assert.Equal(scheme, ZoneSchemes.Find(code));
        Assert.Equal(scheme, ZoneSchemes.Find(code.Replace('-', ' ').ToUpperInvariant()));
        Assert.Equal(code, ZoneSchemes.CodeOf(scheme));
    }

    [Fact]
    public void A_limb_has_its_own_schemes_and_an_unknown_limb_all()
    {
        Assert.Equal([ZoneScheme.ForeSeven], ZoneSchemes.Of(Limb.RightFore));
        Assert.Equal([ZoneScheme.HindSeven, ZoneScheme.HindNine], ZoneSchemes.Of(Limb.LeftHind));
        Assert.Equal(Enum.GetValues<ZoneScheme>(), ZoneSchemes.Of(Limb.Unknown));
    }

    [Fact]
    public void A_zone_is_found_by_its_name_however_it_is_written_and_only_in_its_scheme()
    {
        Assert.Equal(new Zone(ZoneScheme.HindNine, 3), ZoneSchemes.Find(ZoneScheme.HindNine, " 2 b"));
        Assert.Equal("4C", ZoneSchemes.Find(ZoneScheme.HindNine, "4c")!.Value.Name);
        Assert.Null(ZoneSchemes.Find(ZoneScheme.HindSeven, "4A"));
        Assert.Null(ZoneSchemes.Find(ZoneScheme.ForeSeven, ""));
    }

    [Fact]
    public void Levels_order_down_the_limb_and_a_zone_never_tells_a_length()
    {
        Level[] zones = [.. Enumerable.Range(0, 9).Select(ordinal => new Level(new Zone(ZoneScheme.HindNine, ordinal)))];

        Assert.Equal(zones, zones.Reverse().Order());
        Assert.All(zones, zone => Assert.Null(zone.OnTape));
        Assert.Equal(ZoneSchemes.NamesOf(ZoneScheme.HindNine), zones.Select(zone => zone.ToString()));
        Assert.True(new Level(new Centimetres(40)) < zones[0]);
        Assert.NotEqual(new Level(new Zone(ZoneScheme.HindSeven, 2)), zones[2]);
    }

    [Theory]
    [InlineData(-3, 0)]
    [InlineData(5.9, 1)]
    [InlineData(6.1, 2)]
    [InlineData(99, 8)]
    public void The_level_at_a_position_is_the_nearest_zone_of_the_scheme(double position, int ordinal) =>
        Assert.Equal(new Zone(ZoneScheme.HindNine, ordinal), Level.At(new Centimetres(position), ZoneScheme.HindNine).Zone);

    [Fact]
    public void A_level_survives_json_and_a_tape_level_reads_as_it_always_was_written()
    {
        Level tape = new(new Centimetres(12.5));
        Level zone = new(new Zone(ZoneScheme.HindNine, 3));

        Assert.Equal("""{"value":12.5}""", JsonSerializer.Serialize(tape));
        Assert.Equal("""{"scheme":"hind-9","zone":"2B"}""", JsonSerializer.Serialize(zone));
        Assert.Equal(tape, JsonSerializer.Deserialize<Level>(JsonSerializer.Serialize(tape)));
        Assert.Equal(zone, JsonSerializer.Deserialize<Level>(JsonSerializer.Serialize(zone)));
        Assert.Throws<JsonException>(() => JsonSerializer.Deserialize<Level>("""{"scheme":"hind-7","zone":"4C"}"""));
    }
}
