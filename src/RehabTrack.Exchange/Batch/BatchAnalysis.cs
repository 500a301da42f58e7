using System.Buffers;
using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using RehabTrack.Exchange.Cases;
using RehabTrack.Exchange.Rows;
using RehabTrack.Exchange.Sheets;
using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Exchange.Batch;

/// <summary>
/// Analyses every case of a canonical sheet of any size in bounded memory: rows are read once and divided over files by case, each part
/// is assembled and analysed on its own, several at a time, and the pieces are merged in the order of the cases' labels. The output does
/// not depend on how many are at work. The clock is never read.
/// </summary>
public sealed class BatchAnalysis
{
    private static readonly JsonWriterOptions Written = new() { Indented = false, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };
    private const int RowsOfABatch = 512;
    private const long BytesAtOnce = 100_000_000;
    private static readonly IComparer<string> ByRow = Comparer<string>.Create((left, right) => RowOf(left).CompareTo(RowOf(right)));

    private readonly BatchOptions _options;
    private readonly List<string> _caseFiles = [];
    private readonly List<string> _rejectedFiles = [];
    private int _rows;
    private int _accepted;
    private int _rejected;
    private int _afterAsOf;
    private int _cases;
    private DateOnly? _latest;

    private BatchAnalysis(BatchOptions options) => _options = options;

    /// <summary>Analyses a file.</summary>
    /// <param name="input">A stream that can seek.</param>
    /// <param name="output">Takes the JSON; nothing is written when the outcome has a problem.</param>
    /// <param name="options">What to do.</param>
    /// <param name="cancellation">Stops it.</param>
    public static BatchOutcome Run(Stream input, Stream output, BatchOptions options, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(input);
        ArgumentNullException.ThrowIfNull(output);
        ArgumentNullException.ThrowIfNull(options);
        return new BatchAnalysis(options).Run(input, output, cancellation);
    }

    private BatchOutcome Run(Stream input, Stream output, CancellationToken cancellation)
    {
        SheetInspection inspection = SheetProbe.Inspect(input);
        if (inspection.Format is not { } format)
        {
            return new BatchOutcome { FileProblem = inspection.Problem };
        }

        if (SheetImport.ReadShape(input, format, out Problem? broken) is not { } shape)
        {
            return new BatchOutcome { FileProblem = broken ?? new Problem("", "file-empty") };
        }

        CanonicalHeadings headings = CanonicalHeadings.Read(shape.Headings);
        if (headings.Plan is not { } plan)
        {
            return new BatchOutcome
            {
                FileProblem = headings.Problem ?? new Problem("", "file-other-shape", string.Join(", ", headings.Missing)),
            };
        }

        using RowSpill spill = new(_options.SpillFolder, inspection.Bytes);
        if (Divide(input, format, shape, plan, spill, cancellation) is { } unreadable)
        {
            return new BatchOutcome { FileProblem = unreadable };
        }

        DateOnly? asOf = _options.AsOf ?? _latest;
        foreach (
            PartOutcome part in InOrder.Select(
                Enumerable.Range(0, spill.Parts),
                (int)Math.Clamp(BytesAtOnce * spill.Parts / Math.Max(1, inspection.Bytes), 1, AtOnce),
                part => AnalysePart(spill, part, asOf ?? default, cancellation)
            )
        )
        {
            _cases += part.Cases;
            _accepted += part.Accepted;
            _rejected += part.Rejected;
            _caseFiles.Add(part.CaseFile);
            _rejectedFiles.Add(part.RejectedFile);
        }

        WriteOutput(output, asOf, cancellation);
        return new BatchOutcome
        {
            Cautions = [.. inspection.Cautions, .. headings.Unknown.Select(heading => new Problem("", "column-not-read", heading))],
            Rows = _rows,
            Accepted = _accepted,
            Rejected = _rejected,
            AfterAsOf = _afterAsOf,
            Cases = _cases,
            AsOf = asOf,
        };
    }

    // One more than compute, so that the next piece is at hand when one is done.
    private int AtOnce => Math.Clamp(_options.Degree, 1, 64) + 1;

