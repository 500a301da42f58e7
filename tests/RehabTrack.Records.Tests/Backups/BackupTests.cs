using System.IO.Compression;
using System.Security.Cryptography;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Backups;
using RehabTrack.Records.Examinations;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Room;
using RehabTrack.Records.Sqlite;
using RehabTrack.Records.Sqlite.Backups;
using RehabTrack.Records.Tests.House;

namespace RehabTrack.Records.Tests.Backups;

public sealed class BackupTests : IDisposable
{
    private readonly string _parent = Directory.CreateTempSubdirectory("rehabtrack-backups-").FullName;

    private string Target => Path.Combine(_parent, "copies");

    private string Restored => Path.Combine(_parent, "restored");

    public void Dispose()
    {
        SqliteConnection.ClearAllPools();
        Directory.Delete(_parent, recursive: true);
    }

    [Fact]
    public async Task What_was_kept_is_there_again_after_a_restore_with_the_keys_and_without_logs_and_locks()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        (Guid horse, Guid examination) = await FilledAsync(house);
        Write(house, "keys/key-1.xml", "<key/>");
        Write(house, "logs/today.log", "noise");
        Write(house, "other.lock", "");
        BackupCopy copy = await MadeAsync(house);

        Assert.Equal(("rehabtrack-20261124T090000Z-by-hand.zip", true), (copy.Name, copy.ByHand));
        Assert.Equal(["backup.lock", copy.Name], NamesIn(Target));
        Outcome<BackupManifest> restored = await BackupRestore.RunAsync(Path.Combine(Target, copy.Name), Restored, default);

