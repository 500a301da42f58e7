using System.Globalization;
using System.Xml.Linq;
using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Reports.Ladder;
using static RehabTrack.Reports.Tests.AssertPicture;

namespace RehabTrack.Reports.Tests.Ladder;

/// <summary>A ladder of zones tells zones, on its axis, in its words and in its table, and never a length.</summary>
public sealed class ZoneLadderTests
{
    private const ZoneScheme Nine = ZoneScheme.HindNine;
    private static readonly double[] Lesions = [0, 0.2, 0.4, 0.1, 0];

    private static Reading Row(int examination, int place, Level level) =>
        new()
        {
            Id = string.Create(CultureInfo.InvariantCulture, $"{examination}/{place}"),
            Part = Part.Body,
            Level = level,
            LigamentArea = new SquareCentimetres(1.3),
            LesionArea = LesionArea.Measured(new SquareCentimetres(Lesions[place] / (1 + examination))),
        };

    private static Examination Read(int number, ZoneScheme? scheme, Func<int, Level> levelOf) =>
        new()
        {
            Id = string.Create(CultureInfo.InvariantCulture, $"e{number}"),
            Date = new DateOnly(2026, 1, 10).AddDays(60 * number),
            Zones = scheme,
            Readings = [.. Enumerable.Range(0, Lesions.Length).Select(place => Row(number, place, levelOf(place)))],
        };

    private static Examination ByZones(int number) => Read(number, Nine, place => new Level(new Zone(Nine, place + 2)));

    private static Examination OnTape(int number) => Read(number, null, place => new Centimetres(12 + (2 * place)));

    private static LadderPicture Drawn(double? zoneLength, params Examination[] examinations)
    {
        CaseCourse course = new()
        {
            Id = "case",
            Limb = Limb.LeftHind,
            Landmark = Landmark.PointOfHock,
            ZoneLength = zoneLength is { } length ? new Centimetres(length) : null,
            Examinations = examinations,
        };
        CaseAnalysis analysis = CaseAnalyser.Analyse(course, [], new AnalysisSettings(), examinations.Max(one => one.Date));
        return LadderDrawing.Draw(course, analysis, new LadderOptions());
    }

    private static string[] Axis(LadderPicture picture) => [.. WithClass(picture.Root, "level").Select(tick => tick.Value)];

    [Fact]
    public void The_axis_the_rungs_and_the_table_tell_zones()
    {
        LadderPicture picture = Drawn(null, ByZones(0), ByZones(1));
        XElement svg = IsWellFormed(picture);

        Assert.Equal(["2A", "2B", "3A", "3B", "4A"], Axis(picture));
        Assert.All(WithClass(svg, "rung"), rung => Assert.Contains((string)rung.Attribute("data-level")!, Axis(picture)));
        Assert.All(
            WithClass(svg, "rung"),
            rung => Assert.StartsWith("zone ", (string)rung.Attribute("aria-label")!, StringComparison.Ordinal)
        );
        Assert.DoesNotContain("in cm", picture.Description, StringComparison.Ordinal);
        Assert.Contains("2B", picture.Table.Rows[1]);
        Assert.DoesNotContain(picture.Table.Rows.SelectMany(row => row), cell => cell.EndsWith("\u00a0cm", StringComparison.Ordinal));
    }

    [Fact]
    public void The_shape_that_stands_for_a_volume_needs_a_zone_length()
    {
        Assert.Empty(WithClass(Drawn(null, ByZones(0), ByZones(1)).Root, "lesion-shape"));
        Assert.NotEmpty(WithClass(Drawn(4.1, ByZones(0), ByZones(1)).Root, "lesion-shape"));
    }

    [Fact]
    public void Zones_and_a_tape_have_axes_of_their_own_and_leave_nothing_out_in_each_others_columns()
    {
        LadderPicture picture = Drawn(null, ByZones(0), ByZones(1), OnTape(2));

        string[] axis = Axis(picture);
        Assert.All(["2A", "4A", "12", "20"], told => Assert.Contains(told, axis));
        Assert.Empty(WithClass(picture.Root, "missing"));
        Assert.Equal(2, WithClass(picture.Root, "path-name").Count());
    }
}
