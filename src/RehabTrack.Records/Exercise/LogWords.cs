using RehabTrack.Rechecks.Exercise;

namespace RehabTrack.Records.Exercise;

/// <summary>What stands beside a day's log or a concern in words, and what the person was shown.</summary>
public sealed record LogWords
{
    /// <summary>What was seen or happened, in the person's words.</summary>
    public string? Words { get; init; }

    /// <summary>Who handled or rode the horse.</summary>
    public string? Handler { get; init; }

    /// <summary>Cold therapy, bandage, medicines, in words.</summary>
    public string? Care { get; init; }

    /// <summary>What was permitted on the logged day, as it was known on that day; null for a concern.</summary>
    public Work? Permitted { get; init; }
}
