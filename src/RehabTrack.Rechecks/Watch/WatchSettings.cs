using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Watch;

/// <summary>From when on something stands; defaults and sources stand in <c>shared/watch.json</c>.</summary>
public sealed record WatchSettings
{
    private static readonly ReferenceTable Table = ReferenceTable.Load("watch");

    /// <summary>Too much work on one of so many days up to today stands, at least 1.</summary>
    public int OverBackDays { get; init; } = (int)Table["overBackDays"];

    /// <summary>So many minutes beyond a day's permit are too much, at least 1.</summary>
    public int OverMinutes { get; init; } = (int)Table["overMinutes"];

    /// <summary>So many % beyond a day's permitted minutes are too much, at least 0; both this and the minutes must be reached.</summary>
    public int OverPercent { get; init; } = (int)Table["overPercent"];

    /// <summary>Too much on so many days is red, at least 1.</summary>
    public int OverRedDays { get; init; } = (int)Table["overRedDays"];

    /// <summary>What only grows by waiting counts as worse after each so many days more, at least 1.</summary>
    public int WaitDays { get; init; } = (int)Table["waitDays"];
}
