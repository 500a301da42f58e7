using System.Globalization;
using System.Xml.Linq;
using RehabTrack.Rechecks.Care;
using RehabTrack.Reports.Exercise;
using RehabTrack.Reports.Healing;
using RehabTrack.Reports.Pictures;

namespace RehabTrack.Reports.Tests.Exercise;

public sealed class CareStripTests
{
    private static readonly DateOnly Start = new(2026, 3, 1);

    private static readonly TimeAxis Axis = HealingChart.AxisOf(Start, Start.AddDays(200), WidthClass.Desktop);

    private static CareMark Mark(CareGroup group, int from, int? until = null, bool intoLesion = false, bool fromLog = false) =>
        new(
            group,
            Start.AddDays(from),
            until is { } last ? Start.AddDays(last) : null,
            $"{group} {from}",
            $"{group} in full {from}",
            "entered by Edda Marrow",
            intoLesion,
            fromLog
        );

    private static Picture? Draw(params CareMark[] marks) => CareStrip.Draw(Axis, marks, [], new StripOptions());

    private static XElement[] MarksOf(Picture picture, CareGroup group) =>
        [.. picture.Root.Descendants().Where(element => element.Attribute("data-group")?.Value == group.ToString())];

    [Fact]
    public void Each_mark_stands_on_its_day_of_the_axis_above()
    {
        Picture picture = Draw(Mark(CareGroup.Treatment, 50), Mark(CareGroup.Medicine, 20, 40), Mark(CareGroup.Sign, 120))!;

        Assert.StartsWith(
            string.Create(CultureInfo.InvariantCulture, $"translate({Math.Round(Axis.XOf(Start.AddDays(50)), 2)} "),
            MarksOf(picture, CareGroup.Treatment).Single().Attribute("transform")!.Value,
            StringComparison.Ordinal
        );
        XElement bar = MarksOf(picture, CareGroup.Medicine).Single();
        Assert.Equal(Axis.XOf(Start.AddDays(20)), double.Parse(bar.Attribute("x")!.Value, CultureInfo.InvariantCulture), 2);
        Assert.Equal(
            Axis.XOf(Start.AddDays(40)) - Axis.XOf(Start.AddDays(20)),
            double.Parse(bar.Attribute("width")!.Value, CultureInfo.InvariantCulture),
            2
        );
    }

    [Fact]
    public void A_medicine_still_given_reaches_the_end_and_one_begun_before_the_axis_is_cut()
    {
        XElement[] bars = MarksOf(Draw(Mark(CareGroup.Medicine, -20, 10), Mark(CareGroup.Medicine, 150))!, CareGroup.Medicine);
        double[] ends =
        [
            .. bars.Select(bar =>
                double.Parse(bar.Attribute("x")!.Value, CultureInfo.InvariantCulture)
                + double.Parse(bar.Attribute("width")!.Value, CultureInfo.InvariantCulture)
            ),
        ];

        Assert.Equal(Axis.XOf(Start.AddDays(10)), ends[0], 2);
        Assert.Equal(Axis.XOf(Start.AddDays(200)), ends[1], 2);
    }

    [Fact]
    public void What_was_put_into_the_lesion_and_what_the_yard_saw_differ_in_shape_not_in_words_alone()
    {
        Picture picture = Draw(
            Mark(CareGroup.Treatment, 10, intoLesion: true),
            Mark(CareGroup.Treatment, 100),
            Mark(CareGroup.Sign, 10),
            Mark(CareGroup.Sign, 100, fromLog: true)
        )!;

        Assert.Equal(2, MarksOf(picture, CareGroup.Treatment).Select(mark => mark.Attribute("fill")!.Value).Distinct().Count());
        Assert.Equal(2, MarksOf(picture, CareGroup.Sign).Select(mark => mark.Attribute("fill")!.Value).Distinct().Count());
        Assert.Equal(4, picture.Table.Rows.Count);
        Assert.All(picture.Table.Rows, row => Assert.Contains("in full", row[3], StringComparison.Ordinal));
    }

    [Fact]
    public void Nothing_on_the_axis_draws_nothing_and_a_stand_down_date_stands_as_the_vet_set_it()
    {
        Assert.Null(Draw(Mark(CareGroup.Sign, -1), Mark(CareGroup.Treatment, 201)));

        Picture picture = CareStrip.Draw(
            Axis,
            [],
            [new StandDownMark(Start.AddDays(5), Start.AddDays(33), "Edda Marrow")],
            new StripOptions()
        )!;
        Assert.Contains("stand-down until 3\u00a0Apr\u00a02026", picture.Svg, StringComparison.Ordinal);
        Assert.Equal("entered by Edda Marrow", picture.Table.Rows.Single()[4]);
    }
}
