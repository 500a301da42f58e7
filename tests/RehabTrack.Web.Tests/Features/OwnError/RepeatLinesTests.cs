using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Rechecks.Repeats;
using RehabTrack.Web.Features.OwnError;

namespace RehabTrack.Web.Tests.Features.OwnError;

public sealed class RepeatLinesTests
{
    [Fact]
    public void A_line_holds_all_values_of_one_person_with_point_or_comma()
    {
        (IReadOnlyList<RepeatTracing> tracings, IReadOnlyList<Problem> problems) = RepeatLines.Read(
            "\n Quillon 14 March ; Day; Ligament-Area; Ivo; 1.21 1,25\r\n\nscan 7;image;thickness;;0.9\n"
        );

        Assert.Empty(problems);
        Assert.Equal(
            [
                new RepeatTracing("Quillon 14 March", RepeatKind.SameHorseAndDay, MeasuredSize.LigamentArea, "Ivo", 1.21),
                new RepeatTracing("Quillon 14 March", RepeatKind.SameHorseAndDay, MeasuredSize.LigamentArea, "Ivo", 1.25),
                new RepeatTracing("scan 7", RepeatKind.SameImage, MeasuredSize.Thickness, null, 0.9),
            ],
            tracings
        );
    }

    [Theory]
    [InlineData("a;day;width", "1", "repeat-line-unreadable")]
    [InlineData("\n\na;week;width;Ivo;1", "3", "repeat-kind-unknown")]
    [InlineData("a;day;height;Ivo;1", "1", "repeat-size-unknown")]
    [InlineData("a;day;width;Ivo;about 1", "1", "repeat-value-unreadable")]
    [InlineData("a;day;width;Ivo;", "1", "repeats-none")]
    [InlineData(";day;width;Ivo;1", "1", "repeat-without-subject")]
    [InlineData("a;day;width;Ivo;99", "1", "repeat-out-of-range")]
    [InlineData("a;day;ligament area;Ivo;0", "1", "repeat-out-of-range")]
    public void What_is_wrong_is_told_with_its_line(string text, string line, string code)
    {
        Problem problem = Assert.Single(RepeatLines.Read(text).Problems);

        Assert.Equal((line, code), (problem.Field, problem.Code));
    }
}
