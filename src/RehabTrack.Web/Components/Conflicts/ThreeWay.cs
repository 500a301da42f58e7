namespace RehabTrack.Web.Components.Conflicts;

/// <summary>One field that two people may have changed since both read it.</summary>
public static class ThreeWay
{
    /// <summary>What the field holds when both come together: what only one changed is taken, what both changed stays as typed here.</summary>
    /// <param name="before">What both started from.</param>
    /// <param name="mine">What was typed here.</param>
    /// <param name="theirs">What the other person saved.</param>
    /// <param name="differ">Told of both where both changed it, each to something else.</param>
    public static string Choose(string before, string mine, string theirs, Action<string, string> differ)
    {
        ArgumentNullException.ThrowIfNull(differ);
        if (mine == theirs || theirs == before)
        {
            return mine;
        }

        if (mine == before)
        {
            return theirs;
        }

        differ(mine, theirs);
        return mine;
    }
}