    /// <summary>First pass: what is wrong with a row by itself, the latest date, and the right rows to their parts.</summary>
    private Problem? Divide(
        Stream input,
        SheetFormat format,
        SheetShape shape,
        RowPlan plan,
        RowSpill spill,
        CancellationToken cancellation
    )
    {
        using SheetRecordReader reader = SheetRecordReader.Open(input, format);
        string path = PathOf("rejected");
        _rejectedFiles.Add(path);
        using BinaryWriter rejectedFile = FragmentFile.Create(path);
        foreach (
            (List<SheetRow> rows, List<RejectedRow> rejected) in InOrder.Select(
                Batches(reader, shape.HeadingRow, cancellation),
                AtOnce,
                batch => Parse(batch, plan)
            )
        )
        {
            _rejected += WriteRejected(rejectedFile, rejected);
            foreach (SheetRow row in rows)
            {
                if (row.Date > _options.AsOf)
                {
                    _afterAsOf++;
                }
                else
                {
                    _latest = row.Date > _latest || _latest is null ? row.Date : _latest;
                    spill.Add(row);
                }
            }
        }

        spill.Close();
        return reader.Problem;
    }

    private IEnumerable<List<SheetRecord>> Batches(SheetRecordReader reader, int headingRow, CancellationToken cancellation)
    {
        List<SheetRecord> batch = new(RowsOfABatch);
        while (reader.Read())
        {
            if (reader.Record.Row <= headingRow)
            {
                continue;
            }

            _rows++;
            batch.Add(reader.Record);
            if (batch.Count == RowsOfABatch)
            {
                cancellation.ThrowIfCancellationRequested();
                yield return batch;
                batch = new List<SheetRecord>(RowsOfABatch);
            }
        }

        yield return batch;
    }

    private static (List<SheetRow> Rows, List<RejectedRow> Rejected) Parse(List<SheetRecord> batch, RowPlan plan)
    {
        List<SheetRow> rows = new(batch.Count);
        List<RejectedRow> rejected = [];
        RowParser parser = new(null, rejected, []);
        foreach (SheetRecord record in batch)
        {
            if (parser.Parse(record, plan) is { } row)
            {
                rows.Add(row);
            }
        }

        return (rows, rejected);
    }

    /// <summary>Second pass over a part: rows to cases, cases to analyses, in the order of their labels.</summary>
    private PartOutcome AnalysePart(RowSpill spill, int part, DateOnly asOf, CancellationToken cancellation)
    {
        PartOutcome outcome = new()
        {
            CaseFile = PathOf(string.Create(CultureInfo.InvariantCulture, $"cases-{part}")),
            RejectedFile = PathOf(string.Create(CultureInfo.InvariantCulture, $"rejected-{part}")),
        };
        Dictionary<string, CaseRows> byLabel = ReadPart(spill, part);
        List<RejectedRow> rejected = [];
        ArrayBufferWriter<byte> buffer = new(64 * 1024);
        using Utf8JsonWriter json = new(buffer, Written);
        using BinaryWriter caseFile = FragmentFile.Create(outcome.CaseFile);
        foreach (string label in byLabel.Keys.Order(StringComparer.Ordinal))
        {
            cancellation.ThrowIfCancellationRequested();
            CaseAssembly assembly = byLabel[label].Assemble(label);
            rejected.AddRange(assembly.Rejected);
            if (assembly.Case is { } file)
            {
                CaseAnalysis analysis = CaseAnalyser.Analyse(file.Course, [], _options.Settings, asOf);
                buffer.ResetWrittenCount();
                json.Reset();
                AnalysisJson.WriteCase(json, file, analysis, _options.Words);
                json.Flush();
                FragmentFile.Write(caseFile, file.Label, buffer.WrittenSpan);
                outcome.Cases++;
                outcome.Accepted += file.Course.Examinations.Sum(examination => examination.Readings.Count);
            }
        }

        using BinaryWriter rejectedFile = FragmentFile.Create(outcome.RejectedFile);
        outcome.Rejected = WriteRejected(rejectedFile, rejected.OrderBy(row => row.Row));
        spill.Delete(part);
        return outcome;
    }

    private static Dictionary<string, CaseRows> ReadPart(RowSpill spill, int part)
    {
        RowPlan plan = new(
            SheetColumns.All.ToDictionary(
                column => column,
                column => new ColumnSource { Cell = SheetColumns.IndexOf(column) },
                StringComparer.Ordinal
            )
        );
        Dictionary<string, CaseRows> byLabel = new(StringComparer.Ordinal);
        foreach (SheetRow row in spill.Read(part, plan))
        {
            if (!byLabel.TryGetValue(row.Case, out CaseRows? rows))
            {
                byLabel.Add(row.Case, rows = new CaseRows());
            }

            rows.Add(row);
        }

        return byLabel;
    }

