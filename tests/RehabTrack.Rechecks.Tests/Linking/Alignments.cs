namespace RehabTrack.Rechecks.Tests.Linking;

/// <summary>Every order-preserving alignment of two rows of levels, written out: 924 of them at 6 × 6.</summary>
internal static class Alignments
{
    /// <summary>Each alignment as partners: for each row the column, or −1.</summary>
    public static IEnumerable<int[]> All(int rows, int columns) => From(new int[rows], 0, 0, columns);

    private static IEnumerable<int[]> From(int[] partners, int row, int column, int columns)
    {
        if (row == partners.Length)
        {
            yield return [.. partners];
            yield break;
        }

        partners[row] = -1;
        foreach (int[] alignment in From(partners, row + 1, column, columns))
        {
            yield return alignment;
        }

        for (int partner = column; partner < columns; partner++)
        {
            partners[row] = partner;
            foreach (int[] alignment in From(partners, row + 1, partner + 1, columns))
            {
                yield return alignment;
            }
        }
    }
}
