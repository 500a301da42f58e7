using RehabTrack.Rechecks.Analysis;

namespace RehabTrack.Exchange.Batch;

/// <summary>What a batch analysis is to do.</summary>
public sealed record BatchOptions
{
    /// <summary>Error model, linker and thresholds.</summary>
    public AnalysisSettings Settings { get; init; } = new();

    /// <summary>The date it speaks for: later rows are not read. Null takes the latest date of the file.</summary>
    public DateOnly? AsOf { get; init; }

    /// <summary>An empty folder for what does not fit in memory; the caller removes it.</summary>
    public required string SpillFolder { get; init; }

    /// <summary>The words of the output.</summary>
    public required BatchWords Words { get; init; }

    /// <summary>How many cases are computed at once.</summary>
    public int Degree { get; init; } = Environment.ProcessorCount;
}
