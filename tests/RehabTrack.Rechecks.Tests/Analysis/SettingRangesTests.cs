using RehabTrack.Rechecks.Analysis;

namespace RehabTrack.Rechecks.Tests.Analysis;

public sealed class SettingRangesTests
{
    public static TheoryData<string> Names => [.. SettingRanges.All.Select(range => range.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_setting_takes_both_ends_and_nothing_beyond_and_changes_nothing_else(string name)
    {
        AnalysisSettings usual = new();
        SettingRange range = SettingRanges.Of(name)!;
        foreach (double end in new[] { range.Lowest, range.Highest })
        {
            AnalysisSettings changed = SettingRanges.With(usual, name, end);
            Assert.Equal(end, SettingRanges.ValueOf(changed, name));
            Assert.Equal(new AnalysisSettings(), usual);
            Assert.Equal(usual, SettingRanges.With(changed, name, SettingRanges.ValueOf(usual, name)));
        }

        ArgumentOutOfRangeException below = Assert.Throws<ArgumentOutOfRangeException>(() =>
            SettingRanges.With(usual, name, range.Lowest - 0.0001)
        );
        Assert.Contains(name, below.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => SettingRanges.With(usual, name, range.Highest + 0.0001));
        Assert.Throws<ArgumentOutOfRangeException>(() => SettingRanges.With(usual, name, double.NaN));
    }

    [Fact]
    public void A_count_is_a_whole_number_and_a_share_need_not_be()
    {
        Assert.False(SettingRanges.Of("trend.windowExaminations")!.Holds(3.5));
        Assert.True(SettingRanges.Of("trend.worseningZ")!.Holds(2.5));
        Assert.Null(SettingRanges.Of("trend.windowexaminations"));
    }

    [Fact]
    public void What_lies_outside_is_told_with_the_value_and_both_ends()
    {
        AnalysisSettings usual = new();
        AnalysisSettings wrong = usual with
        {
            Trend = usual.Trend with { WindowExaminations = 2, TargetFraction = double.NaN },
            Error = usual.Error with { WidthCv = 1.5 },
        };

        Assert.Empty(SettingRanges.Check(usual));
        Assert.Equal(
            [
                ("error.widthCv", "setting-not-in-range", "error.widthCv|1.5|0.001|1"),
                ("trend.windowExaminations", "setting-not-whole-in-range", "trend.windowExaminations|2|3|20"),
                ("trend.targetFraction", "setting-not-in-range", "trend.targetFraction|NaN|0.001|0.999"),
            ],
            SettingRanges.Check(wrong).Select(problem => (problem.Field, problem.Code, string.Join('|', problem.Arguments)))
        );
    }
}
