using System.Globalization;
using System.Xml.Linq;
using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Reports.Exercise;
using RehabTrack.Reports.Healing;
using RehabTrack.Reports.Pictures;

namespace RehabTrack.Reports.Tests.Exercise;

/// <summary>The strip of exercise under the healing chart: what stands where, on the same axis.</summary>
public sealed class ExerciseStripTests
{
    // A Monday.
    private static readonly DateOnly Start = new(2026, 8, 3);

    private static readonly TimeAxis Axis = new(Start, Start.AddDays(70), 84, 924);

    private static readonly Work Permitted = new()
    {
        Outing = new OutingMinutes(20, 10),
        OutingsADay = 1,
        DaysAWeek = 6,
        Modes = WorkModes.InHand,
        Surfaces = Surfaces.FirmEven,
    };

    /// <summary>Ten weeks, six days of 20 and 10 minutes each; in the fourth 30 of trot.</summary>
    private static IReadOnlyList<WeekAdherence> Weeks()
    {
        DateOnly[] days = [.. Enumerable.Range(0, 70).Select(Start.AddDays)];
        return AdherenceReader.ByWeek(
            days.Where(day => day.DayOfWeek != DayOfWeek.Sunday)
                .Select(day => new DayLog { Date = day, Done = new OutingMinutes(20, IsFourth(day) ? 30 : 10) }),
            days.ToDictionary(day => day, _ => Permitted),
            days[0],
            days[^1]
        );
    }

    private static bool IsFourth(DateOnly day) => (day.DayNumber - Start.DayNumber) / 7 == 3;

    private static Picture Drawn(params StripMark[] marks) => ExerciseStrip.Draw(Axis, Weeks(), marks, new StripOptions());

    private static IEnumerable<XElement> Of(Picture picture, string kind) =>
        picture.Root.Descendants().Where(element => (string?)element.Attribute("class") == kind);

    private static double Number(XElement element, string name) =>
        double.Parse(element.Attribute(name)!.Value, CultureInfo.InvariantCulture);

    [Fact]
    public void Each_week_stands_where_its_days_stand_in_the_chart_above()
    {
        XElement[] lines = [.. Of(Drawn(), "permitted")];

        Assert.Equal(10, lines.Length);
        Assert.All(
            lines.Index(),
            line =>
            {
                Assert.Equal(Axis.XOf(Start.AddDays(7 * line.Index)), Number(line.Item, "x1"), 2);
                Assert.Equal(Math.Min(Axis.XOf(Start.AddDays(7 * (line.Index + 1))), 950), Number(line.Item, "x2"), 2);
            }
        );
    }

    [Fact]
    public void Columns_are_minutes_by_gait_one_on_the_other()
    {
        XElement[] boxes = [.. Of(Drawn(), "done").Where(box => box.Attribute("data-gait") is not null)];

        Assert.Equal(20, boxes.Length);
        // 120 minutes of walk and 60 of trot a week: twice as high, and the trot stands on the walk.
        Assert.Equal(2, Number(boxes[0], "height") / Number(boxes[1], "height"), 2);
        Assert.Equal(Number(boxes[0], "y"), Number(boxes[1], "y") + Number(boxes[1], "height"), 1);
        // In the fourth week three times the trot.
        Assert.Equal(3, Number(boxes[7], "height") / Number(boxes[1], "height"), 1);
    }

    [Fact]
    public void Only_the_week_with_more_than_permitted_has_its_wedge()
    {
        XElement wedge = Assert.Single(Of(Drawn(), "over"));
        double middle = (Axis.XOf(Start.AddDays(21)) + Axis.XOf(Start.AddDays(28))) / 2;

        Assert.StartsWith(
            string.Create(CultureInfo.InvariantCulture, $"M{Math.Round(middle - 5, 2):0.##} "),
            wedge.Attribute("d")!.Value,
            StringComparison.Ordinal
        );
        Assert.Contains("in 1 of them more was done", Drawn().Description, StringComparison.Ordinal);
    }

    [Fact]
    public void Decisions_and_concerns_stand_on_their_day_and_those_outside_the_axis_are_left_out()
    {
        Picture picture = Drawn(
            new StripMark(Start.AddDays(28), "concern", IsConcern: true),
            new StripMark(Start.AddDays(-1), "hold"),
            new StripMark(Start.AddDays(30), "step back")
        );

        Assert.Equal([Axis.XOf(Start.AddDays(28)), Axis.XOf(Start.AddDays(30))], Of(picture, "event").Select(tick => Number(tick, "x1")));
        Assert.Equal(["concern", "step back"], Of(picture, "event-text").Select(text => text.Value));
        // Two words that would stand in each other are written on two lines.
        Assert.Equal(2, Of(picture, "event-text").Select(text => text.Attribute("y")!.Value).Distinct().Count());
    }

    [Fact]
    public void The_table_behind_it_says_the_same()
    {
        DrawingTable table = Drawn().Table;

        Assert.Equal(10, table.Rows.Count);
        Assert.Equal(["180 min", "120 min", "60 min", "0 min", "0 min"], table.Rows[0].Skip(1).Take(5));
        Assert.Equal("180 min", table.Rows[3][3]);
        Assert.NotEqual(table.Rows[0][^1], table.Rows[3][^1]);
    }
}
