using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Exchange.Batch;

/// <summary>What became of a file.</summary>
public sealed record BatchOutcome
{
    /// <summary>Why it cannot be read as such; null when it was read.</summary>
    public Problem? FileProblem { get; init; }

    /// <summary>What is worth knowing of the file as a whole.</summary>
    public IReadOnlyList<Problem> Cautions { get; init; } = [];

    /// <summary>Rows below the headings that hold anything.</summary>
    public int Rows { get; init; }

    /// <summary>Rows that were analysed.</summary>
    public int Accepted { get; init; }

    /// <summary>Rows that could not be taken.</summary>
    public int Rejected { get; init; }

    /// <summary>Right rows that lie after the date it speaks for.</summary>
    public int AfterAsOf { get; init; }

    /// <summary>Cases that were analysed.</summary>
    public int Cases { get; init; }

    /// <summary>The date it speaks for; null when no row could be taken.</summary>
    public DateOnly? AsOf { get; init; }
}
