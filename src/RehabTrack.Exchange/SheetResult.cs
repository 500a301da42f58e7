using RehabTrack.Exchange.Rows;
using RehabTrack.Exchange.Sheets;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Exchange;

/// <summary>What a sheet holds, and what is wrong with it.</summary>
public sealed record SheetResult
{
    /// <summary>Why the file cannot be read as a sheet at all; null when it can.</summary>
    public Problem? FileProblem { get; init; }

    /// <summary>The headings and first rows; null when there are none.</summary>
    public SheetShape? Shape { get; init; }

    /// <summary>Whether the headings are not those of the canonical sheet and a mapping must say what they mean.</summary>
    public bool NeedsMapping { get; init; }

    /// <summary>What the canonical sheet needs and these headings do not name; for the message beside the mapping.</summary>
    public IReadOnlyList<string> MissingColumns { get; init; } = [];

    /// <summary>Why the mapping that was given cannot be used; empty when none was given.</summary>
    public IReadOnlyList<Problem> MappingProblems { get; init; } = [];

    /// <summary>The cases, ordered by label.</summary>
    public IReadOnlyList<CaseFile> Cases { get; init; } = [];

    /// <summary>The line of the file of each reading, by the reading's id.</summary>
    public IReadOnlyDictionary<string, int> RowOfReading { get; init; } = new Dictionary<string, int>(StringComparer.Ordinal);

    /// <summary>What could not be taken, in the order of the file; at most <see cref="SheetImport.MostMessages"/>.</summary>
    public IReadOnlyList<RejectedRow> Rejected { get; init; } = [];

    /// <summary>How many rows could not be taken, also beyond those listed.</summary>
    public int RejectedRows { get; init; }

    /// <summary>What is worth a second look, in the order of the file; at most <see cref="SheetImport.MostMessages"/>.</summary>
    public IReadOnlyList<SheetCaution> Cautions { get; init; } = [];

    /// <summary>How many rows below the headings hold anything.</summary>
    public int Rows { get; init; }
}