    private string PathOf(string name) => Path.Combine(_options.SpillFolder, name);

    /// <summary>Writes problems ordered by row, and tells of how many rows they speak.</summary>
    private int WriteRejected(BinaryWriter file, IEnumerable<RejectedRow> rejected)
    {
        int rows = 0;
        int last = 0;
        ArrayBufferWriter<byte> buffer = new(512);
        foreach (RejectedRow row in rejected)
        {
            rows += row.Row == last ? 0 : 1;
            last = row.Row;
            buffer.ResetWrittenCount();
            using (Utf8JsonWriter json = new(buffer, Written))
            {
                json.WriteStartObject();
                json.WriteNumber("row", row.Row);
                json.WriteString("column", row.Column.Length == 0 ? null : row.Column);
                json.WriteString("value", row.Value);
                json.WriteString("reason", _options.Words.OfProblem(row.Problem));
                json.WriteString("code", row.Problem.Code);
                json.WriteEndObject();
            }

            FragmentFile.Write(file, row.Row.ToString(CultureInfo.InvariantCulture), buffer.WrittenSpan);
        }

        return rows;
    }

    private void WriteOutput(Stream output, DateOnly? asOf, CancellationToken cancellation)
    {
        using Utf8JsonWriter json = new(output, Written);
        json.WriteStartObject();
        json.WriteNumber("schemaVersion", AnalysisJson.SchemaVersion);
        json.WriteString("engineVersion", CaseAnalyser.EngineVersion);
        json.WriteString("asOf", asOf?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
        WriteSettings(json);
        json.WriteStartObject("counts");
        json.WriteNumber("rows", _rows);
        json.WriteNumber("rowsAccepted", _accepted);
        json.WriteNumber("rowsRejected", _rejected);
        json.WriteNumber("rowsAfterAsOf", _afterAsOf);
        json.WriteNumber("cases", _cases);
        json.WriteEndObject();
        WriteArray(json, "cases", FragmentFile.Merge(_caseFiles, StringComparer.Ordinal), cancellation);
        WriteArray(json, "rejected", FragmentFile.Merge(_rejectedFiles, ByRow), cancellation);
        json.WriteEndObject();
    }

    private void WriteSettings(Utf8JsonWriter json)
    {
        json.WriteStartObject("settings");
        foreach (
            IGrouping<string, string> group in SettingRanges
                .All.Select(range => range.Name)
                .GroupBy(name => name.Split('.')[0], StringComparer.Ordinal)
        )
        {
            json.WriteStartObject(group.Key);
            foreach (string name in group)
            {
                json.WriteNumber(name.Split('.')[1], SettingRanges.ValueOf(_options.Settings, name));
            }

            json.WriteEndObject();
        }

        json.WriteEndObject();
    }

    private static void WriteArray(
        Utf8JsonWriter json,
        string name,
        IEnumerable<ReadOnlyMemory<byte>> pieces,
        CancellationToken cancellation
    )
    {
        json.WriteStartArray(name);
        foreach (ReadOnlyMemory<byte> piece in pieces)
        {
            cancellation.ThrowIfCancellationRequested();
            json.WriteRawValue(piece.Span, skipInputValidation: true);
            if (json.BytesPending > 64 * 1024)
            {
                json.Flush();
            }
        }

        json.WriteEndArray();
    }

    private static int RowOf(string key) => int.Parse(key, NumberStyles.None, CultureInfo.InvariantCulture);

    /// <summary>What became of a part.</summary>
    private sealed class PartOutcome
    {
        public required string CaseFile { get; init; }

        public required string RejectedFile { get; init; }

        public int Cases { get; set; }

        public int Accepted { get; set; }

        public int Rejected { get; set; }
    }

    /// <summary>The rows of a case; of a case beyond the limit only what its refusal needs.</summary>
    private sealed class CaseRows
    {
        private readonly List<SheetRow> _rows = [];
        private List<int>? _tooMany;

        public void Add(SheetRow row)
        {
            if (_tooMany is not null)
            {
                _tooMany.Add(row.Row);
            }
            else if (_rows.Count < CaseAssembler.LargestCaseReadings)
            {
                _rows.Add(row);
            }
            else
            {
                _tooMany = [.. _rows.Select(kept => kept.Row), row.Row];
                _rows.Clear();
            }
        }

        public CaseAssembly Assemble(string label) =>
            _tooMany is null ? CaseAssembler.Assemble(_rows) : CaseAssembler.Refuse(label, _tooMany);
    }
}
