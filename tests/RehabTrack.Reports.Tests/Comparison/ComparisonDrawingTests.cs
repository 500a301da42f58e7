using System.Xml.Linq;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Linking;
using RehabTrack.Reports.Comparison;
using RehabTrack.Reports.Pictures;
using static RehabTrack.Reports.Tests.AssertPicture;

namespace RehabTrack.Reports.Tests.Comparison;

public sealed class ComparisonDrawingTests
{
    private static readonly SizeChange Ligament = Change(MeasuredSize.LigamentArea, 1.5, 1.4, 1.2, 1.85);
    private static readonly SizeChange Lesion = Change(MeasuredSize.LesionArea, 0.5, 0.25, 0.33, 0.75);
    private static readonly SizeChange Thickness = Change(MeasuredSize.Thickness, 0.9, 0.85, 0.75, 1.06);

    [Theory]
    [InlineData(WidthClass.Desktop)]
    [InlineData(WidthClass.Phone)]
    public void Both_dates_and_all_areas_share_one_scale(WidthClass width)
    {
        Picture picture = Draw([Ligament, Lesion, Thickness], width);
        double perCm2 = Width(picture, Ligament, "before") / Ligament.Before;
        Assert.True(perCm2 > 0);
        Assert.Equal(Ligament.Now * perCm2, Width(picture, Ligament, "now"), 0.02);
        Assert.Equal(Lesion.Before * perCm2, Width(picture, Lesion, "before"), 0.02);
        Assert.Equal(Lesion.Now * perCm2, Width(picture, Lesion, "now"), 0.02);
        Assert.Equal(Thickness.Now / Thickness.Before, Width(picture, Thickness, "now") / Width(picture, Thickness, "before"), 0.001);
    }

    [Fact]
    public void A_bar_ends_inside_the_zone_of_error_exactly_when_nobody_can_tell()
    {
        Picture picture = Draw([Ligament, Lesion]);
        Assert.True(EndsInside(picture, Ligament));
        Assert.Equal("−7\u00a0%, cannot tell", WordsOf(picture, Ligament));
        Assert.False(EndsInside(picture, Lesion));
        Assert.Equal("−50\u00a0%, smaller", WordsOf(picture, Lesion));
    }

    [Fact]
    public void A_lesion_from_nothing_has_no_percent()
    {
        Assert.Equal("newly there", WordsOf(Draw([Ligament, Change(MeasuredSize.LesionArea, 0, 0.3, 0, 0.07)]), Lesion));
        Assert.Equal("cannot tell", WordsOf(Draw([Ligament, Change(MeasuredSize.LesionArea, 0, 0.03, 0, 0.07)]), Lesion));
    }

    [Theory]
    [InlineData(WidthClass.Desktop)]
    [InlineData(WidthClass.Phone)]
    public void It_stays_inside_its_frame_and_takes_every_colour_from_the_page(WidthClass width)
    {
        foreach (IReadOnlyList<SizeChange> changes in new IReadOnlyList<SizeChange>[] { [], [Ligament, Lesion, Thickness], [Lesion] })
        {
            Picture picture = Draw(changes, width);
            IsWellFormed(picture);
            StaysInside(picture);
            TakesEveryColourFromThePage(picture);
            Assert.Equal(changes.Count, picture.Table.Rows.Count);
        }
    }

    [Fact]
    public void Nothing_measured_twice_is_said_in_words() =>
        Assert.Contains("Nothing was measured at both dates.", Draw([]).Svg, StringComparison.Ordinal);

    private static SizeChange Change(MeasuredSize size, double before, double now, double below, double above) =>
        new()
        {
            Size = size,
            Before = before,
            Now = now,
            DetectableBelow = below,
            DetectableAbove = above,
        };

    private static Picture Draw(IReadOnlyList<SizeChange> changes, WidthClass width = WidthClass.Desktop)
    {
        InventedCase invented = new(new DateOnly(2026, 1, 12), new DateOnly(2026, 9, 8));
        invented.Track("axial-1", Part.Body, 24).Step(0, 24, reading => reading).Step(1, 24.2, reading => reading);
        (CaseCourse _, Rechecks.Analysis.CaseAnalysis analysis) = invented.Build();
        IReadOnlyList<TrackStep> steps = analysis.Links.Tracks[0].Steps;
        return ComparisonDrawing.Draw(steps[0], steps[1], changes, new ComparisonOptions { Width = width });
    }

    private static XElement RowOf(Picture picture, SizeChange change) =>
        WithClass(picture.Root, "size").Single(row => row.Attribute("data-size")!.Value == change.Size.ToString());

    private static double Width(Picture picture, SizeChange change, string which) =>
        Number(WithClass(RowOf(picture, change), which).Single(), "width");

    private static string WordsOf(Picture picture, SizeChange change) => WithClass(RowOf(picture, change), "words").Single().Value;

    private static bool EndsInside(Picture picture, SizeChange change)
    {
        XElement zone = WithClass(RowOf(picture, change), "zone").Single();
        XElement now = WithClass(RowOf(picture, change), "now").Single();
        double end = Number(now, "x") + Number(now, "width");
        return end >= Number(zone, "x") && end <= Number(zone, "x") + Number(zone, "width");
    }
}
