namespace RehabTrack.Reports.Paper;

/// <summary>How columns share the width of a page.</summary>
internal static class PaperColumns
{
    /// <summary>
    /// Each has what its widest line needs where that fits; else what its widest word needs, and of the rest in proportion to what it lacks;
    /// where not even the words fit, all are cut in proportion.
    /// </summary>
    /// <param name="wanted">The widest line and the widest word of each, in points.</param>
    /// <param name="room">The width for all, in points.</param>
    public static double[] Share(IReadOnlyList<(double Line, double Word)> wanted, double room)
    {
        double lines = wanted.Sum(one => one.Line);
        double words = wanted.Sum(one => one.Word);
        if (lines <= 0)
        {
            return [.. wanted.Select(_ => room / wanted.Count)];
        }

        if (lines <= room)
        {
            return [.. wanted.Select(one => one.Line + ((room - lines) * one.Line / lines))];
        }

        return words >= room
            ? [.. wanted.Select(one => room * one.Word / words)]
            : [.. wanted.Select(one => one.Word + ((room - words) * (one.Line - one.Word) / (lines - words)))];
    }
}
