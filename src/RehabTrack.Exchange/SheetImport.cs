using System.Globalization;
using RehabTrack.Exchange.Cases;
using RehabTrack.Exchange.Mapping;
using RehabTrack.Exchange.Rows;
using RehabTrack.Exchange.Sheets;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Exchange;

/// <summary>Reads a sheet into cases. Whatever stands in the file, it answers with values and never throws over content.</summary>
public static class SheetImport
{
    /// <summary>The most messages of a kind that a result lists; beyond, the count goes on.</summary>
    public const int MostMessages = 10_000;

    private const int SampleRows = 12;
    private const int ReportEvery = 500;
    private static readonly long LargestBytes = (long)ReferenceTable.Load("limits")["largestImportMegabytes"] * 1_000_000;

    /// <summary>Reads a file.</summary>
    /// <param name="stream">A stream that can seek; read from its start and left open.</param>
    /// <param name="today">The practice's date: later dates are refused. Null lets every date pass.</param>
    /// <param name="mapping">What the headings mean; null reads them as the canonical ones.</param>
    /// <param name="progress">Told the number of rows read so far.</param>
    /// <param name="cancellation">Stops reading.</param>
    public static SheetResult Read(
        Stream stream,
        DateOnly? today,
        SheetMapping? mapping = null,
        IProgress<int>? progress = null,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(stream);
        if (stream.Length > LargestBytes)
        {
            return Failed(new Problem("", "file-too-large", Megabytes(stream.Length), Megabytes(LargestBytes)));
        }

        SheetInspection inspection = SheetProbe.Inspect(stream);
        if (inspection.Format is not { } format)
        {
            return Failed(inspection.Problem!);
        }

        SheetShape? shape = ReadShape(stream, format, out Problem? broken);
        if (shape is null)
        {
            return Failed(broken ?? new Problem("", "file-empty"));
        }

        List<SheetCaution> cautions = [.. inspection.Cautions.Select(caution => new SheetCaution(0, "", "", caution))];
        IReadOnlyList<RowPlan> rowPlans;
        if (mapping is not null)
        {
            if (MappingRules.Check(mapping, shape) is { Count: > 0 } problems)
            {
                return new SheetResult
                {
                    Shape = shape,
                    NeedsMapping = true,
                    MappingProblems = problems,
                    Cautions = cautions,
                };
            }

            rowPlans = MappingRules.Plans(mapping, shape);
        }
        else
        {
            CanonicalHeadings headings = CanonicalHeadings.Read(shape.Headings);
            if (headings.Problem is { } twice)
            {
                return Failed(twice) with { Shape = shape };
            }

            if (headings.Plan is not { } plan)
            {
                return new SheetResult
                {
                    Shape = shape,
                    NeedsMapping = true,
                    MissingColumns = headings.Missing,
                    Cautions = cautions,
                };
            }

            cautions.AddRange(
                headings.Unknown.Select(heading => new SheetCaution(
                    shape.HeadingRow,
                    heading,
                    "",
                    new Problem("", "column-not-read", heading)
                ))
            );
            rowPlans = [plan];
        }

        return ReadRows(stream, format, shape, rowPlans, new RowContext(today, progress, cancellation), cautions);
    }

    /// <summary>The headings and first rows of a file; null with a problem when it has none.</summary>
    /// <param name="stream">A stream that can seek.</param>
    /// <param name="format">As the probe found it.</param>
    /// <param name="problem">Why there are none, when the file is broken.</param>
    public static SheetShape? ReadShape(Stream stream, SheetFormat format, out Problem? problem)
    {
        using SheetRecordReader reader = SheetRecordReader.Open(stream, format);
        if (!reader.Read())
        {
            problem = reader.Problem;
            return null;
        }

        SheetRecord headings = reader.Record;
        List<SheetRecord> samples = [];
        while (samples.Count < SampleRows && reader.Read())
        {
            samples.Add(reader.Record);
        }

        // A quote that is not closed further down is told when the rows are read, with the rows before it.
        problem = null;
        string[] trimmed = [.. headings.Cells.Select(cell => cell.Trim().TrimStart('\uFEFF'))];
        int filled = Array.FindLastIndex(trimmed, cell => cell.Length > 0) + 1;
        return new SheetShape(headings.Row, trimmed[..filled], samples);
    }

