using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Examinations;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Imports;
using RehabTrack.Records.Room;
using RehabTrack.Records.Sqlite.Backups;
using RehabTrack.Records.Tests.House;

namespace RehabTrack.Records.Tests.Backups;

/// <summary>What <c>verify</c> finds of content that was changed past the program.</summary>
public sealed class ContentCheckTests : IDisposable
{
    private readonly string _copies = Directory.CreateTempSubdirectory("rehabtrack-copies-").FullName;

    public void Dispose()
    {
        SqliteConnection.ClearAllPools();
        Directory.Delete(_copies, recursive: true);
    }

    [Theory]
    [InlineData("UPDATE \"HorsePhoto\" SET \"Content\" = X'00112233'", "HorsePhoto")]
    [InlineData("UPDATE \"ImportFile\" SET \"Content\" = X'00112233'", "ImportFile")]
    public async Task A_file_whose_bytes_changed_is_found_by_its_checksum(string tamper, string table)
    {
        await using RecordsHouse house = await FilledAsync();
        Assert.Empty((await RecordsCheck.FolderAsync(house.Folder, null, default)).Problems);

        await TamperAsync(house, tamper);

        Problem found = Assert.Single((await RecordsCheck.FolderAsync(house.Folder, null, default)).Problems);
        Assert.Equal(("kept-file-spoiled", table), (found.Code, found.Arguments[0]));
    }

