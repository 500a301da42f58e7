using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Quantities;
using static RehabTrack.Rechecks.Tests.Healing.CourseBuilder;

namespace RehabTrack.Rechecks.Tests.Analysis;

/// <summary>What is kept beside a signature: its values with one standard error, and the examinations it rests on.</summary>
public sealed class SeenFiguresTests
{
    private static (SeenValue Seen, ExaminationBurden Burden) Last(params double[] sizes)
    {
        CaseCourse course = Case(sizes.Select((size, visit) => Exam(60 * visit, SixLevels(size))));
        CaseAnalysis analysis = Analysed(course);
        Assert.Equal(Measure.LesionVolume, analysis.Trend.Measure);
        return (SeenFigures.Of(course, [], analysis).Values[^1], analysis.Burdens[^1]);
    }

    // docs/methods/healing.md: on both sides the standard error itself where a volume is not measurable, that is below twice that error.
    [Fact]
    public void A_volume_that_cannot_be_told_from_none_has_its_standard_error_on_both_sides()
    {
        (SeenValue seen, ExaminationBurden burden) = Last(1, 0.3, 0.08);
        double volume = burden.Volume!.Value.Value;
        double error = burden.VolumeStandardError!.Value.Value;

        Assert.InRange(volume, error, 2 * error);
        Assert.Equal(volume + error, seen.Above, 9);
        Assert.Equal(volume - error, seen.Below, 9);
    }

    [Fact]
    public void A_volume_below_its_standard_error_has_none_as_its_lower_end()
    {
        (SeenValue seen, ExaminationBurden burden) = Last(1, 0.3, 0.02);

        Assert.True(burden.Volume!.Value.Value < burden.VolumeStandardError!.Value.Value);
        Assert.Equal(0, seen.Below);
        Assert.True(seen.Above > burden.Volume.Value.Value);
    }

    [Fact]
    public void The_examinations_are_told_by_date_and_those_of_one_day_by_id_in_whatever_order_they_are_given()
    {
        Examination later = Exam(60, SixLevels(0.8));
        CaseCourse course = Case(Exam(120, SixLevels(0.7)), later with { Id = "b" }, Exam(0, SixLevels()), later with { Id = "a" });

        SeenFigures seen = SeenFigures.Of(course, [], Analysed(course));

        Assert.Equal(["2026-01-12", "a", "b", "2026-05-12"], seen.Examinations.Select(one => one.ExaminationId));
    }

    [Theory]
    [InlineData(0.9, false)]
    [InlineData(1.1, false)]
    [InlineData(0.899, true)]
    [InlineData(1.101, true)]
    public void A_value_at_the_very_end_of_the_standard_error_is_not_another(double today, bool isAnother)
    {
        SeenValue seen = new()
        {
            ExaminationId = "one",
            Date = Start,
            Value = 1,
            Below = 0.9,
            Above = 1.1,
            Lower95 = 0.8,
            Upper95 = 1.2,
        };

        Assert.Equal(isAnother, seen.DiffersFrom(today));
    }

    [Fact]
    public void The_same_grade_read_again_is_not_another()
    {
        CaseCourse course = Case(new[] { 2, 2 }.Select((grade, visit) => Exam(60 * visit, Graded(grade))));

        Assert.All(SeenFigures.Of(course, [], Analysed(course)).Values, value => Assert.False(value.DiffersFrom(2)));

        static Reading Graded(int grade) => Row(20) with { FibreAlignment = new Grade(GradeScales.FibreAlignment0To3, grade) };
    }
}
