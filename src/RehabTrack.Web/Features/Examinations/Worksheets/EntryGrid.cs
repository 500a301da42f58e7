using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Examinations;
using RehabTrack.Wording;

namespace RehabTrack.Web.Features.Examinations.Worksheets;

/// <summary>The rows of an examination being entered. Every change yields a new grid; no change loses a text.</summary>
public sealed record EntryGrid(IReadOnlyList<EntryRow> Rows)
{
    /// <summary>A grid without rows.</summary>
    public static EntryGrid Empty { get; } = new([]);

    /// <summary>How many levels of the last examination are neither read nor marked not read.</summary>
    public int Unread => Rows.Count(row => row.Expected && !row.NotRead && !row.IsRead);

    /// <summary>How many levels were marked not read.</summary>
    public int NotRead => Rows.Count(row => row.NotRead);

    /// <summary>Whether something was read and every level of the last examination is read or marked not read.</summary>
    public bool IsComplete => Unread == 0 && Rows.Any(row => row.IsRead);

    /// <summary>
    /// The rows of an examination as kept. In a draft, a row without a measurement is a level laid out from the last examination: it is
    /// expected, and it carries no role, since the worst level may have moved. A draft without rows starts with one.
    /// </summary>
    /// <param name="rows">The kept rows.</param>
    /// <param name="draft">Whether they belong to a draft.</param>
    /// <param name="newKey">Makes the key of a row.</param>
    public static EntryGrid Of(IReadOnlyList<DraftReading> rows, bool draft, Func<string> newKey)
    {
        ArgumentNullException.ThrowIfNull(rows);
        ArgumentNullException.ThrowIfNull(newKey);
        EntryRow[] shown = [.. rows.Select(row => RowOf(row.Id?.ToString() ?? newKey(), row.Values, draft))];
        return new EntryGrid(shown.Length == 0 && draft ? [new EntryRow { Key = newKey() }] : shown);
    }

    /// <summary>The row with this key; null when there is none.</summary>
    public EntryRow? Find(string key) => Rows.FirstOrDefault(row => row.Key == key);

    /// <summary>The grid with another text in one cell; words typed by their first letters are written out.</summary>
    public EntryGrid Type(string key, EntryColumn column, string text) =>
        Replace(key, row => row.With(column, EntryWords.Complete(column, text)));

    /// <summary>The grid with a text that is still being typed: nothing is written out for the person.</summary>
    public EntryGrid TypeHalf(string key, EntryColumn column, string text) => Replace(key, row => row.With(column, text));

    /// <summary>A new level below the row, on the same part; the level itself is left to be typed.</summary>
    /// <param name="key">The row to stand below; null or unknown for the end.</param>
    /// <param name="newKey">Key of the new row.</param>
    public EntryGrid InsertBelow(string? key, string newKey)
    {
        int index = IndexOf(key);
        EntryRow row = new() { Key = newKey };
        if (index >= 0)
        {
            row = row.With(EntryColumn.Part, Rows[index][EntryColumn.Part]);
        }

        return InsertAt(index < 0 ? Rows.Count : index + 1, row);
    }

    /// <summary>A second tracing of the same place, below its other tracings.</summary>
    public EntryGrid Repeat(string key, string newKey)
    {
        int index = IndexOf(key);
        if (index < 0)
        {
            return this;
        }

        EntryRow first = Rows[index];
        int[] same = [.. Rows.Index().Where(row => SamePlace(row.Item, first)).Select(row => row.Index)];
        EntryRow repeat = new EntryRow
        {
            Key = newKey,
            LongAxis = first.LongAxis,
            Repeat = EntryFigures.Write(
                1 + same.Max(at => Rows[at].Repeat is { } text && EntryFigures.Number(text) is { } number ? (int)number : 1)
            ),
        }
            .With(EntryColumn.Part, first[EntryColumn.Part])
            .With(EntryColumn.Level, first[EntryColumn.Level])
            .With(EntryColumn.Lesion, first[EntryColumn.Lesion]);
        return InsertAt(same.Max() + 1, repeat);
    }