    [Theory]
    [InlineData("UPDATE \"Reading\" SET \"LesionAreaCm2\" = 0.9 WHERE \"LevelCm\" = 12", "Examination", "lesionAreaCm2")]
    [InlineData("UPDATE \"Reading\" SET \"Note\" = 'added' WHERE \"LevelCm\" = 12", null, null)]
    [InlineData("DELETE FROM \"Reading\" WHERE \"LevelCm\" = 12", "Examination", "]")]
    [InlineData("UPDATE \"Examination\" SET \"Date\" = '2026-09-02'", "Examination", "date")]
    [InlineData("UPDATE \"Horse\" SET \"Name\" = 'Other'", "Horse", "name")]
    [InlineData("UPDATE \"Case\" SET \"Onset\" = '2026-04-09'", "Case", "onset")]
    [InlineData("UPDATE \"HorsePhoto\" SET \"Checksum\" = upper(\"Checksum\")", "HorsePhoto", "checksum")]
    public async Task A_value_that_stands_in_no_line_of_the_trail_is_found_without_a_backup(string tamper, string? kind, string? field)
    {
        await using RecordsHouse house = await FilledAsync();

        await TamperAsync(house, tamper);

        IReadOnlyList<Problem> found = (await RecordsCheck.FolderAsync(house.Folder, null, default)).Problems;
        if (kind is null)
        {
            // A field that was never written is told by no line.
            Assert.Empty(found);
            return;
        }

        Problem one = Assert.Single(found);
        Assert.Equal(("row-unlike-told", kind), (one.Code, one.Arguments[0]));
        Assert.EndsWith(field!, one.Arguments[2], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("UPDATE \"Reading\" SET \"Note\" = 'added' WHERE \"LevelCm\" = 12", "Reading")]
    [InlineData("UPDATE \"Horse\" SET \"Search\" = 'else'", "Horse")]
    [InlineData("UPDATE \"AppliedCommand\" SET \"ResultJson\" = '{}' WHERE \"UseCase\" = 'SaveHorse'", "AppliedCommand")]
    [InlineData("DROP TRIGGER \"SignedFigures_is_not_updated\"; UPDATE \"SignedFigures\" SET \"SettingsHash\" = 'none'", "SignedFigures")]
    public async Task A_row_of_the_same_version_that_says_something_else_than_the_backup_is_found(string tamper, string table)
    {
        await using RecordsHouse house = await FilledAsync();
        string backup = Path.Combine(_copies, (await BackupWriter.WriteAsync(house.Folder, _copies, true, house.Time, default)).Value.Name);
        Assert.Empty(await RecordsCheck.DifferingAsync(backup, house.Folder, default));

        await TamperAsync(house, tamper);

        Assert.Empty((await RecordsCheck.FolderAsync(house.Folder, null, default)).Problems);
        IReadOnlyList<Problem> found = await RecordsCheck.DifferingAsync(backup, house.Folder, default);
        Assert.Equal(("row-unlike-backup", table), Assert.Single(found.Select(one => (one.Code, one.Arguments[0])).Distinct()));
    }

    [Fact]
    public async Task What_the_program_itself_wrote_since_is_no_difference()
    {
        await using RecordsHouse house = await FilledAsync();
        string backup = Path.Combine(_copies, (await BackupWriter.WriteAsync(house.Folder, _copies, true, house.Time, default)).Value.Name);
        Guid horse = await house.LookAsync(records => records.Horses.Select(one => one.Id).SingleAsync());
        HorseView view = (await house.Get<GetHorse>().ExecuteAsync(house.Vet, horse)).Value;

        Outcome<Saved> saved = await house
            .Get<SaveHorse>()
            .ExecuteAsync(
                house.Vet,
                new SaveHorseInput
                {
                    CommandId = Guid.NewGuid(),
                    Id = horse,
                    Version = view.Version,
                    Name = "Renamed",
                }
            );

        Assert.Empty(saved.Problems);
        Assert.Empty(await RecordsCheck.DifferingAsync(backup, house.Folder, default));
        Assert.Empty((await RecordsCheck.FolderAsync(house.Folder, null, default)).Problems);
    }

    [Fact]
    public async Task Rows_that_were_changed_taken_out_and_put_in_by_the_program_are_as_they_were_told()
    {
        await using RecordsHouse house = await FilledAsync();
        Saved injury = await house.CaseAsync((await house.HorseAsync("Larkspur")).Id);
        SavedDraft draft = await house.DraftAsync(injury.Id, Wishes.Content(new DateOnly(2026, 9, 1), (10, 0), (12, 0.1), (14, 0)));
        ExaminationView view = (await house.Get<GetExamination>().ExecuteAsync(house.Vet, draft.Id)).Value;
        DraftReading[] rows = [.. view.Content.Readings];

        Outcome<SavedDraft> saved = await house
            .Get<SaveDraft>()
            .ExecuteAsync(
                house.Vet,
                new SaveDraftInput
                {
                    CommandId = Guid.NewGuid(),
                    Id = draft.Id,
                    Version = view.Version,
                    Content = view.Content with
                    {
                        Readings =
                        [
                            rows[0] with
                            {
                                Values = rows[0].Values with { LigamentAreaCm2 = 1.6 },
                            },
                            rows[2],
                            .. Wishes.Content(new DateOnly(2026, 9, 1), (16, 0)).Readings,
                        ],
                    },
                }
            );

        Assert.Empty(saved.Problems);
        Assert.Empty((await RecordsCheck.FolderAsync(house.Folder, null, default)).Problems);
    }

    private static async Task<RecordsHouse> FilledAsync()
    {
        RecordsHouse house = await RecordsHouse.BuildAsync();
        Saved horse = await house.HorseAsync();
        Saved injury = await house.CaseAsync(horse.Id);
        await house.SignedAsync(injury.Id, Wishes.Content(new DateOnly(2026, 9, 1), (10, 0), (12, 0.1), (14, 0)));
        await house
            .Get<SaveHorsePhoto>()
            .ExecuteAsync(
                house.Vet,
                new SaveHorsePhotoInput
                {
                    CommandId = Guid.NewGuid(),
                    HorseId = horse.Id,
                    ContentType = "image/png",
                    Content = [0x89, 0x50, 0x4E, 0x47],
                }
            );
        await house.Get<StageImportFile>().ExecuteAsync(house.Vet, new StageImportFileInput(Guid.NewGuid(), "sheet.csv", [0x61]));
        return house;
    }

    private static async Task TamperAsync(RecordsHouse house, string statement) =>
        Assert.True(
            await house.LookAsync(records =>
                records.Database.ExecuteSqlRawAsync(
                    statement.Replace("{", "{{", StringComparison.Ordinal).Replace("}", "}}", StringComparison.Ordinal)
                )
            ) > 0
        );
}
