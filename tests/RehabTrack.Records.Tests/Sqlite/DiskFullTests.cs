using System.Globalization;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Examinations;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Room;
using RehabTrack.Records.Sqlite;
using RehabTrack.Records.Tests.House;

namespace RehabTrack.Records.Tests.Sqlite;

public sealed class DiskFullTests
{
    [Fact]
    public async Task A_full_disk_is_a_problem_to_read_nothing_is_half_written_and_work_goes_on_when_there_is_room()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Saved injury = await house.CaseAsync((await house.HorseAsync()).Id);
        SavedDraft draft = await house.DraftAsync(injury.Id, Wishes.Content(new DateOnly(2026, 9, 1), (10, 0)));
        // One after the other takes the same pooled connection, so the limit stays with it.
        await LimitAsync(house, await house.LookAsync(records => ScalarAsync(records.Database, "PRAGMA page_count")));
        SaveDraftInput wish = new()
        {
            CommandId = Guid.NewGuid(),
            Id = draft.Id,
            Version = draft.Version,
            Content = Wishes.Content(new DateOnly(2026, 9, 2), [.. Enumerable.Range(0, 60).Select(step => (5 + (step / 4.0), 0.1))]) with
            {
                Note = new string('n', 4000),
            },
        };

        Outcome<SavedDraft> refused = await house.Get<SaveDraft>().ExecuteAsync(house.Vet, wish);

        Assert.Equal("disk-full", Assert.Single(refused.Problems).Code);
        ExaminationView view = (await house.Get<GetExamination>().ExecuteAsync(house.Vet, draft.Id)).Value;
        Assert.Equal((new DateOnly(2026, 9, 1), 1, null), (view.Content.Date, view.Content.Readings.Count, view.Content.Note));

        await LimitAsync(house, 1_000_000);
        Assert.True((await house.Get<SaveDraft>().ExecuteAsync(house.Vet, wish)).Succeeded);
        view = (await house.Get<GetExamination>().ExecuteAsync(house.Vet, draft.Id)).Value;
        Assert.Equal(60, view.Content.Readings.Count);
    }

    [Theory]
    [InlineData(13, "disk-full")]
    [InlineData(10, "disk-trouble")]
    [InlineData(8, "disk-trouble")]
    [InlineData(14, "disk-trouble")]
    // A constraint that is broken is a bug, and damage is not the disk's.
    [InlineData(19, null)]
    [InlineData(11, null)]
    public void Trouble_of_the_disk_is_told_from_a_bug(int sqlite, string? code)
    {
        SqliteException broken = new("made up", sqlite);

        Assert.Equal(code, new SqliteTrouble().Of(broken)?.Code);
        Assert.Equal(code, new SqliteTrouble().Of(new DbUpdateException("while saving", broken))?.Code);
    }

    [Fact]
    public async Task A_bug_is_still_an_exception()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        await house.LookAsync(records => records.Database.ExecuteSqlRawAsync("""DROP TABLE "HorsePhoto" """));

        await Assert.ThrowsAnyAsync<Exception>(() => house.Get<GetHorsePhoto>().ExecuteAsync(house.Vet, Guid.NewGuid()));
    }

    private static Task<long> LimitAsync(RecordsHouse house, long pages) =>
        house.LookAsync(records => ScalarAsync(records.Database, $"PRAGMA max_page_count={pages.ToString(CultureInfo.InvariantCulture)}"));

    private static async Task<long> ScalarAsync(Microsoft.EntityFrameworkCore.Infrastructure.DatabaseFacade database, string question)
    {
        await using System.Data.Common.DbCommand command = database.GetDbConnection().CreateCommand();
        command.CommandText = question;
        return Convert.ToInt64(await command.ExecuteScalarAsync(), CultureInfo.InvariantCulture);
    }
}
