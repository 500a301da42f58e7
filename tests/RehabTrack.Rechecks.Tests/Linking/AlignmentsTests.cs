namespace RehabTrack.Rechecks.Tests.Linking;

public sealed class AlignmentsTests
{
    [Theory]
    [InlineData(1, 1, 2)]
    [InlineData(4, 3, 35)]
    [InlineData(6, 6, 924)] // Two rows of six: 12 over 6.
    [InlineData(7, 7, 3432)]
    public void There_are_as_many_alignments_as_ways_to_interleave_the_rows(int rows, int columns, int expected) =>
        Assert.Equal(expected, Alignments.All(rows, columns).Count());
}
