namespace RehabTrack.Web.Components.Conflicts;

/// <summary>One field that two people may have changed since both read it.</summary>
public static class ThreeWay
{
    /// <summary>What the field holds when both come together: what only one changed is taken, what both changed stays as typed here.</summary>
    /// <param name="before">What both started from.</param>
    /// <param name="mine">What was typed here.</param>
    /// <param name="theirs">What the other person saved.</param>
    /// <param name="differ">Told of both where both changed it, each to something else.</param>
    /// <param name="alike">Tells whether two values are the same; null takes the usual way.</param>
    public static T Choose<T>(T before, T mine, T theirs, Action<T, T> differ, IEqualityComparer<T>? alike = null)
    {
        ArgumentNullException.ThrowIfNull(differ);
        IEqualityComparer<T> same = alike ?? EqualityComparer<T>.Default;
        if (same.Equals(mine, theirs) || same.Equals(theirs, before))
        {
            return mine;
        }

        if (same.Equals(mine, before))
        {
            return theirs;
        }

        differ(mine, theirs);
        return mine;
    }
}
