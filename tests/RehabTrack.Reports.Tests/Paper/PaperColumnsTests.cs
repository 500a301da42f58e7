using CsCheck;
using RehabTrack.Reports.Paper;

namespace RehabTrack.Reports.Tests.Paper;

public sealed class PaperColumnsTests
{
    private const double Room = 480;

    private static readonly Gen<(double Line, double Word)[]> Wanted = Gen.Select(Gen.Double[0, 900], Gen.Double[0, 1])
        .Select(one => (one.Item1, one.Item1 * one.Item2))
        .Array[1, 14];

    [Fact]
    public void Columns_share_the_room_to_the_last_point() =>
        Wanted.Sample(wanted => Assert.Equal(Room, PaperColumns.Share(wanted, Room).Sum(), 6));

    [Fact]
    public void Where_the_words_fit_none_is_broken_and_where_the_lines_fit_none_is()
    {
        Wanted.Sample(wanted =>
        {
            double[] shared = PaperColumns.Share(wanted, Room);
            bool linesFit = wanted.Sum(one => one.Line) <= Room;
            bool wordsFit = wanted.Sum(one => one.Word) <= Room;
            for (int index = 0; index < wanted.Length; index++)
            {
                double least =
                    linesFit ? wanted[index].Line
                    : wordsFit ? wanted[index].Word
                    : 0;
                Assert.InRange(shared[index], least - 1e-6, Room + 1e-6);
            }
        });
    }

    [Fact]
    public void Columns_without_a_word_share_alike() => Assert.Equal([240.0, 240.0], PaperColumns.Share([(0, 0), (0, 0)], Room));
}
