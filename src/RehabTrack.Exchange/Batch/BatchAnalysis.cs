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
/// Analyses every case of a canonical sheet of any size in bounded memory: rows are divided over files by case, each part is assembled
/// and analysed on its own, and the pieces are merged in the order of the cases' labels. The clock is never read.
/// </summary>
public sealed class BatchAnalysis
{
    private static readonly JsonWriterOptions Written = new() { Indented = false, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };
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
        for (int part = 0; part < spill.Parts; part++)
        {
            AnalysePart(spill, part, asOf ?? default, cancellation);
            spill.Delete(part);
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
        List<RejectedRow> rejected = [];
        List<SheetCaution> cautions = [];
        RowParser parser = new(null, rejected, cautions);
        using SheetRecordReader reader = SheetRecordReader.Open(input, format);
        using BinaryWriter rejectedFile = OpenRejected();
        while (reader.Read())
        {
            cancellation.ThrowIfCancellationRequested();
            if (reader.Record.Row <= shape.HeadingRow)
            {
                continue;
            }

            _rows++;
            SheetRow? row = parser.Parse(reader.Record, plan);
            cautions.Clear();
            if (row is null)
            {
                WriteRejected(rejectedFile, rejected);
                rejected.Clear();
            }
            else if (row.Date > _options.AsOf)
            {
                _afterAsOf++;
            }
            else
            {
                _latest = row.Date > _latest || _latest is null ? row.Date : _latest;
                spill.Add(reader.Record, plan, row.Case);
            }
        }

        spill.Close();
        return reader.Problem;
    }

    /// <summary>Second pass over a part: rows to cases, cases to analyses, in the order of their labels.</summary>
    private void AnalysePart(RowSpill spill, int part, DateOnly asOf, CancellationToken cancellation)
    {
        Dictionary<string, CaseRows> byLabel = ReadPart(spill, part);
        string path = Path.Combine(_options.SpillFolder, string.Create(CultureInfo.InvariantCulture, $"cases-{part}"));
        using BinaryWriter caseFile = FragmentFile.Create(path);
        _caseFiles.Add(path);
        List<RejectedRow> rejected = [];
        IEnumerable<(CaseAssembly Assembly, byte[]? Json)> analysed = byLabel
            .OrderBy(pair => pair.Key, StringComparer.Ordinal)
            .AsParallel()
            .AsOrdered()
            .WithDegreeOfParallelism(Math.Clamp(_options.Degree, 1, 64))
            .WithCancellation(cancellation)
            .Select(pair => AnalyseCase(pair.Key, pair.Value, asOf));
        foreach ((CaseAssembly assembly, byte[]? json) in analysed)
        {
            rejected.AddRange(assembly.Rejected);
            if (assembly.Case is { } file && json is not null)
            {
                _cases++;
                _accepted += file.Course.Examinations.Sum(examination => examination.Readings.Count);
                FragmentFile.Write(caseFile, file.Label, json);
            }
        }

        using BinaryWriter rejectedFile = OpenRejected();
        WriteRejected(rejectedFile, rejected.OrderBy(row => row.Row));
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
        RowParser parser = new(null, [], []);
        Dictionary<string, CaseRows> byLabel = new(StringComparer.Ordinal);
        foreach (SheetRecord record in spill.Read(part))
        {
            SheetRow row =
                parser.Parse(record, plan) ?? throw new InvalidOperationException("A row that was right is wrong on the second reading.");
            if (!byLabel.TryGetValue(row.Case, out CaseRows? rows))
            {
                byLabel.Add(row.Case, rows = new CaseRows());
            }

            rows.Add(row);
        }

        return byLabel;
    }

    private (CaseAssembly Assembly, byte[]? Json) AnalyseCase(string label, CaseRows rows, DateOnly asOf)
    {
        CaseAssembly assembly = rows.Assemble(label);
        if (assembly.Case is not { } file)
        {
            return (assembly, null);
        }

        CaseAnalysis analysis = CaseAnalyser.Analyse(file.Course, [], _options.Settings, asOf);
        ArrayBufferWriter<byte> buffer = new(8 * 1024);
        using (Utf8JsonWriter json = new(buffer, Written))
        {
            AnalysisJson.WriteCase(json, file, analysis, _options.Words);
        }

        return (assembly, buffer.WrittenSpan.ToArray());
    }

    private BinaryWriter OpenRejected()
    {
        string path = Path.Combine(_options.SpillFolder, string.Create(CultureInfo.InvariantCulture, $"rejected-{_rejectedFiles.Count}"));
        _rejectedFiles.Add(path);
        return FragmentFile.Create(path);
    }

    private void WriteRejected(BinaryWriter file, IEnumerable<RejectedRow> rejected)
    {
        int last = 0;
        ArrayBufferWriter<byte> buffer = new(512);
        foreach (RejectedRow row in rejected)
        {
            _rejected += row.Row == last ? 0 : 1;
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
        foreach (IGrouping<string, string> group in SettingsFile.Names.GroupBy(name => name.Split('.')[0], StringComparer.Ordinal))
        {
            json.WriteStartObject(group.Key);
            foreach (string name in group)
            {
                json.WriteNumber(name.Split('.')[1], SettingsFile.ValueOf(_options.Settings, name));
            }

            json.WriteEndObject();
        }

        json.WriteEndObject();
    }

    private static void WriteArray(Utf8JsonWriter json, string name, IEnumerable<byte[]> pieces, CancellationToken cancellation)
    {
        json.WriteStartArray(name);
        foreach (byte[] piece in pieces)
        {
            cancellation.ThrowIfCancellationRequested();
            json.WriteRawValue(piece, skipInputValidation: true);
            if (json.BytesPending > 64 * 1024)
            {
                json.Flush();
            }
        }

        json.WriteEndArray();
    }

    private static int RowOf(string key) => int.Parse(key, NumberStyles.None, CultureInfo.InvariantCulture);

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