    private static SheetResult ReadRows(
        Stream stream,
        SheetFormat format,
        SheetShape shape,
        IReadOnlyList<RowPlan> plans,
        RowContext context,
        List<SheetCaution> cautions
    )
    {
        List<RejectedRow> rejected = [];
        List<SheetRow> rows = [];
        RejectedCount count = new();
        int read = 0;
        using SheetRecordReader reader = SheetRecordReader.Open(stream, format);
        RowParser parser = new(context.Today, rejected, cautions);
        while (reader.Read())
        {
            if (reader.Record.Row <= shape.HeadingRow)
            {
                continue;
            }

            context.Cancellation.ThrowIfCancellationRequested();
            int before = rejected.Count;
            foreach (RowPlan plan in plans)
            {
                if (parser.Parse(reader.Record, plan) is { } row)
                {
                    rows.Add(row);
                }
            }

            TellOnce(rejected, before);

            count.Trim(rejected);
            if (cautions.Count > MostMessages)
            {
                cautions.RemoveRange(MostMessages, cautions.Count - MostMessages);
            }

            read++;
            if (read % ReportEvery == 0)
            {
                context.Progress?.Report(read);
            }
        }

        if (reader.Problem is { } broken)
        {
            return Failed(broken) with { Shape = shape };
        }

        List<CaseFile> cases = [];
        Dictionary<string, int> rowOfReading = new(StringComparer.Ordinal);
        foreach (
            IGrouping<string, SheetRow> group in rows.GroupBy(row => row.Case, StringComparer.Ordinal)
                .OrderBy(group => group.Key, StringComparer.Ordinal)
        )
        {
            CaseAssembly assembly = CaseAssembler.Assemble([.. group]);
            count.Add(assembly.Rejected);
            rejected.AddRange(assembly.Rejected);
            cautions.AddRange(assembly.Cautions);
            if (assembly.Case is { } file)
            {
                cases.Add(file);
                foreach (Reading reading in file.Course.Examinations.SelectMany(examination => examination.Readings))
                {
                    rowOfReading.Add(reading.Id, int.Parse(reading.Id.Split(':')[0], CultureInfo.InvariantCulture));
                }
            }
        }

        context.Progress?.Report(read);
        return new SheetResult
        {
            Shape = shape,
            Cases = cases,
            RowOfReading = rowOfReading,
            Rejected = [.. rejected.OrderBy(row => row.Row).Take(MostMessages)],
            RejectedRows = count.Rows,
            Cautions = [.. cautions.OrderBy(caution => caution.Row).Take(MostMessages)],
            Rows = read,
        };
    }

    /// <summary>A wrong cell that all groups of a row share is told once.</summary>
    private static void TellOnce(List<RejectedRow> rejected, int from)
    {
        if (rejected.Count - from > 1)
        {
            RejectedRow[] once = [.. rejected.Skip(from).DistinctBy(row => (row.Column, row.Value, row.Problem.Code))];
            rejected.RemoveRange(from, rejected.Count - from);
            rejected.AddRange(once);
        }
    }

    private static SheetResult Failed(Problem problem) => new() { FileProblem = problem };

    private static string Megabytes(long bytes) => (bytes / 1e6).ToString("0.#", CultureInfo.InvariantCulture);

    private sealed record RowContext(DateOnly? Today, IProgress<int>? Progress, CancellationToken Cancellation);

    /// <summary>Counts the rows with problems while the list of messages stays short.</summary>
    private sealed class RejectedCount
    {
        private int _counted;
        private int _lastRow;

        public int Rows { get; private set; }

        public void Trim(List<RejectedRow> rejected)
        {
            for (int index = _counted; index < rejected.Count; index++)
            {
                if (rejected[index].Row != _lastRow)
                {
                    Rows++;
                    _lastRow = rejected[index].Row;
                }
            }

            if (rejected.Count > MostMessages)
            {
                rejected.RemoveRange(MostMessages, rejected.Count - MostMessages);
            }

            _counted = rejected.Count;
        }

        public void Add(IReadOnlyList<RejectedRow> rejected) => Rows += rejected.Select(row => row.Row).Distinct().Count();
    }
}
