using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Tests.Exams;

public sealed class ReadingRulesTests
{
    private static readonly ReadingDraft Right = new()
    {
        Part = Part.Body,
        LevelCm = 20,
        LigamentAreaCm2 = 1.5,
        LesionAreaCm2 = 0.45,
        EchogenicityGrade = 2,
        Note = "clear core",
    };

    [Fact]
    public void A_right_draft_becomes_the_reading_it_says()
    {
        Reading reading = ReadingRules.Make("7", Right);

        Assert.Empty(ReadingRules.Check(Right));
        Assert.Equal(("7", Part.Body, new Centimetres(20)), (reading.Id, reading.Part, reading.Level));
        Assert.Equal(new SquareCentimetres(1.5), reading.LigamentArea);
        Assert.Equal(LesionArea.Measured(new SquareCentimetres(0.45)), reading.LesionArea);
        Assert.Equal(new Grade(GradeScales.Echogenicity0To3, 2), reading.Echogenicity);
        Assert.Null(reading.Thickness);
        Assert.Equal("clear core", reading.Note);
    }

    [Fact]
    public void A_wrong_draft_makes_no_reading() =>
        Assert.Throws<ArgumentException>(() => ReadingRules.Make("7", Right with { LesionAreaCm2 = 1.6 }));

    [Fact]
    public void Everything_that_is_wrong_is_told_at_once_with_its_limits()
    {
        IReadOnlyList<Problem> problems = ReadingRules.Check(
            new ReadingDraft
            {
                LevelCm = 61,
                LigamentAreaCm2 = 21,
                ThicknessCm = double.NaN,
                FibreAlignmentGrade = 4,
            }
        );

        Assert.Equal(
            [
                "part missing",
                "level_cm level-out-of-range 61 0 60",
                "ligament_area_cm2 area-too-large 21 20",
                "thickness_cm length-negative NaN",
                "fibre_alignment_grade grade-outside-scale 4 0-3 0 3",
            ],
            problems.Select(problem => string.Join(' ', [problem.Field, problem.Code, .. problem.Arguments]))
        );
    }

    [Theory]
    [InlineData(-1.5, "area-negative")]
    [InlineData(0.0, "area-zero")]
    public void A_ligament_area_that_is_none_is_told_once(double ligament, string code) =>
        Assert.Equal(code, Assert.Single(ReadingRules.Check(Right with { LigamentAreaCm2 = ligament, LesionPercent = 30 })).Code);

    [Fact]
    public void Diffuse_is_a_measurement_and_bears_no_area()
    {
        ReadingDraft diffuse = new()
        {
            Part = Part.Origin,
            LevelCm = 8,
            LesionIsDiffuse = true,
        };

        Assert.Empty(ReadingRules.Check(diffuse));
        Assert.Equal(LesionArea.Diffuse, ReadingRules.Make("1", diffuse).LesionArea);
        Assert.Equal("diffuse-with-area", Assert.Single(ReadingRules.Check(diffuse with { LesionAreaCm2 = 0.2 })).Code);
    }

    [Theory]
    [InlineData(0.45, 32.9, true)]
    [InlineData(0.45, 33.1, false)]
    [InlineData(0.0, 2.9, true)]
    [InlineData(0.0, 3.1, false)]
    public void A_share_may_differ_from_the_areas_by_rounding_only(double lesion, double percent, bool right) =>
        Assert.Equal(right, ReadingRules.Check(Right with { LesionAreaCm2 = lesion, LesionPercent = percent }).Count == 0);
}