    /// <summary>
    /// Marks a level as not read, or as read again. A row added here and left empty goes away; what was typed in a row marked not read
    /// stays visible and is not counted.
    /// </summary>
    public EntryGrid Strike(string key) =>
        Find(key) switch
        {
            null => this,
            { Expected: false, IsUntouched: true, NotRead: false } => new EntryGrid([.. Rows.Where(row => row.Key != key)]),
            _ => Replace(key, row => row with { NotRead = !row.NotRead }),
        };

    /// <summary>The rows down the limb: by path, level, lesion and tracing; rows whose part or level cannot be read stay last, as they stood.</summary>
    public EntryGrid Sorted() =>
        new([
            .. Rows.OrderBy(row => EntryWords.Part(row[EntryColumn.Part]) is { } part ? (int)AnatomyRules.PathOf(part) : int.MaxValue)
                .ThenBy(row => EntryFigures.Number(row[EntryColumn.Level]) ?? double.MaxValue)
                // Names of zones stand in the order of the limb when they stand in the order of their letters.
                .ThenBy(row => FoldedText.Of(row[EntryColumn.Level]), StringComparer.Ordinal)
                .ThenBy(row => row[EntryColumn.Lesion], StringComparer.Ordinal)
                .ThenBy(row => row.Repeat, StringComparer.Ordinal),
        ]);

    public bool Equals(EntryGrid? other) => other is not null && Rows.SequenceEqual(other.Rows);

    public override int GetHashCode() => Rows.Count;

    private static EntryRow RowOf(string key, ReadingDraft reading, bool draft)
    {
        bool laidOut = draft && !reading.HasMeasurement;
        (EntryColumn Column, string? Text)[] texts =
        [
            (EntryColumn.Part, reading.Part is { } part ? Names.Of(part) : null),
            (EntryColumn.Level, reading.Zone ?? Written(reading.LevelCm)),
            (EntryColumn.Lesion, reading.Lesion),
            (EntryColumn.Role, reading.Role == ReadingRole.None || laidOut ? null : Names.Of(reading.Role)),
            (EntryColumn.LigamentArea, Written(reading.LigamentAreaCm2)),
            (EntryColumn.LesionArea, reading.LesionIsDiffuse ? ExaminationPage.Diffuse : Written(reading.LesionAreaCm2)),
            (EntryColumn.Thickness, Written(reading.ThicknessCm)),
            (EntryColumn.Width, Written(reading.WidthCm)),
            (EntryColumn.Echogenicity, Written(reading.EchogenicityGrade)),
            (EntryColumn.FibreAlignment, Written(reading.FibreAlignmentGrade)),
            (EntryColumn.Note, reading.Note),
            (EntryColumn.OtherLimbLigamentArea, Written(reading.OtherLimbLigamentAreaCm2)),
            (EntryColumn.OtherLimbThickness, Written(reading.OtherLimbThicknessCm)),
        ];
        return texts.Aggregate(
            new EntryRow
            {
                Key = key,
                Expected = laidOut,
                Repeat = reading.Repeat,
                LongAxis = reading.Plane == ImagePlane.LongAxis,
            },
            (row, text) => row.With(text.Column, text.Text ?? string.Empty)
        );
    }

    private static string? Written(double? value) => value is { } known ? EntryFigures.Write(known) : null;

    private static bool SamePlace(EntryRow row, EntryRow other) =>
        row[EntryColumn.Part] == other[EntryColumn.Part]
        && row[EntryColumn.Lesion] == other[EntryColumn.Lesion]
        && row.LongAxis == other.LongAxis
        && (
            row.Key == other.Key
            || (EntryFigures.Number(row[EntryColumn.Level]) is { } level && level.Equals(EntryFigures.Number(other[EntryColumn.Level])))
            || (
                FoldedText.Of(row[EntryColumn.Level]) is { Length: > 0 } zone
                && string.Equals(zone, FoldedText.Of(other[EntryColumn.Level]), StringComparison.Ordinal)
            )
        );

    private int IndexOf(string? key) => Rows.Index().Where(row => row.Item.Key == key).Select(row => row.Index).DefaultIfEmpty(-1).First();

    private EntryGrid InsertAt(int index, EntryRow row) => new([.. Rows.Take(index), row, .. Rows.Skip(index)]);

    private EntryGrid Replace(string key, Func<EntryRow, EntryRow> change) =>
        new([.. Rows.Select(row => row.Key == key ? change(row) : row)]);
}
