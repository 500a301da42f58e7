using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Bookings;
using RehabTrack.Records.Imports;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Practices;
using RehabTrack.Records.Reminders;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Records.Start;
using RehabTrack.Records.Tests.Bookings;
using RehabTrack.Records.Tests.History;
using RehabTrack.Records.Tests.House;

namespace RehabTrack.Records.Tests.Start;

public sealed class ForgetOldWordsTests
{
    private const string Mail = "quilla@overwater.example";
    private const string Said = "left word with the neighbour";

    [Fact]
    public async Task Letters_and_calls_lose_their_words_after_the_days_the_practice_chose_and_the_trail_still_fits()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        await KeepAsync(house, contactDays: 90);
        Guid owner = (await house.AddAsync("Quilla Overwater", Role.Owner, null, Mail)).Id;
        Guid injury = (await house.ExaminedAsync(30)).Id;
        await house
            .Get<NoteCall>()
            .ExecuteAsync(house.Vet, new NoteCallInput(Guid.NewGuid(), injury, CallOutcome.LeftMessage, owner, Said));
        await LetterAsync(house, injury, owner);

        house.Time.Advance(TimeSpan.FromDays(90));
        Assert.Equal(0, await house.Get<ForgetOldWords>().RunAsync());
        Assert.Equal((1, 1), await WordsAsync(house));
        house.Time.Advance(TimeSpan.FromDays(1));

        Assert.Equal(4, await house.Get<ForgetOldWords>().RunAsync());
        Assert.Equal(0, await house.Get<ForgetOldWords>().RunAsync());

        Assert.Equal((0, 0), await WordsAsync(house));
        Assert.DoesNotContain(
            await house.LinesAsync(),
            line =>
                $"{line.BeforeJson}{line.AfterJson}".Contains(Said, StringComparison.Ordinal)
                || (line.Kind != "Person" && line.AfterJson.Contains(Mail, StringComparison.Ordinal))
        );
        Assert.Equal(
            1,
            await house.LookAsync(records =>
                records.Calls.CountAsync(call => call.Outcome == CallOutcome.LeftMessage && call.PersonId == owner)
            )
        );
        Assert.Null((await house.VerifyAsync()).FirstBreak);
    }

    [Fact]
    public async Task A_file_that_nobody_imported_goes_though_no_other_is_handed_in()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        await house
            .Get<StageImportFile>()
            .ExecuteAsync(house.Vet, new StageImportFileInput(Guid.NewGuid(), "past.csv", "case\n"u8.ToArray()));

        house.Time.Advance(TimeSpan.FromDays(30));
        await house.Get<ForgetOldWords>().RunAsync();
        Assert.Equal(1, await house.LookAsync(records => records.ImportFiles.IgnoreQueryFilters().CountAsync()));
        house.Time.Advance(TimeSpan.FromDays(1));
        await house.Get<ForgetOldWords>().RunAsync();

        Assert.Equal(0, await house.LookAsync(records => records.ImportFiles.IgnoreQueryFilters().CountAsync()));
    }

    private static async Task KeepAsync(RecordsHouse house, int contactDays)
    {
        PracticeView practice = (await house.Get<GetPractice>().ExecuteAsync(house.Vet, NoInput.Value)).Value;
        ChangePracticeInput input = ChangePracticeInput.Of(practice, Guid.NewGuid()) with { ContactKeptDays = contactDays };
        Assert.True((await house.Get<ChangePractice>().ExecuteAsync(house.Vet, input)).Succeeded);
    }

    private static async Task LetterAsync(RecordsHouse house, Guid injury, Guid owner) =>
        await house.LookAsync(async records =>
        {
            records.Enter(house.Vet.PracticeId, new Writer(house.Vet.PersonId, DateTime.UnixEpoch, Guid.NewGuid(), "Test"));
            await using var transaction = await records.Database.BeginTransactionAsync();
            records.Reminders.Add(
                new ReminderRecord
                {
                    Id = Guid.NewGuid(),
                    CaseId = injury,
                    PersonId = owner,
                    Mail = Mail,
                    DueOn = Diary.Today,
                    State = ReminderState.Sent,
                    BegunById = house.Vet.PersonId,
                    BegunAt = house.Time.GetUtcNow().UtcDateTime,
                }
            );
            await records.SaveChangesAsync();
            await transaction.CommitAsync();
            return true;
        });

    /// <summary>How many letters still have their address, and how many calls their words.</summary>
    private static async Task<(int Letters, int Calls)> WordsAsync(RecordsHouse house) =>
        (
            await house.LookAsync(records => records.Reminders.IgnoreQueryFilters().CountAsync(letter => letter.Mail != "")),
            await house.LookAsync(records => records.Calls.IgnoreQueryFilters().CountAsync(call => call.Words != null))
        );
}
