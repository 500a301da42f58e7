using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Quantities;
using static RehabTrack.Rechecks.Tests.Healing.CourseBuilder;

namespace RehabTrack.Rechecks.Tests.Healing;

/// <summary>What is known of one lesion's area at a place, from what was written there.</summary>
public sealed class LesionKeyTests
{
    private static readonly LesionKey Unnamed = new(null, LinkPath.Axial);

    private static Place At(params Reading[] readings) => Assert.Single(Places.Of(Exam(0, readings)));

    private static Reading Tracing(string id, double? ligament = null, double? lesion = null, string? name = null) =>
        Row(18, ligament, lesion, name: name) with
        {
            Id = id,
        };

    [Fact]
    public void Several_tracings_count_with_their_mean()
    {
        Place place = At(Tracing("a", 1, 0.2), Tracing("b", 1, 0.4));

        Assert.Equal(0.3, Unnamed.AreaAt(place).MeasuredArea!.Value.Value, 12);
    }

    [Fact]
    public void One_that_could_not_be_outlined_makes_it_diffuse() =>
        Assert.Equal(
            LesionAreaKind.Diffuse,
            Unnamed.AreaAt(At(Tracing("a", 1, 0.2), Tracing("b", 1) with { LesionArea = LesionArea.Diffuse })).Kind
        );

    [Fact]
    public void Shares_of_a_known_ligament_are_an_area_by_their_mean_and_of_an_unknown_one_are_not()
    {
        Reading first = Tracing("a", 2) with { LesionPercent = new Percent(10) };
        Reading second = Tracing("b", 2) with { LesionPercent = new Percent(30) };

        Assert.Equal(0.4, Unnamed.AreaAt(At(first, second)).MeasuredArea!.Value.Value, 12);
        Assert.Equal(LesionAreaKind.Unknown, Unnamed.AreaAt(At(first with { LigamentArea = null })).Kind);
    }

    [Fact]
    public void A_share_of_nothing_is_no_lesion_and_one_of_two_is_not()
    {
        Reading none = Tracing("a") with { LesionPercent = new Percent(0) };
        Reading some = Tracing("b") with { LesionPercent = new Percent(20) };

        Assert.Equal(0, Unnamed.AreaAt(At(none)).MeasuredArea?.Value);
        Assert.Equal(LesionAreaKind.Unknown, Unnamed.AreaAt(At(none, some)).Kind);
    }

    [Theory]
    [InlineData(ReadingRole.NormalAbove, 0.0)]
    [InlineData(ReadingRole.NormalBelow, 0.0)]
    [InlineData(ReadingRole.Worst, null)]
    public void A_blank_is_nothing_at_a_normal_level_of_a_triplet_and_unknown_elsewhere(ReadingRole role, double? area) =>
        Assert.Equal(area, Unnamed.AreaAt(At(Tracing("a", 1) with { Role = role })).MeasuredArea?.Value);

    [Fact]
    public void One_normal_level_of_several_rows_is_enough_for_none() =>
        Assert.Equal(0, Unnamed.AreaAt(At(Tracing("a", 1), Tracing("b", 1) with { Role = ReadingRole.NormalAbove })).MeasuredArea?.Value);

    [Fact]
    public void Shares_without_areas_count_with_their_mean_and_an_area_of_none_is_a_share_of_none()
    {
        Reading first = Tracing("a") with { LesionPercent = new Percent(20) };
        Reading second = Tracing("b") with { LesionPercent = new Percent(40) };

        Assert.Equal(30, Unnamed.ShareAt(At(first, second))!.Value.Value, 12);
        Assert.Equal(0, Unnamed.ShareAt(At(Tracing("a", lesion: 0)))?.Value);
        Assert.Null(Unnamed.ShareAt(At(Tracing("a", lesion: 0.3))));
        Assert.Null(Unnamed.ShareAt(At(Tracing("a", 1))));
    }

    [Theory]
    [InlineData(ReadingRole.Worst, null, null, true)]
    [InlineData(ReadingRole.Worst, 0.0, null, false)]
    [InlineData(ReadingRole.Worst, null, 0.0, false)]
    [InlineData(ReadingRole.NormalAbove, null, null, false)]
    [InlineData(ReadingRole.None, null, null, false)]
    [InlineData(ReadingRole.None, null, 20.0, true)]
    [InlineData(ReadingRole.None, 0.2, null, true)]
    public void It_shows_by_an_area_or_a_share_and_a_blank_only_at_the_worst_level(
        ReadingRole role,
        double? lesion,
        double? percent,
        bool shows
    ) =>
        Assert.Equal(
            shows,
            Unnamed.ShowsAt(
                At(Tracing("a", lesion: lesion) with { Role = role, LesionPercent = percent is { } share ? new Percent(share) : null })
            )
        );

    [Fact]
    public void Where_the_place_was_looked_at_a_lesion_that_is_not_named_is_not_there()
    {
        LesionKey other = new("lateral", LinkPath.Axial);

        Assert.Equal(0, other.AreaAt(At(Tracing("a", 1, 0.2, "medial"))).MeasuredArea?.Value);
        Assert.Equal(0, other.AreaAt(At(Tracing("a", name: "medial") with { LesionPercent = new Percent(20) })).MeasuredArea?.Value);
        Assert.Equal(LesionAreaKind.Unknown, other.AreaAt(At(Tracing("a", 1, name: "medial"))).Kind);
    }
}