        Assert.Equal(["keys/key-1.xml", "rehabtrack.db"], restored.Value.Files.Select(file => file.Path).Order(StringComparer.Ordinal));
        Assert.Equal("<key/>", await File.ReadAllTextAsync(Path.Combine(Restored, "keys", "key-1.xml")));
        Assert.Equal(["copies", "restored"], NamesIn(_parent));
        await using RecordsHouse again = await RecordsHouse.BuildAsync(Restored);
        Assert.Equal("Thistle Vane", (await again.Get<GetHorse>().ExecuteAsync(house.Vet, horse)).Value.Name);
        ExaminationView view = (await again.Get<GetExamination>().ExecuteAsync(house.Vet, examination)).Value;
        Assert.Equal([0, 0.1, 0], view.Content.Readings.Select(row => row.Values.LesionAreaCm2!.Value));
    }

    [Fact]
    public async Task Backup_and_restored_folder_are_the_owners_alone()
    {
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Write(house, "keys/key-1.xml", "<key/>");
        string file = Path.Combine(Target, (await MadeAsync(house)).Name);
        await BackupRestore.RunAsync(file, Restored, default);

        const UnixFileMode File0600 = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        Assert.Equal(File0600, File.GetUnixFileMode(file));
        Assert.Equal(File0600, File.GetUnixFileMode(Path.Combine(Restored, "keys", "key-1.xml")));
        foreach (string folder in (string[])[Target, Restored, Path.Combine(Restored, "keys")])
        {
            Assert.Equal(File0600 | UnixFileMode.UserExecute, File.GetUnixFileMode(folder));
        }
    }

    [Fact]
    public async Task What_a_killed_backup_left_is_cleared_away_and_never_taken_for_one()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Directory.CreateDirectory(Target);
        await File.WriteAllTextAsync(Path.Combine(Target, ".unfinished-packed"), "half");
        await File.WriteAllTextAsync(Path.Combine(Target, ".unfinished-rehabtrack.db"), "half");

        BackupCopy copy = await MadeAsync(house);

        Assert.Equal(["backup.lock", copy.Name], NamesIn(Target));
    }

    [Fact]
    public async Task Two_of_the_same_second_have_names_of_their_own_and_one_at_a_time_is_written()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();

        Assert.NotEqual((await MadeAsync(house)).Name, (await MadeAsync(house)).Name);
        await using FileStream other = new(Path.Combine(Target, "backup.lock"), FileMode.Open, FileAccess.ReadWrite, FileShare.None);
        Assert.Equal("backup-folder-busy", Code(await WriteAsync(house)));
    }

    [Fact]
    public async Task A_folder_without_a_database_and_the_data_folder_itself_are_refused()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();

        Assert.Equal("backup-no-data", Code(await BackupWriter.WriteAsync(_parent, Target, true, house.Time, default)));
        Assert.False(Directory.Exists(Target));
        Assert.Equal("backup-into-data", Code(await BackupWriter.WriteAsync(house.Folder, house.Folder, true, house.Time, default)));
    }

    [Fact]
    public async Task Backups_inside_the_data_folder_are_not_packed_into_the_next_one()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        string inside = Path.Combine(house.Folder, "copies");

        await BackupWriter.WriteAsync(house.Folder, inside, true, house.Time, default);
        Outcome<BackupCopy> second = await BackupWriter.WriteAsync(house.Folder, inside, true, house.Time, default);

        using BackupArchive archive = BackupArchive.Open(Path.Combine(inside, second.Value.Name));
        Assert.Equal(["rehabtrack.db"], archive.Manifest.Files.Select(file => file.Path));
    }

    [Fact]
    public async Task A_folder_that_is_not_empty_is_left_alone()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        string file = Path.Combine(Target, (await MadeAsync(house)).Name);
        Directory.CreateDirectory(Restored);
        await File.WriteAllTextAsync(Path.Combine(Restored, "mine.txt"), "mine");

        Assert.Equal("restore-not-empty", Code(await BackupRestore.RunAsync(file, Restored, default)));
        Assert.Equal(["mine.txt"], NamesIn(Restored));
    }

    [Fact]
    public async Task An_empty_folder_that_is_there_already_is_filled()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        string file = Path.Combine(Target, (await MadeAsync(house)).Name);
        Directory.CreateDirectory(Restored);

        Assert.True((await BackupRestore.RunAsync(file, Restored + Path.DirectorySeparatorChar, default)).Succeeded);
        Assert.Equal(["rehabtrack.db"], NamesIn(Restored));
    }

    public static TheoryData<string, string> Damages =>
        new()
        {
            { "changed", "backup-file-damaged" },
            { "longer", "backup-file-damaged" },
            { "removed", "backup-file-missing" },
            { "added", "backup-file-unknown" },
            { "twice", "backup-file-unknown" },
            { "no manifest", "backup-not-ours" },
            { "manifest is no JSON", "backup-not-ours" },
            { "leads outside", "backup-not-ours" },
            { "newer format", "backup-newer" },
            { "newer database", "backup-newer" },
            { "broken database", "database-damaged" },
            { "pointing at nothing", "database-damaged" },
            { "cut off", "backup-not-ours" },
            { "no zip", "backup-not-ours" },
            { "not there", "backup-not-read" },
        };

    [Theory]
    [MemberData(nameof(Damages))]
    public async Task A_backup_that_is_not_what_was_written_restores_nothing_and_verify_says_the_same(string damage, string code)
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        await FilledAsync(house);
        Write(house, "keys/key-1.xml", "<key/>");
        string file = Path.Combine(Target, (await MadeAsync(house)).Name);
        await DamageAsync(file, damage);

        Assert.Equal(code, Code(await BackupRestore.RunAsync(file, Restored, default)));
        Assert.Equal(["copies"], NamesIn(_parent));
        Assert.Equal(code, (await RecordsCheck.BackupAsync(file, default)).Problems[0].Code);
    }

    [Fact]
    public async Task Verify_reads_a_sound_backup_and_the_folder_beside_it()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        await FilledAsync(house);
        string file = Path.Combine(Target, (await MadeAsync(house)).Name);
        await house.HorseAsync("Later One");

        CheckReport backup = await RecordsCheck.BackupAsync(file, default);
        CheckReport folder = await RecordsCheck.FolderAsync(house.Folder, null, default);

        Assert.Empty(backup.Problems);
        Assert.Empty(folder.Problems);
        Assert.Equal((1, 2), (backup.Tables["Horse"], folder.Tables["Horse"]));
        Assert.Equal((false, 1), (backup.WasOlder, backup.FilesRead));
        Assert.True(backup.RowsRead > 10);
        Assert.Empty(RecordsCheck.Lost(backup, folder));
        Assert.Equal("history-shrank", RecordsCheck.Lost(folder, backup).First().Code);
    }

    [Theory]
    [InlineData("UPDATE \"Practice\" SET \"SettingsJson\" = '{ \"trend\": 3 }'", "Practice")]
    [InlineData("UPDATE \"CaseSummary\" SET \"FindingsJson\" = 'none'", "CaseSummary")]
    [InlineData("UPDATE \"AppliedCommand\" SET \"ResultJson\" = '{'", "AppliedCommand")]
    [InlineData("UPDATE \"Reading\" SET \"EchogenicityScale\" = 'no such scale'", "Reading")]
    [InlineData("UPDATE \"Examination\" SET \"State\" = 'Imagined'", "Examination")]
    [InlineData("UPDATE \"Horse\" SET \"BirthDate\" = 'long ago'", "Horse")]
    public async Task Verify_finds_a_row_that_the_program_cannot_read(string tamper, string table)
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        await FilledAsync(house);
        Assert.True(
            await house.LookAsync(records =>
                records.Database.ExecuteSqlRawAsync(
                    tamper.Replace("{", "{{", StringComparison.Ordinal).Replace("}", "}}", StringComparison.Ordinal)
                )
            ) > 0
        );

        CheckReport report = await RecordsCheck.FolderAsync(house.Folder, null, default);

        Assert.All(report.Problems, problem => Assert.Equal(("row-unreadable", table), (problem.Code, problem.Arguments[0])));
        Assert.NotEmpty(report.Problems);
    }

    [Fact]
    public async Task Verify_walks_along_the_trail_and_holds_it_against_the_one_of_the_backup()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        await FilledAsync(house);
        string file = Path.Combine(Target, (await MadeAsync(house)).Name);
        CheckReport backup = await RecordsCheck.BackupAsync(file, default);
        await house.HorseAsync("Later One");
        Assert.Empty((await RecordsCheck.FolderAsync(house.Folder, backup, default)).Problems);

        await house.LookAsync(records =>
            records.Database.ExecuteSqlRawAsync(
                """
                DROP TRIGGER "Change_is_not_deleted";
                DELETE FROM "Change" WHERE "Number" > 2
                """
            )
        );

        // A tail that was cut off shows only beside what was noted of it.
        Assert.Empty((await RecordsCheck.FolderAsync(house.Folder, null, default)).Problems);
        Problem broken = Assert.Single((await RecordsCheck.FolderAsync(house.Folder, backup, default)).Problems);
        Assert.Equal(("trail-broken", "NotAsNoted"), (broken.Code, broken.Arguments[2]));
    }

    [Fact]
    public async Task Words_of_the_trail_that_are_gone_are_read_as_such_and_missed_where_no_line_says_so()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Assert.True(
            await house.LookAsync(records =>
                records.Database.ExecuteSqlRawAsync(
                    """UPDATE "Change" SET "BeforeJson" = NULL, "AfterJson" = '', "Salt" = NULL WHERE "Kind" = 'Person' """
                )
            ) > 0
        );

        Problem broken = Assert.Single((await RecordsCheck.FolderAsync(house.Folder, null, default)).Problems);

        Assert.Equal(("trail-broken", "EmptiedUnsaid"), (broken.Code, broken.Arguments[2]));
    }

    [Fact]
    public async Task Verify_finds_a_damaged_page_in_a_data_folder_and_a_folder_without_data()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        await FilledAsync(house);
        string folder = Path.Combine(_parent, "damaged");
        Directory.CreateDirectory(folder);
        string database = Path.Combine(folder, DataFolder.DatabaseName);
        await house.LookAsync(records => records.Database.ExecuteSqlAsync($"VACUUM INTO {database}"));
        Spoil(database);

        Assert.Equal("database-damaged", (await RecordsCheck.FolderAsync(folder, null, default)).Problems[0].Code);
        Assert.Equal("backup-no-data", (await RecordsCheck.FolderAsync(_parent, null, default)).Problems[0].Code);
    }

    [Fact]
    public async Task A_backup_is_made_when_it_is_due_caught_up_when_it_was_missed_and_old_ones_go()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        IBackupKeeper backups = Keeper(
            house,
            new BackupSettings
            {
                Folder = Target,
                KeepDaily = 2,
                KeepWeekly = 0,
            }
        );

        Assert.True((await backups.MakeDueAsync(default))!.Succeeded);
        Assert.Null(await backups.MakeDueAsync(default));
        house.Time.Advance(TimeSpan.FromHours(16));
        Assert.Null(await backups.MakeDueAsync(default));
        // 25 November, 01:30 UTC: half past two in Vienna.
        house.Time.Advance(TimeSpan.FromMinutes(30));
        Assert.True((await backups.MakeDueAsync(default))!.Succeeded);
        await backups.MakeAsync(default);
        house.Time.Advance(TimeSpan.FromDays(30));
        Assert.True((await backups.MakeDueAsync(default))!.Succeeded);

        Assert.Equal(
            ["rehabtrack-20261225T013000Z.zip", "rehabtrack-20261125T013000Z.zip", "rehabtrack-20261125T013000Z-by-hand.zip"],
            backups.List().Select(copy => copy.Name)
        );
    }

    [Fact]
    public async Task One_that_fails_is_told_clears_nothing_away_and_is_tried_again_after_an_hour()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        IBackupKeeper backups = Keeper(
            house,
            new BackupSettings
            {
                Folder = Target,
                KeepDaily = 1,
                KeepWeekly = 0,
            }
        );
        await backups.MakeDueAsync(default);
        house.Time.Advance(TimeSpan.FromDays(1));
        using (FileStream other = new(Path.Combine(Target, "backup.lock"), FileMode.Open, FileAccess.ReadWrite, FileShare.None))
        {
            Assert.Equal("backup-folder-busy", Code((await backups.MakeDueAsync(default))!));
        }

        Assert.Equal("backup-folder-busy", Assert.Single(backups.Last!.Problems).Code);
        Assert.Single(backups.List());
        Assert.Null(await backups.MakeDueAsync(default));
        house.Time.Advance(TimeSpan.FromHours(1));
        Assert.True((await backups.MakeDueAsync(default))!.Succeeded);
        Assert.Empty(backups.Last.Problems);
    }

    [Fact]
    public async Task Without_a_folder_none_is_made_and_the_page_can_say_so()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();

        Assert.Null(await house.Get<IBackupKeeper>().MakeDueAsync(default));
        BackupsView view = (await house.Get<ListBackups>().ExecuteAsync(house.Vet, NoInput.Value)).Value;
        Assert.Equal((null, null, 0), (view.Settings.Folder, view.NextDue, view.Copies.Count));
        Assert.Equal("backup-no-folder", Code(await house.Get<MakeBackup>().ExecuteAsync(house.Vet, NoInput.Value)));
    }

    [Fact]
    public async Task One_made_by_hand_leaves_a_line_in_the_trail_and_one_that_failed_leaves_none()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        BackupKeeper keeper = Keeper(house, new BackupSettings { Folder = Target });

        Assert.False((await house.Get<MakeBackup>().ExecuteAsync(house.Vet, NoInput.Value)).Succeeded);
        BackupCopy made = (await new MakeBackup(house.Get<RecordsAccess>(), keeper).ExecuteAsync(house.Vet, NoInput.Value)).Value;

        (string UseCase, Guid By, string After) = Assert.Single(
            await house.LookAsync(async records =>
                (await records.Changes.Where(line => line.UseCase == nameof(MakeBackup)).ToListAsync()).Select(line =>
                    (line.UseCase, line.PersonId, line.AfterJson)
                )
            )
        );
        Assert.Equal((nameof(MakeBackup), house.Vet.PersonId), (UseCase, By));
        Assert.Contains(made.Name, After, StringComparison.Ordinal);
    }

    [Fact]
    public async Task One_made_by_hand_is_not_made_again_at_once_and_again_after_the_pause()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        BackupSettings settings = new() { Folder = Target };
        MakeBackup make = new(house.Get<RecordsAccess>(), Keeper(house, settings));
        Assert.True((await make.ExecuteAsync(house.Vet, NoInput.Value)).Succeeded);

        house.Time.Advance(settings.ByHandPause - TimeSpan.FromSeconds(2));
        Assert.Equal("backup-just-made", Code(await make.ExecuteAsync(house.Vet, NoInput.Value)));

        house.Time.Advance(TimeSpan.FromSeconds(4));
        Assert.True((await make.ExecuteAsync(house.Vet, NoInput.Value)).Succeeded);
    }

    private static BackupKeeper Keeper(RecordsHouse house, BackupSettings settings) =>
        new(new DataFolder(house.Folder), settings, house.Get<IDbContextFactory<Records.Keeping.RecordsContext>>(), house.Time);

    private async Task<BackupCopy> MadeAsync(RecordsHouse house) => (await WriteAsync(house)).Value;

    private Task<Outcome<BackupCopy>> WriteAsync(RecordsHouse house) =>
        BackupWriter.WriteAsync(house.Folder, Target, byHand: true, house.Time, default);

    private static async Task<(Guid Horse, Guid Examination)> FilledAsync(RecordsHouse house)
    {
        Saved horse = await house.HorseAsync();
        Saved injury = await house.CaseAsync(horse.Id);
        Saved signed = await house.SignedAsync(injury.Id, Wishes.Content(new DateOnly(2026, 9, 1), (10, 0), (12, 0.1), (14, 0)));
        return (horse.Id, signed.Id);
    }

    private static void Write(RecordsHouse house, string name, string text)
    {
        string file = Path.Combine(house.Folder, name);
        Directory.CreateDirectory(Path.GetDirectoryName(file)!);
        File.WriteAllText(file, text);
    }

    private static string[] NamesIn(string folder) =>
        [.. Directory.EnumerateFileSystemEntries(folder).Select(entry => Path.GetFileName(entry)).Order(StringComparer.Ordinal)];

    private static string Code<T>(Outcome<T> outcome) => outcome.Problems[0].Code;

    private async Task DamageAsync(string file, string damage)
    {
        switch (damage)
        {
            case "cut off":
                await using (FileStream cut = new(file, FileMode.Open))
                {
                    cut.SetLength(cut.Length / 2);
                }

                return;
            case "no zip":
                await File.WriteAllTextAsync(file, "a letter");
                return;
            case "not there":
                File.Delete(file);
                return;
        }

        string folder = Path.Combine(_parent, "unpacked");
        await ZipFile.ExtractToDirectoryAsync(file, folder);
        string manifest = Path.Combine(folder, "manifest.json");
        string database = Path.Combine(folder, DataFolder.DatabaseName);
        string key = Path.Combine(folder, "keys", "key-1.xml");
        string text = await File.ReadAllTextAsync(manifest);
        switch (damage)
        {
            case "changed":
                await File.WriteAllTextAsync(key, "<yek/>");
                break;
            case "longer":
                await File.WriteAllTextAsync(key, new string('x', 1 << 20));
                break;
            case "removed":
                File.Delete(key);
                break;
            case "added":
                await File.WriteAllTextAsync(Path.Combine(folder, "more.txt"), "more");
                break;
            case "no manifest":
                File.Delete(manifest);
                break;
            case "manifest is no JSON":
                await File.WriteAllTextAsync(manifest, "{");
                break;
            case "leads outside":
                await File.WriteAllTextAsync(manifest, text.Replace("keys/key-1.xml", "../key-1.xml", StringComparison.Ordinal));
                break;
            case "newer format":
                await File.WriteAllTextAsync(manifest, text.Replace("\"format\": 1", "\"format\": 2", StringComparison.Ordinal));
                break;
            case "newer database":
                await SqlAsync(database, """INSERT INTO "__EFMigrationsHistory" VALUES ('20991231000000_FarAhead', '99.0.0')""");
                await ResealAsync(manifest, text, database);
                break;
            case "broken database":
                Spoil(database);
                await ResealAsync(manifest, text, database);
                break;
            case "pointing at nothing":
                await SqlAsync(database, """PRAGMA foreign_keys=OFF; DELETE FROM "Horse" """);
                await ResealAsync(manifest, text, database);
                break;
        }

        File.Delete(file);
        await ZipFile.CreateFromDirectoryAsync(folder, file);
        if (damage == "twice")
        {
            using ZipArchive zip = await ZipFile.OpenAsync(file, ZipArchiveMode.Update);
            await using StreamWriter again = new(zip.CreateEntry("keys/key-1.xml").Open());
            await again.WriteAsync("<key/>");
        }

        Directory.Delete(folder, recursive: true);
    }

    /// <summary>A backup that was changed by somebody who knows how checksums work.</summary>
    private static async Task ResealAsync(string manifest, string text, string database)
    {
        BackupManifest read = BackupManifest.Read(System.Text.Encoding.UTF8.GetBytes(text))!;
        byte[] content = await File.ReadAllBytesAsync(database);
        BackupFile changed = new(DataFolder.DatabaseName, content.Length, Convert.ToHexStringLower(SHA256.HashData(content)));
        await File.WriteAllBytesAsync(
            manifest,
            (read with { Files = [changed, .. read.Files.Where(file => file.Path != changed.Path)] }).Write()
        );
    }

    private static async Task SqlAsync(string database, string statement)
    {
        await using SqliteConnection connection = new($"Data Source={database};Pooling=False");
        await connection.OpenAsync();
        await using SqliteCommand command = connection.CreateCommand();
        command.CommandText = statement;
        await command.ExecuteNonQueryAsync();
    }

    /// <summary>Overwrites the middle of the file, the header left whole.</summary>
    private static void Spoil(string database)
    {
        using FileStream file = new(database, FileMode.Open);
        byte[] noise = [.. Enumerable.Range(0, 64 * 1024).Select(at => (byte)((at * 31) + 7))];
        file.Position = file.Length / 4;
        file.Write(noise);
    }
}
