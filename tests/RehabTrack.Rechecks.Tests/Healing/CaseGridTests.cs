using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Healing;
using static RehabTrack.Rechecks.Tests.Healing.CourseBuilder;

namespace RehabTrack.Rechecks.Tests.Healing;

/// <summary>Who measured, and which examinations are compared.</summary>
public sealed class CaseGridTests
{
    private static CaseGrid GridOf(params Examination[] examinations)
    {
        CaseCourse course = Case(examinations);
        return new CaseGrid(course, ByLevel(course), new MeasurementError(new MeasurementErrorSettings(), course.Limb));
    }

    [Theory]
    [InlineData("Ada", " ada ", true)]
    [InlineData("Ada", null, true)]
    [InlineData(null, "Ada", true)]
    [InlineData(null, null, true)]
    [InlineData("", "  ", true)]
    [InlineData("Ada", "Bo", false)]
    public void A_person_is_one_however_the_name_is_typed_and_a_blank_is_nobody(string? first, string? second, bool one) =>
        Assert.Equal(one, GridOf(Exam(0, Row(10, measurer: first)), Exam(60, Row(10, measurer: second))).HasOneMeasurer);

    [Fact]
    public void A_blank_between_two_persons_makes_them_no_single_one() =>
        Assert.False(GridOf(Exam(0, Row(10)), Exam(60, Row(10, measurer: null)), Exam(120, Row(10, measurer: "Bo"))).HasOneMeasurer);

    // At the first examination Ada measured 10 and Bo 14; at the second Bo measured both, and 18, which the first did not read.
    [Fact]
    public void Another_person_is_one_who_did_not_measure_the_place_then_or_who_was_not_there_where_it_was_not_read()
    {
        CaseGrid grid = GridOf(
            Exam(0, Row(10), Row(14, measurer: "Bo")),
            Exam(60, Row(10, measurer: "Bo"), Row(14, measurer: "Bo"), Row(18, measurer: "Bo")),
            Exam(120, Row(10, measurer: "Cy"), Row(14, measurer: null))
        );

        Assert.True(grid.OtherMeasurer(1, 0, 0));
        Assert.False(grid.OtherMeasurer(1, 1, 0));
        Assert.False(grid.OtherMeasurer(1, 2, 0));
        Assert.True(grid.OtherMeasurer(1, 2, 2));
        Assert.False(grid.OtherMeasurer(2, 1, 0));
        Assert.False(grid.OtherMeasurer(0, 2, 1));

        Assert.False(grid.OtherMeasurer(1, 0));
        Assert.True(grid.OtherMeasurer(2, 0));
        Assert.False(grid.OtherMeasurer(2, 2));
    }

    [Fact]
    public void The_stance_of_most_is_compared_and_a_tape_that_stands_apart_has_no_say()
    {
        Examination Raised(int day) => Exam(day, Row(10)) with { Stance = Stance.NonWeightBearing };

        Assert.Equal([1, 2], GridOf(Exam(0, Row(10)), Raised(60), Raised(120)).Compared);
        Assert.Equal([0], GridOf(Exam(0, Row(10)), Raised(60)).Compared);

        CaseCourse course = Case(Exam(0, Row(10)), Exam(30, Row(10)), Raised(60), Raised(90), Raised(120));
        CaseGrid apart = new(
            course,
            ByLevel(course) with
            {
                Apart = [course.Examinations[3].Id, course.Examinations[4].Id],
            },
            new MeasurementError(new MeasurementErrorSettings(), course.Limb)
        );
        Assert.Equal(Stance.WeightBearing, apart.Stance);
        Assert.Equal([0, 1], apart.Compared);
    }
}
