using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Tests.House;

namespace RehabTrack.Records.Tests.Keeping;

public sealed class BulkInsertTests
{
    [Fact]
    public async Task What_is_written_in_bulk_reads_back_as_what_the_context_wrote()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        HorseRecord bulk = Horse("Élan", null);
        HorseRecord single = Horse("Élan", null);
        await house.LookAsync(async records =>
        {
            await using var transaction = await records.Database.BeginTransactionAsync();
            using (BulkInsert<HorseRecord> pen = new(records))
            {
                pen.Write(bulk);
            }

            records.Enter(house.Vet.PracticeId, new Writer(house.Vet.PersonId, DateTime.UnixEpoch, Guid.NewGuid(), "Test"));
            records.Horses.Add(single);
            await records.SaveChangesAsync();
            await transaction.CommitAsync();
            return true;
        });

        HorseRecord[] read = await house.LookAsync(records => records.Horses.AsNoTracking().OrderBy(horse => horse.Id).ToArrayAsync());

        Assert.Equal([bulk.Id, single.Id], read.Select(horse => horse.Id));
        Assert.Equal(Told(read[1]), Told(read[0]));
        Assert.All(read, horse => Assert.NotEqual(Guid.Empty, horse.Version));
        Assert.Equal(new DateOnly(2015, 4, 2), read[0].BirthDate);
        Assert.Equal(DateTimeKind.Utc, read[0].ArchivedAt!.Value.Kind);
    }

    [Fact]
    public async Task A_reading_of_another_practice_is_not_written()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();

        await Assert.ThrowsAsync<InvalidOperationException>(() =>
            house.LookAsync(async records =>
            {
                await using var transaction = await records.Database.BeginTransactionAsync();
                using BulkInsert<ReadingRecord> pen = new(records);
                pen.Write(ReadingMap.New(Guid.NewGuid(), Guid.NewGuid(), Guid.NewGuid(), 0, new Rechecks.Exams.ReadingDraft()));
                return true;
            })
        );
    }

    private static HorseRecord Horse(string name, Guid? yard) =>
        new()
        {
            Id = NewId.At(new DateTime(2026, 11, 24, 9, 0, 0, DateTimeKind.Utc)),
            Name = name,
            FoldedName = Folded.Of(name),
            Search = Folded.Of(name),
            BirthDate = new DateOnly(2015, 4, 2),
            BirthYear = 2015,
            Sex = Sex.Mare,
            YardId = yard,
            ArchivedAt = new DateTime(2026, 11, 24, 9, 0, 0, DateTimeKind.Utc),
        };

    private static object Told(HorseRecord horse) =>
        (
            horse.PracticeId,
            horse.Name,
            horse.FoldedName,
            horse.Search,
            horse.BirthDate,
            horse.BirthYear,
            horse.Sex,
            horse.YardId,
            horse.ArchivedAt
        );
}
