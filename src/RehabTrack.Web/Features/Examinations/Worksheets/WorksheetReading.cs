using RehabTrack.Rechecks.Exams;
using RehabTrack.Records.Examinations;

namespace RehabTrack.Web.Features.Examinations.Worksheets;

/// <summary>What a worksheet says: the values that can be kept, and everything that is to be mended, at once.</summary>
public sealed record WorksheetReading
{
    /// <summary>The date of the visit; null when it cannot be read.</summary>
    public required DateOnly? Date { get; init; }

    /// <summary>The examination with every row that has no problem, for a preview; on the kept date while none can be read.</summary>
    public required Examination Examination { get; init; }

    /// <summary>What is to be kept: every row, with what of it could be read; a row marked not read holds its place only.</summary>
    public required ExaminationContent Content { get; init; }

    /// <summary>Problems above the grid.</summary>
    public required IReadOnlyList<HeaderProblem> HeaderProblems { get; init; }

    /// <summary>Problems in the grid, row by row.</summary>
    public required IReadOnlyList<CellProblem> CellProblems { get; init; }

    /// <summary>What is worth a second look and forbids nothing.</summary>
    public required IReadOnlyList<CellProblem> Cautions { get; init; }

    /// <summary>Whether nothing needs mending.</summary>
    public bool IsClean => HeaderProblems.Count == 0 && CellProblems.Count == 0;

    /// <summary>The problems of one cell.</summary>
    public IEnumerable<CellProblem> At(string rowKey, EntryColumn column) =>
        CellProblems.Where(problem => problem.RowKey == rowKey && problem.Column == column);
}
