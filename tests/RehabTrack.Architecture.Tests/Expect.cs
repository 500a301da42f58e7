namespace RehabTrack.Architecture.Tests;

/// <summary>Says all that was found, each on a line.</summary>
internal static class Expect
{
    public static void None(IEnumerable<string> found)
    {
        string[] all = [.. found.Distinct(StringComparer.Ordinal)];
        Assert.True(all.Length == 0, string.Join('\n', all));
    }
}
