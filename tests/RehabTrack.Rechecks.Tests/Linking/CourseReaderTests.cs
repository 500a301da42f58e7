using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Linking;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Tests.Linking;

/// <summary>The plain numbers that the linker works on, reckoned by hand from what was recorded.</summary>
public sealed class CourseReaderTests
{
    private static readonly LinkingSettings Settings = new();

    private static CourseState Read(params Examination[] examinations) => CourseReader.Read(examinations, CommonTape.None, [], Settings);

    private static Reading Row(int number, double level, double? ligament, double? lesion) =>
        Tapes.Row(number, Part.Body, level, ligament, lesion);

    // The unit is a share of the usual (geometric mean) ligament area: of 1 and 4 cm² that is 2 cm².
    [Fact]
    public void Lesion_areas_are_counted_in_a_share_of_the_usual_ligament_area()
    {
        CourseState state = Read(Tapes.Of(1, Row(1, 10, 1, 0.3), Row(1, 12, 4, 0)));
        Assert.Equal(0.3 / (Settings.LesionFloorShare * 2), state.Places[0][0][0].Lesion, 12);
        Assert.Equal(0, state.Places[0][0][1].Lesion);
    }

    [Fact]
    public void Without_any_ligament_area_they_are_counted_in_a_share_of_the_usual_lesion_area()
    {
        CourseState state = Read(Tapes.Of(1, Row(1, 10, null, 0.1), Row(1, 12, null, 0.4), Row(1, 14, null, 0)));
        Assert.Equal(0.1 / (Settings.LesionFloorOfLesions * 0.2), state.Places[0][0][0].Lesion, 12);
        Assert.Equal(0.4 / (Settings.LesionFloorOfLesions * 0.2), state.Places[0][0][1].Lesion, 12);
    }

    [Fact]
    public void What_was_not_recorded_or_has_no_logarithm_is_no_number()
    {
        PlaceNode[] places = Read(Tapes.Of(1, Row(1, 10, null, null), Row(1, 12, 0, 0), Row(1, 14, 1.5, 0))).Places[0][0];
        Assert.Equal(double.NaN, places[0].LogLigamentArea);
        Assert.Equal(double.NaN, places[0].Lesion);
        Assert.Equal(double.NaN, places[1].LogLigamentArea);
        Assert.Equal(Math.Log(1.5), places[2].LogLigamentArea, 12);
    }

    // Eight gaps in 16 cm, and one more examination of one level that has no gap.
    [Fact]
    public void The_spacing_is_the_mean_distance_of_neighbouring_levels()
    {
        Assert.Equal(2, Read(Tapes.Exam(1, 10, 11, 12, 13, 14), Tapes.Exam(2, 10, 13, 16, 19, 22), Tapes.Exam(3, 40)).Spacing[0], 12);
        Assert.Equal(Settings.UsualSpacingCm, Read(Tapes.Exam(1, 10), Tapes.Exam(2, 30)).Spacing[0], 12);
        Assert.Equal(0.5, Read(Tapes.Exam(1, 10, 10.1)).Spacing[0], 12);
        Assert.Equal(6, Read(Tapes.Exam(1, 10, 30)).Spacing[0], 12);
    }

    [Fact]
    public void A_tape_that_starts_elsewhere_has_its_levels_and_fixed_points_moved_alike()
    {
        Examination moved = Tapes.Exam(1, 10) with { FixedPoints = [new FixedPoint(FixedPointKind.Division, new Centimetres(24))] };
        CourseState state = CourseReader.Read(
            [moved],
            new Dictionary<string, Centimetres?>(StringComparer.Ordinal) { ["e1"] = new Centimetres(6.5) },
            [],
            Settings
        );
        Assert.Equal(16.5, state.Places[0][0][0].Level);
        Assert.Equal(30.5, state.FixedPoints[(int)FixedPointKind.Division][0]);
        Assert.Equal(double.NaN, state.FixedPoints[(int)FixedPointKind.Origin][0]);
    }
}
