using System.Globalization;
using System.Text.Json;
using Microsoft.Data.Sqlite;
using RehabTrack.Exchange;
using RehabTrack.Exchange.Mapping;
using RehabTrack.Exchange.Rows;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Imports;
using RehabTrack.Records.Room;
using RehabTrack.Records.Sqlite;
using RehabTrack.Wording;

namespace RehabTrack.Drills.Sheets;

/// <summary>
/// Hands in broken sheets. Whatever stands in a file, the answer is a value: nothing throws, no figure is no number, every row that is not
/// taken names its line and has a sentence, and what is imported is there whole or not at all.
/// </summary>
internal static class SheetDrill
{
    private const int RoundsOfAHouse = 200;

    public static async Task<DrillRow> RunAsync(int rounds, int seed)
    {
        byte[][] sheets =
        [
            .. Directory.GetFiles(RepositoryFolder.Of("seed"), "*.csv").Order(StringComparer.Ordinal).Select(File.ReadAllBytes),
        ];
        Tally tally = new();
        for (int from = 0; from < rounds; from += RoundsOfAHouse)
        {
            using DrillFolder folder = new();
            await using DrillHouse house = await DrillHouse.OpenAsync(folder.Sub("data"));
            string database = new DataFolder(folder.Sub("data")).Database;
            for (int round = from; round < Math.Min(rounds, from + RoundsOfAHouse); round++)
            {
                Random random = new(seed + round);
                byte[] broken = SheetBreaker.Break(random, sheets[random.Next(sheets.Length)]);
                try
                {
                    await HandInAsync(house, database, broken, round, tally);
                }
                catch (Exception thrown) when (thrown is not OutOfMemoryException)
                {
                    // Whatever is thrown is the finding.
                    tally.Lost(round, $"{thrown.GetType().Name}: {thrown.Message}");
                }
            }
        }

        return new DrillRow(
            "broken sheets",
            rounds,
            string.Create(
                CultureInfo.InvariantCulture,
                $"{tally.Unreadable} refused as a whole, {tally.Rejected} rows refused, {tally.Imported} imported with {tally.Readings} readings, {tally.Kept} not imported with reasons"
            ),
            tally.All
        );
    }

    private static async Task HandInAsync(DrillHouse house, string database, byte[] sheet, int round, Tally tally)
    {
        DateOnly today = DateOnly.FromDateTime(TimeProvider.System.GetUtcNow().UtcDateTime);
        using MemoryStream stream = new(sheet, writable: false);
        SheetResult read = SheetImport.Read(stream, today);
        if (read is { NeedsMapping: true, Shape: { } shape })
        {
            read = SheetImport.Read(stream, today, MappingSuggestion.For(shape).Mapping);
        }

        Check(read, round, tally);
        if (read.Cases.Count == 0)
        {
            tally.Unreadable++;
            return;
        }

        // What no figure can be, no JSON can be either.
        JsonSerializer.Serialize(read.Cases);
        ImportPreview preview = (
            await house.Get<PreviewImport>().ExecuteAsync(house.Vet, new PreviewImportInput { Cases = read.Cases })
        ).Value;
        ImportChoices choices = new()
        {
            Cases = preview
                .Cases.Where(found => found.MustChooseHorse)
                .ToDictionary(found => found.Label, _ => new CaseChoice { NewHorse = true }, StringComparer.Ordinal),
        };
        ImportPreview chosen = (
            await house.Get<PreviewImport>().ExecuteAsync(house.Vet, new PreviewImportInput { Cases = read.Cases, Choices = choices })
        ).Value;
        (long Examinations, long Readings) before = Count(database);
        Outcome<ImportResult> outcome = await house
            .Get<ApplyImport>()
            .ExecuteAsync(
                house.Vet,
                new ApplyImportInput
                {
                    CommandId = Guid.CreateVersion7(),
                    Cases = read.Cases,
                    Choices = choices,
                }
            );
        (long examinations, long readings) = Count(database);
        (long Examinations, long Readings) wanted = outcome.Succeeded ? (chosen.NewExaminations, chosen.NewReadings) : (0, 0);
        if ((examinations - before.Examinations, readings - before.Readings) != wanted)
        {
            tally.Lost(round, "what was imported is not what was shown before");
        }

        if (outcome.Succeeded)
        {
            tally.Imported++;
            tally.Readings += chosen.NewReadings;
        }
        else
        {
            tally.Kept++;
            Told(outcome.Problems, round, tally);
        }
    }

    private static void Check(SheetResult read, int round, Tally tally)
    {
        tally.Rejected += read.RejectedRows;
        Told(read.Rejected.Select(row => row.Problem), round, tally);
        Told(read.Cautions.Select(caution => caution.Problem), round, tally);
        Told(read.MappingProblems, round, tally);
        Told(read.FileProblem is { } problem ? [problem] : [], round, tally);
        foreach (RejectedRow row in read.Rejected.Where(row => row.Row < 1))
        {
            tally.Lost(round, $"{row.Problem.Code} names no line");
        }

        // A problem of a field stands in a column of the file.
        foreach (RejectedRow row in read.Rejected.Where(row => row.Column.Length == 0 && row.Problem.Field.Length > 0))
        {
            tally.Lost(round, $"{row.Problem.Code} of {row.Problem.Field} names no column");
        }
    }

    private static void Told(IEnumerable<Problem> problems, int round, Tally tally)
    {
        foreach (Problem problem in problems)
        {
            if (!ProblemSentences.Has(problem.Code) || ProblemSentences.Of(problem).Length == 0)
            {
                tally.Lost(round, $"{problem.Code} has no sentence");
            }
        }
    }

    private static (long Examinations, long Readings) Count(string database)
    {
        using SqliteConnection connection = new(
            new SqliteConnectionStringBuilder
            {
                DataSource = database,
                Mode = SqliteOpenMode.ReadOnly,
                Pooling = false,
            }.ToString()
        );
        connection.Open();
        return (Count(connection, "Examination"), Count(connection, "Reading"));
    }

    private static long Count(SqliteConnection connection, string table)
    {
        using SqliteCommand count = connection.CreateCommand();
        count.CommandText = $"SELECT COUNT(*) FROM \"{table}\"";
        return (long)count.ExecuteScalar()!;
    }

    /// <summary>What was counted, and what was found.</summary>
    private sealed class Tally
    {
        private readonly List<string> lost = [];

        public int Unreadable { get; set; }

        public int Rejected { get; set; }

        public int Imported { get; set; }

        public int Readings { get; set; }

        public int Kept { get; set; }

        public IReadOnlyList<string> All => lost;

        public void Lost(int round, string what) => lost.Add(string.Create(CultureInfo.InvariantCulture, $"round {round}: {what}"));
    }
}
