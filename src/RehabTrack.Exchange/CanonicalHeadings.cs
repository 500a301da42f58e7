using RehabTrack.Exchange.Rows;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Exchange;

/// <summary>What the headings of a sheet say when they are read as the canonical ones.</summary>
/// <param name="Plan">How rows are read; null when <see cref="Missing"/> or <see cref="Problem"/> says why not.</param>
/// <param name="Missing">Required columns that are not there; the measurements stand as one, joined by a bar.</param>
/// <param name="Problem">A heading that stands twice; null for none.</param>
/// <param name="Unknown">Headings that are not read.</param>
public sealed record CanonicalHeadings(RowPlan? Plan, IReadOnlyList<string> Missing, Problem? Problem, IReadOnlyList<string> Unknown)
{
    /// <summary>Reads headings.</summary>
    /// <param name="headings">The headings as they stand in the file.</param>
    public static CanonicalHeadings Read(IReadOnlyList<string> headings)
    {
        ArgumentNullException.ThrowIfNull(headings);
        Dictionary<string, ColumnSource> sources = new(StringComparer.Ordinal);
        List<string> unknown = [];
        Problem? twice = null;
        for (int index = 0; index < headings.Count; index++)
        {
            if (SheetColumns.Find(headings[index]) is not { } column)
            {
                if (headings[index].Length > 0)
                {
                    unknown.Add(headings[index]);
                }
            }
            else if (!sources.TryAdd(column, new ColumnSource { Cell = index }))
            {
                twice ??= new Problem(column, "heading-twice", column);
            }
        }

        List<string> missing = [.. SheetColumns.MissingFrom(sources.ContainsKey)];
        if (!SheetColumns.Measurements.Any(sources.ContainsKey))
        {
            missing.Add(string.Join(" | ", SheetColumns.Measurements));
        }

        bool usable = missing.Count == 0 && twice is null;
        return new CanonicalHeadings(
            usable ? new RowPlan(sources, headings.Count) : null,
            missing,
            missing.Count == 0 ? twice : null,
            unknown
        );
    }
}
