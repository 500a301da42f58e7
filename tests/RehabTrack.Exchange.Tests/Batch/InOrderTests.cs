using RehabTrack.Exchange.Batch;

namespace RehabTrack.Exchange.Tests.Batch;

public sealed class InOrderTests
{
    /// <summary>The first piece waits for the second: only work on several threads can end, and yet the first result comes first.</summary>
    [Fact]
    public void Results_come_in_the_order_of_the_pieces_though_later_ones_are_done_before()
    {
        using ManualResetEventSlim second = new();
        int[] results =
        [
            .. InOrder.Select(
                [1, 2, 3],
                2,
                piece =>
                {
                    if (piece == 1)
                    {
                        second.Wait();
                    }
                    else
                    {
                        second.Set();
                    }

                    return 10 * piece;
                }
            ),
        ];

        Assert.Equal([10, 20, 30], results);
    }

    [Fact]
    public void No_more_pieces_are_drawn_than_are_at_work()
    {
        int drawn = 0;
        IEnumerable<int> Pieces()
        {
            while (true)
            {
                yield return drawn++;
            }
        }

        using IEnumerator<int> results = InOrder.Select(Pieces(), 3, piece => piece).GetEnumerator();
        for (int result = 0; result < 20; result++)
        {
            Assert.True(results.MoveNext());
            Assert.Equal(result, results.Current);
            Assert.True(drawn <= result + 4);
        }
    }

    [Fact]
    public void An_exception_comes_out_as_it_was_thrown_and_what_has_begun_is_waited_for()
    {
        int done = 0;
        void Draw()
        {
            foreach (
                int _ in InOrder.Select(
                    Enumerable.Range(0, 10),
                    4,
                    piece => piece == 0 ? throw new IOException("No room.") : Interlocked.Increment(ref done)
                )
            ) { }
        }

        Assert.Equal("No room.", Assert.Throws<IOException>(Draw).Message);
        Assert.Equal(3, done);
    }
}
