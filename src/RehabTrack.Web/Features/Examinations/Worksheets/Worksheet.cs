using System.Globalization;
using System.Text.Json;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Examinations;

namespace RehabTrack.Web.Features.Examinations.Worksheets;

/// <summary>Everything typed for one examination, as it was typed: the fields above the grid and the grid.</summary>
public sealed record Worksheet
{
    private static readonly JsonSerializerOptions Options = new(JsonSerializerDefaults.Web);

    /// <summary>The fields above the grid; a field that is not there is blank.</summary>
    public IReadOnlyDictionary<HeaderField, string> Header { get; init; } = new Dictionary<HeaderField, string>();

    /// <summary>The grid.</summary>
    public EntryGrid Grid { get; init; } = EntryGrid.Empty;

    /// <summary>The text of a field above the grid.</summary>
    public string this[HeaderField field] => Header.GetValueOrDefault(field, string.Empty);

    /// <summary>The worksheet with another text in one field.</summary>
    public Worksheet With(HeaderField field, string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return this with { Header = new Dictionary<HeaderField, string>(Header) { [field] = text.Trim() } };
    }

    /// <summary>The worksheet with another grid.</summary>
    public Worksheet With(EntryGrid grid) => this with { Grid = grid };

    /// <summary>The worksheet of an examination as kept, when it was not typed here or counts already.</summary>
    /// <param name="content">What is kept.</param>
    /// <param name="draft">Whether it is a draft.</param>
    /// <param name="echogenicity">The scale that grades are given on; that of the grades kept goes first.</param>
    /// <param name="newKey">Makes the key of a row.</param>
    public static Worksheet Of(ExaminationContent content, bool draft, GradeScale echogenicity, Func<string> newKey)
    {
        ArgumentNullException.ThrowIfNull(content);
        ArgumentNullException.ThrowIfNull(echogenicity);
        string[] measurers = [.. content.Readings.Select(row => row.Values.Measurer ?? string.Empty).Distinct(StringComparer.Ordinal)];
        GradeScale scale =
            content.Readings.FirstOrDefault(row => row.Values.EchogenicityGrade is not null)?.Values.EchogenicityScale ?? echogenicity;
        return new Worksheet
        {
            Header = new Dictionary<HeaderField, string>
            {
                [HeaderField.Date] = content.Date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
                [HeaderField.Name] = content.Name ?? string.Empty,
                [HeaderField.Stance] = content.Stance.ToString(),
                [HeaderField.Examiner] = content.Examiner ?? string.Empty,
                // Several measurers stay as they are, row by row.
                [HeaderField.Measurer] = measurers is [var only] ? only : string.Empty,
                [HeaderField.Transducer] = content.Transducer ?? string.Empty,
                [HeaderField.Standoff] = HeaderAnswers.Of(content.Standoff),
                [HeaderField.Coupling] = content.Coupling?.ToString() ?? string.Empty,
                [HeaderField.Clipped] = HeaderAnswers.Of(content.Clipped),
                [HeaderField.EchogenicityScale] = scale.Id,
                [HeaderField.Landmark] = content.Landmark?.ToString() ?? string.Empty,
                [HeaderField.Zones] = content.Zones?.ToString() ?? string.Empty,
                [HeaderField.Origin] = LevelOf(content, FixedPointKind.Origin),
                [HeaderField.Division] = LevelOf(content, FixedPointKind.Division),
                [HeaderField.MedialInsertion] = LevelOf(content, FixedPointKind.MedialInsertion),
                [HeaderField.LateralInsertion] = LevelOf(content, FixedPointKind.LateralInsertion),
            },
            Grid = EntryGrid.Of(content.Readings, draft, newKey),
        };
    }

    private static string LevelOf(ExaminationContent content, FixedPointKind kind) =>
        FixedPoint.LevelOf(content.FixedPoints, kind) is { } level ? EntryFigures.Write(level) : string.Empty;

    /// <summary>The worksheet as one text, for the draft on the server and the copy in the browser.</summary>
    public string ToJson() => JsonSerializer.Serialize(this, Options);

    /// <summary>Reads a text of <see cref="ToJson"/>; null when it is not one.</summary>
    public static Worksheet? FromJson(string? json)
    {
        if (string.IsNullOrWhiteSpace(json))
        {
            return null;
        }

        try
        {
            Worksheet? read = JsonSerializer.Deserialize<Worksheet>(json, Options);
            return
                read is { Header: not null, Grid.Rows: not null }
                && read.Grid.Rows.All(row => row is { Key: not null, Cells: not null } && EntryRow.IsCount(row.Cells.Count))
                ? read.With(new EntryGrid([.. read.Grid.Rows.Select(row => row.Filled())]))
                : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }

    public bool Equals(Worksheet? other) =>
        other is not null && Grid.Equals(other.Grid) && Enum.GetValues<HeaderField>().All(field => this[field] == other[field]);

    public override int GetHashCode() => HashCode.Combine(this[HeaderField.Date], Grid);
}
