using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.History;
using RehabTrack.Records.Imports;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Tests.House;

namespace RehabTrack.Records.Tests.History;

public sealed class TrailTests
{
    [Fact]
    public async Task Every_line_has_the_next_number_and_continues_from_the_one_before()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        await house.CaseAsync((await house.HorseAsync()).Id);

        ChangeRecord[] lines = await house.LinesAsync();

        Assert.True(lines.Length >= 4);
        Assert.Equal(Enumerable.Range(1, lines.Length).Select(number => (long?)number), lines.Select(line => line.Number));
        Assert.Equal(lines[..^1].Select(Hex), lines[1..].Select(line => Convert.ToHexString(line.PreviousHash!)));
        TrailCheck check = await house.VerifyAsync();
        Assert.Null(check.FirstBreak);
        Assert.Equal((lines.Length, "Hollin Down Horse Practice"), (check.Lines, check.Practice));
        Assert.Equal(new TrailAnchor(lines.Length, Hex(lines[^1]).ToLowerInvariant()), check.End);
    }

    [Fact]
    public void The_hashes_are_those_that_the_description_gives()
    {
        // docs/audit.md, "An example"; reckoned there with another language's library.
        ChangeRecord line = new()
        {
            Id = Guid.Parse("01900000-0000-7000-8000-000000000001"),
            PracticeId = Guid.Parse("01900000-0000-7000-8000-0000000000aa"),
            Number = 1,
            At = new DateTime(2026, 11, 24, 9, 0, 0, DateTimeKind.Utc).AddTicks(1),
            PersonId = Guid.Parse("01900000-0000-7000-8000-0000000000bb"),
            CommandId = Guid.Parse("01900000-0000-4000-8000-0000000000cc"),
            UseCase = "SaveHorse",
            Kind = "Horse",
            RecordId = Guid.Parse("01900000-0000-7000-8000-0000000000dd"),
            AfterJson = """{"name":"Élan"}""",
            Salt = [.. Enumerable.Range(0, TrailHash.SaltBytes).Select(at => (byte)at)],
            PreviousHash = TrailHash.BeforeFirst,
        };
        line.BodyHash = TrailHash.OfBody(line.Salt, line.BeforeJson, line.AfterJson);

        Assert.Equal("a531a88caafa997b9bff2902260a66e397c1c984e5eda318fe22daf70bac02f8", Convert.ToHexStringLower(line.BodyHash));
        Assert.Equal("e114c21e703dc3e1540a5384ac472ee363acf0cde4d98ac98b7b8853bc0dbd43", Convert.ToHexStringLower(TrailHash.OfLine(line)));
    }

    [Fact]
    public async Task An_import_writes_one_chain_with_what_is_written_around_it()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        await house.HorseAsync("Before It");
        Assert.True(
            (
                await house
                    .Get<ApplyImport>()
                    .ExecuteAsync(
                        house.Vet,
                        new ApplyImportInput
                        {
                            CommandId = Guid.NewGuid(),
                            Cases = [Files.Healing("Vane LH", new("Thistle Vane", null, null))],
                        }
                    )
            ).Succeeded
        );
        await house.HorseAsync("After It");

        TrailCheck check = await house.VerifyAsync();

        Assert.Null(check.FirstBreak);
        Assert.Equal((await house.LinesAsync()).Length, check.Lines);
    }

    [Fact]
    public async Task Twenty_writers_at_once_keep_one_chain()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        const int Writers = 20;
        const int Each = 5;

        await Task.WhenAll(
            Enumerable
                .Range(0, Writers)
                .Select(writer =>
                    Task.Run(async () =>
                    {
                        for (int at = 0; at < Each; at++)
                        {
                            await house.HorseAsync($"Horse {writer} {at}");
                            await house.Get<AccessBook>().NoteAsync(house.Vet.PracticeId, house.Vet.PersonId, AccessEvent.SignedIn);
                        }
                    })
                )
        );

        TrailCheck check = await house.VerifyAsync();
        ChangeRecord[] lines = await house.LinesAsync();
        Assert.Null(check.FirstBreak);
        Assert.Equal(lines.Length, check.Lines);
        Assert.Equal(Writers * Each, lines.Count(line => line.Kind == "Horse"));
        Assert.Equal(Writers * Each, lines.Count(line => line.Kind == "Access"));
    }

    [Fact]
    public async Task Each_practice_has_a_trail_of_its_own()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Actor other = await house.FoundSecondPracticeAsync();
        await house.HorseAsync();

        Assert.Equal(1, (await house.LinesAsync(other.PracticeId))[0].Number);
        Assert.Null((await house.VerifyAsync()).FirstBreak);
    }

    [Fact]
    public async Task Nothing_is_written_to_the_trail_outside_a_transaction()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();

        await Assert.ThrowsAsync<InvalidOperationException>(() =>
            house.LookAsync(records =>
            {
                records.Enter(house.Vet.PracticeId, new Writer(house.Vet.PersonId, DateTime.UnixEpoch, Guid.NewGuid(), "Test"));
                records.Yards.Add(
                    new YardRecord
                    {
                        Id = Guid.NewGuid(),
                        Name = "A",
                        FoldedName = "a",
                    }
                );
                return records.SaveChangesAsync();
            })
        );
    }

    [Theory]
    [InlineData("\"At\" = '2020-01-01 00:00:00'")]
    [InlineData("\"PersonId\" = '01900000-0000-7000-8000-0000000000BB'")]
    [InlineData("\"UseCase\" = 'Other'")]
    [InlineData("\"Kind\" = 'Other'")]
    [InlineData("\"RecordId\" = '01900000-0000-7000-8000-0000000000BB'")]
    [InlineData("\"CaseId\" = '01900000-0000-7000-8000-0000000000BB'")]
    [InlineData("\"CommandId\" = '01900000-0000-7000-8000-0000000000BB'")]
    [InlineData("\"BeforeJson\" = '[]'")]
    [InlineData("\"AfterJson\" = '[]'")]
    [InlineData("\"AfterJson\" = '', \"Salt\" = NULL")]
    [InlineData("\"Salt\" = x'00'")]
    [InlineData("\"BodyHash\" = x'00'")]
    [InlineData("\"Hash\" = x'00'")]
    public async Task A_changed_field_is_told_with_number_and_time(string set)
    {
        await using RecordsHouse house = await TamperedAsync($"UPDATE \"Change\" SET {set} WHERE \"Number\" = 4");

        TrailBreak broken = (await house.VerifyAsync()).FirstBreak!;

        Assert.Equal((4, TrailFault.Changed), (broken.Number, broken.Why));
        DateTime at = (await house.LinesAsync()).Single(line => line.Number == 4).At;
        Assert.Equal(at, broken.At);
    }

    [Theory]
    [InlineData("DELETE FROM \"Change\" WHERE \"Number\" = 4", 4, TrailFault.Missing)]
    [InlineData("DELETE FROM \"Change\" WHERE \"Number\" = 1", 1, TrailFault.Missing)]
    [InlineData("UPDATE \"Change\" SET \"Number\" = 9 - \"Number\" WHERE \"Number\" IN (4, 5)", 4, TrailFault.OutOfOrder)]
    [InlineData("UPDATE \"Change\" SET \"PreviousHash\" = zeroblob(32) WHERE \"Number\" = 4", 4, TrailFault.OutOfOrder)]
    [InlineData("UPDATE \"Change\" SET \"Number\" = 4 WHERE \"Number\" = 5", 4, TrailFault.OutOfOrder)]
    [InlineData(
        "UPDATE \"Change\" SET \"Number\" = NULL WHERE \"Number\" = (SELECT max(\"Number\") FROM \"Change\")",
        null,
        TrailFault.WithoutNumber
    )]
    public async Task Lines_that_are_taken_out_exchanged_or_put_in_are_told(string statement, int? number, TrailFault why)
    {
        await using RecordsHouse house = await TamperedAsync(statement);

        TrailBreak broken = (await house.VerifyAsync()).FirstBreak!;

        Assert.Equal((number, why), (broken.Number, broken.Why));
        Assert.NotNull(broken.At);
    }

    [Fact]
    public async Task A_line_that_is_put_in_with_a_number_and_a_made_up_hash_is_told()
    {
        await using RecordsHouse house = await TamperedAsync(
            """
            INSERT INTO "Change" ("Id", "PracticeId", "Number", "At", "PersonId", "CommandId", "UseCase", "Kind", "RecordId", "AfterJson",
                "Salt", "BodyHash", "PreviousHash", "Hash")
            SELECT 'FFFFFFFF-0000-7000-8000-000000000001', "PracticeId", "Number" + 1, "At", "PersonId", "CommandId", "UseCase", "Kind",
                "RecordId", "AfterJson", "Salt", "BodyHash", "Hash", x'00'
            FROM "Change" ORDER BY "Number" DESC LIMIT 1
            """
        );

        TrailBreak broken = (await house.VerifyAsync()).FirstBreak!;

        Assert.Equal(((await house.LinesAsync()).Length, TrailFault.Changed), ((int)broken.Number!, broken.Why));
    }

    [Fact]
    public async Task An_end_that_was_cut_off_is_told_to_whoever_noted_it_and_to_nobody_else()
    {
        await using RecordsHouse house = await FilledAsync();
        TrailAnchor end = (await house.VerifyAsync()).End!;

        Assert.Null((await house.VerifyAsync(noted: end)).FirstBreak);
        await house.TamperAsync($"DELETE FROM \"Change\" WHERE \"Number\" > {end.Number - 2}");

        Assert.Null((await house.VerifyAsync()).FirstBreak);
        TrailBreak broken = (await house.VerifyAsync(noted: end)).FirstBreak!;
        Assert.Equal((end.Number, TrailFault.NotAsNoted), (broken.Number, broken.Why));
    }

    [Fact]
    public async Task A_trail_that_was_written_anew_is_told_to_whoever_noted_a_line_of_it()
    {
        await using RecordsHouse house = await FilledAsync();
        TrailAnchor noted = (await house.VerifyAsync()).End!;
        ChangeRecord[] lines = await house.LinesAsync();
        TrailChain forged = TrailChain.AtBeginning();
        List<string> statements = [];
        foreach (ChangeRecord line in lines)
        {
            line.UseCase = line.Number == 3 ? "Forged" : line.UseCase;
            forged.Append(line);
            statements.Add(
                $"""
                UPDATE "Change" SET "UseCase" = '{line.UseCase}', "Salt" = x'{Convert.ToHexString(line.Salt!)}',
                    "BodyHash" = x'{Convert.ToHexString(line.BodyHash!)}', "PreviousHash" = x'{Convert.ToHexString(line.PreviousHash!)}',
                    "Hash" = x'{Hex(line)}' WHERE "Number" = {line.Number}
                """
            );
        }

        await house.TamperAsync([.. statements]);

        Assert.Null((await house.VerifyAsync()).FirstBreak);
        Assert.Equal(TrailFault.NotAsNoted, (await house.VerifyAsync(noted)).FirstBreak!.Why);
        Assert.Equal(TrailFault.NotAsNoted, (await house.VerifyAsync(from: noted)).FirstBreak!.Why);
    }

    [Fact]
    public async Task A_check_from_a_noted_line_on_walks_only_what_came_later()
    {
        await using RecordsHouse house = await FilledAsync();
        TrailAnchor noted = (await house.VerifyAsync()).End!;
        await house.HorseAsync("Later");

        TrailCheck check = await house.VerifyAsync(from: noted);

        Assert.Null(check.FirstBreak);
        Assert.Equal((1, noted.Number + 1), (check.Lines, check.End!.Number));
    }

    [Fact]
    public async Task Emptied_words_are_told_unless_a_line_says_that_they_were_erased()
    {
        await using RecordsHouse house = await FilledAsync();
        await house.PersonAsync("Wren Ashby", Role.Owner);
        Guid owner = (await house.LinesAsync()).Last(line => line.Kind == "Person").RecordId;
        await house.LookAsync(async records =>
        {
            records.Enter(house.Vet.PracticeId, new Writer(house.Vet.PersonId, DateTime.UnixEpoch, Guid.NewGuid(), "Test"));
            await using var transaction = await records.Database.BeginTransactionAsync();
            IQueryable<ChangeRecord> lines = records.Changes.Where(line => line.RecordId == owner);
            Assert.Equal(1, await Erasure.EmptyAsync(records, lines, ErasureReason.PersonErased, owner, default));
            await transaction.CommitAsync();
            return true;
        });

        Assert.Null((await house.VerifyAsync()).FirstBreak);
        ChangeRecord emptied = (await house.LinesAsync()).Single(line => line.RecordId == owner && line.Kind == "Person");
        Assert.Equal((null, "", null), (emptied.BeforeJson, emptied.AfterJson, emptied.Salt));
        await house.TamperAsync(
            "UPDATE \"Change\" SET \"AfterJson\" = '', \"BeforeJson\" = NULL, \"Salt\" = NULL WHERE \"Kind\" = 'Person' AND \"Number\" = 2"
        );
        TrailBreak broken = (await house.VerifyAsync()).FirstBreak!;
        Assert.Equal((2, TrailFault.EmptiedUnsaid), (broken.Number, broken.Why));
    }

    [Theory]
    [InlineData("UPDATE \"Change\" SET \"AfterJson\" = '', \"BeforeJson\" = NULL, \"Salt\" = NULL WHERE \"Kind\" = 'Horse'")]
    [InlineData("UPDATE \"Change\" SET \"AfterJson\" = '[]', \"BeforeJson\" = NULL, \"Salt\" = NULL WHERE \"Kind\" = 'Person'")]
    [InlineData("UPDATE \"Change\" SET \"Number\" = 99 WHERE \"Number\" = 1")]
    [InlineData("UPDATE \"Change\" SET \"Hash\" = x'00' WHERE \"Number\" = 1")]
    public async Task The_database_lets_nothing_of_the_trail_be_changed_but_a_persons_words_be_emptied(string statement)
    {
        await using RecordsHouse house = await FilledAsync();

        SqliteException refused = await Assert.ThrowsAsync<SqliteException>(() =>
            house.LookAsync(records => records.Database.ExecuteSqlRawAsync(statement))
        );

        Assert.Contains("append-only", refused.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("1:" + Zeros, true)]
    [InlineData(" 12:" + Zeros + " ", true)]
    [InlineData("0:" + Zeros, false)]
    [InlineData("-1:" + Zeros, false)]
    [InlineData("1:00", false)]
    [InlineData("1", false)]
    [InlineData("", false)]
    [InlineData(null, false)]
    public void An_anchor_is_a_number_and_a_hash(string? text, bool isOne)
    {
        Assert.Equal(isOne, TrailAnchor.Parse(text) is { } anchor && anchor.ToString() == text!.Trim());
    }

    private const string Zeros = "0000000000000000000000000000000000000000000000000000000000000000";

    private static string Hex(ChangeRecord line) => Convert.ToHexString(line.Hash!);

    private static async Task<RecordsHouse> FilledAsync()
    {
        RecordsHouse house = await RecordsHouse.BuildAsync();
        await house.CaseAsync((await house.HorseAsync()).Id);
        await house.HorseAsync("Second");
        await house.HorseAsync("Third");
        return house;
    }

    private static async Task<RecordsHouse> TamperedAsync(params string[] statements)
    {
        RecordsHouse house = await FilledAsync();
        Assert.Null((await house.VerifyAsync()).FirstBreak);
        await house.TamperAsync(statements);
        return house;
    }
}
