using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Healing;
using static RehabTrack.Rechecks.Tests.Healing.CourseBuilder;

namespace RehabTrack.Rechecks.Tests.Healing;

/// <summary>
/// A volume is a lower bound when on any path the lesion may go on beyond what was read. Once it is one, nothing read elsewhere takes that
/// back.
/// </summary>
public sealed class LowerBoundTests
{
    private static readonly Reading[] Whole = [Row(10, 1.2, 0), Row(14, 1.4, 0.4), Row(18, 1.2, 0)];
    private static readonly Reading[] OpenEnd = [Row(10, 1.2, 0), Row(14, 1.4, 0.4), Row(18, 1.2, 0.2)];

    private static Reading Branch(double level, double lesion) => Row(level, 0.8, lesion, Part.MedialBranch);

    private static bool IsLowerBound(params IEnumerable<Reading>[] rows) =>
        Analysed(Case(Exam(0, rows.SelectMany(row => row)))).Burdens.Single().VolumeIsLowerBound;

    [Fact]
    public void A_lesion_that_ends_inside_what_was_read_is_whole() => Assert.False(IsLowerBound(Whole));

    // One level of a branch has no extent: with lesion it holds more than is reckoned, without it holds nothing.
    [Fact]
    public void A_single_level_of_a_branch_counts_by_whether_it_shows_lesion()
    {
        Assert.True(IsLowerBound(Whole, [Branch(20, 0.2)]));
        Assert.False(IsLowerBound(Whole, [Branch(20, 0)]));
    }

    [Fact]
    public void An_open_end_stays_one_whatever_a_branch_shows()
    {
        Assert.True(IsLowerBound(OpenEnd, [Branch(20, 0.2)]));
        Assert.True(IsLowerBound(OpenEnd, [Branch(20, 0)]));
        Assert.True(IsLowerBound(OpenEnd, [Branch(20, 0), Branch(22, 0.2), Branch(24, 0)]));
        Assert.True(IsLowerBound(Whole, [Branch(20, 0), Branch(22, 0.2)]));
    }

    // Of three examinations a level that only one of them read is outside the common window, and its lesion outside the volume.
    [Theory]
    [InlineData(22, 0.3, true)]
    [InlineData(6, 0.3, true)]
    [InlineData(22, 0.0, false)]
    [InlineData(6, 0.0, false)]
    public void Lesion_at_a_level_beyond_the_common_window_makes_a_lower_bound(double level, double lesion, bool expected)
    {
        ExaminationBurden[] burdens =
        [
            .. Analysed(Case(Exam(0, Whole), Exam(60, [.. Whole, Row(level, 1.2, lesion)]), Exam(120, Whole))).Burdens,
        ];

        Assert.Equal([false, expected, false], burdens.Select(burden => burden.VolumeIsLowerBound));
    }

    [Fact]
    public void Lesion_beyond_an_open_end_takes_nothing_back() =>
        Assert.All(
            Analysed(Case(Exam(0, OpenEnd), Exam(60, [.. OpenEnd, Row(22, 1.2, 0.3)]), Exam(120, OpenEnd))).Burdens,
            burden => Assert.True(burden.VolumeIsLowerBound)
        );

    // Levels further off the lesion hold nothing, without error.
    [Fact]
    public void Free_levels_beyond_the_next_one_add_no_error()
    {
        double? Error(params Reading[] rows) => Analysed(Case(Exam(0, rows))).Burdens.Single().VolumeStandardError?.Value;
        double? near = Error(Row(10, 1.2, 0.3), Row(14, 1.2, 0));

        Assert.NotNull(near);
        Assert.Equal(near.Value, Error(Row(10, 1.2, 0.3), Row(14, 1.2, 0), Row(18, 1.2, 0), Row(22, 1.2, 0))!.Value, 12);
    }
}
