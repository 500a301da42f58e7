using RehabTrack.Rechecks.Healing;
using static RehabTrack.Rechecks.Tests.Healing.CourseBuilder;

namespace RehabTrack.Rechecks.Tests.Healing;

public sealed class BurdenTests
{
    [Fact]
    public void Six_levels_give_the_total_of_all_levels_and_the_class_of_it()
    {
        // ECM 330: 100·0.90/7.90; SAEVA 191: mild.
        ExaminationBurden burden = Analysed(Case(Exam(0, SixLevels()))).Burdens.Single();
        Assert.Equal(100 * 0.90 / 7.90, burden.TotalPercent!.Value.Value, 10);
        Assert.Equal(11.4, burden.TotalPercent!.Value.Value, 1);
        Assert.True(burden.LevelsComplete);
        Assert.Equal(new SeverityGrade("total-percent", 1), burden.Severity);
        Assert.Equal(30, burden.WorstPercent!.Value.Value, 10);
        Assert.Equal(18, burden.WorstLevel!.Value.Value);
    }

    [Fact]
    public void Six_levels_four_centimetres_apart_hold_3_60_cubic_centimetres()
    {
        ExaminationBurden burden = Analysed(Case(Exam(0, SixLevels()))).Burdens.Single();
        Assert.Equal(3.60, burden.Volume!.Value.Value, 10);
        Assert.False(burden.VolumeIsLowerBound);
    }
}
