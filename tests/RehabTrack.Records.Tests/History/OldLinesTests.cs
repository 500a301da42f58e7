using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.History;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Sqlite;
using RehabTrack.Records.Tests.House;

namespace RehabTrack.Records.Tests.History;

public sealed class OldLinesTests
{
    private const string Unchain =
        """UPDATE "Change" SET "Number" = NULL, "Salt" = NULL, "BodyHash" = NULL, "PreviousHash" = NULL, "Hash" = NULL""";

    [Fact]
    public async Task Lines_of_before_are_chained_in_the_order_of_their_making_at_the_next_start()
    {
        await using RecordsHouse house = await UnchainedAsync();
        string[] before = [.. (await house.LinesAsync()).OrderBy(line => line.Id).Select(Said)];

        await house.Get<SqliteStart>().RunAsync();

        ChangeRecord[] lines = await house.LinesAsync();
        Assert.Equal(before, lines.Select(Said));
        Assert.Null((await house.VerifyAsync()).FirstBreak);
        Assert.Equal(before.Length, (await house.VerifyAsync()).Lines);
    }

    [Fact]
    public async Task A_start_that_is_stopped_while_chaining_leaves_nothing_and_is_done_again()
    {
        await using RecordsHouse house = await UnchainedAsync();
        // The third line cannot be written: what a machine that stops there leaves.
        await house.LookAsync(records =>
            records.Database.ExecuteSqlRawAsync(
                """
                CREATE TRIGGER "stop" BEFORE UPDATE ON "Change" WHEN NEW."Number" = 3 BEGIN SELECT RAISE(ABORT, 'stopped'); END
                """
            )
        );

        await Assert.ThrowsAnyAsync<Exception>(() => house.Get<SqliteStart>().RunAsync());

        Assert.All(await house.LinesAsync(), line => Assert.Null(line.Number));
        await house.LookAsync(records => records.Database.ExecuteSqlRawAsync("DROP TRIGGER \"stop\""));
        await house.Get<SqliteStart>().RunAsync();
        Assert.Null((await house.VerifyAsync()).FirstBreak);
    }

    [Fact]
    public async Task A_line_without_a_number_that_comes_later_is_not_chained_by_a_start()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        await house.HorseAsync();
        await house.TamperAsync(
            """
            UPDATE "Change" SET "Number" = NULL, "Hash" = NULL WHERE "Number" = (SELECT max("Number") FROM "Change")
            """
        );

        await house.LookAsync(records =>
            records.Database.ExecuteSqlRawAsync(
                """CREATE UNIQUE INDEX "IX_Change_PracticeId_Number" ON "Change" ("PracticeId", "Number") WHERE "Number" IS NOT NULL"""
            )
        );
        await house.Get<SqliteStart>().RunAsync();

        Assert.Equal(TrailFault.WithoutNumber, (await house.VerifyAsync()).FirstBreak!.Why);
    }

    private static string Said(ChangeRecord line) => $"{line.Id} {line.At:O} {line.UseCase} {line.BeforeJson} {line.AfterJson}";

    private static async Task<RecordsHouse> UnchainedAsync()
    {
        RecordsHouse house = await RecordsHouse.BuildAsync();
        await house.CaseAsync((await house.HorseAsync()).Id);
        await house.LookAsync(async records =>
        {
            await records.Database.ExecuteSqlRawAsync("DROP TRIGGER \"Change_is_not_updated\"");
            return await records.Database.ExecuteSqlRawAsync(Unchain);
        });
        return house;
    }
}
