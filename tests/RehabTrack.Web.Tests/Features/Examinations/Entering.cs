using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Records.Examinations;
using RehabTrack.Web.Features.Examinations.Worksheets;

namespace RehabTrack.Web.Tests.Features.Examinations;

/// <summary>Worksheets for the tests, typed as a person would.</summary>
internal static class Entering
{
    public static readonly DateOnly Today = new(2026, 9, 8);

    public static WorksheetTerms Terms =>
        new()
        {
            Today = Today,
            ExaminationId = "now",
            KeptDate = Today,
        };

    /// <summary>A grid as it starts: levels of the body laid out, with the keys r1, r2 …</summary>
    public static EntryGrid LaidOut(params double[] levels)
    {
        Func<string> keys = Keys();
        return EntryGrid.Of(
            [.. levels.Select(level => new DraftReading(null, new ReadingDraft { Part = Part.Body, LevelCm = level }))],
            true,
            keys
        );
    }

    public static Func<string> Keys()
    {
        int next = 0;
        return () => $"r{++next}";
    }

    /// <summary>A worksheet with a date and one row; the row's cells by column.</summary>
    public static Worksheet Row(params (EntryColumn Column, string Text)[] cells) =>
        new Worksheet()
            .With(HeaderField.Date, "2026-09-08")
            .With(
                cells.Aggregate(
                    new EntryGrid([new EntryRow { Key = "r1" }]).Type("r1", EntryColumn.Part, "body").Type("r1", EntryColumn.Level, "24"),
                    (grid, cell) => grid.Type("r1", cell.Column, cell.Text)
                )
            );
}
