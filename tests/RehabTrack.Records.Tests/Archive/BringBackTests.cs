using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Care;
using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Rechecks.Repeats;
using RehabTrack.Records.Archive;
using RehabTrack.Records.Care;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Covers;
using RehabTrack.Records.Examinations;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.Horses;
using RehabTrack.Records.People;
using RehabTrack.Records.Repeats;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Records.Tests.Bookings;
using RehabTrack.Records.Tests.Exercise;
using RehabTrack.Records.Tests.House;

namespace RehabTrack.Records.Tests.Archive;

/// <summary>What was put away is listed with who did it and when, and comes back as it was.</summary>
public sealed class BringBackTests
{
    private static readonly DateOnly June = new(2026, 6, 1);

    [Fact]
    public async Task A_horse_comes_back_with_its_cases()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Saved horse = await house.HorseAsync();
        Saved injury = await house.CaseAsync(horse.Id);
        await DoneAsync(house, house.Get<ArchiveHorse>(), horse);
        Assert.Equal(0, (await house.Get<FindHorses>().ExecuteAsync(house.Vet, new FindHorsesInput())).Value.Total);

        ArchivedHorse away = await OneAsync<ArchivedHorse>(house, ArchivedKind.Horse);
        Assert.Equal((horse.Id, "Thistle Vane", "Edda Marrow", house.Time.GetUtcNow().UtcDateTime), (away.Id, away.Name, away.By, away.At));
        await DoneAsync(house, house.Get<BringBackHorse>(), Of(away));

        Assert.Equal(1, (await house.Get<FindHorses>().ExecuteAsync(house.Vet, new FindHorsesInput())).Value.Total);
        Assert.False((await house.Get<GetHorse>().ExecuteAsync(house.Vet, horse.Id)).Value.Archived);
        Assert.True((await house.Get<GetCase>().ExecuteAsync(house.Vet, injury.Id)).Succeeded);
        Assert.Empty(await ListAsync(house, ArchivedKind.Horse));
    }

    [Fact]
    public async Task A_horse_whose_chip_another_has_got_meanwhile_stays_away()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        SaveHorseInput chipped = new()
        {
            CommandId = Guid.NewGuid(),
            Name = "Thistle Vane",
            Microchip = "040098100123456",
        };
        Saved first = (await house.Get<SaveHorse>().ExecuteAsync(house.Vet, chipped)).Value;
        Saved away = await DoneAsync(house, house.Get<ArchiveHorse>(), first);
        Assert.True(
            (await house.Get<SaveHorse>().ExecuteAsync(house.Vet, chipped with { CommandId = Guid.NewGuid(), Name = "Bramble" })).Succeeded
        );

        Problem problem = Assert.Single((await AskAsync(house, house.Get<BringBackHorse>(), away)).Problems);

        Assert.Equal(("chip-taken", "Bramble"), (problem.Code, problem.Arguments[1]));
    }

    [Fact]
    public async Task A_record_that_is_not_away_and_one_that_was_read_earlier_are_refused()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Saved horse = await house.HorseAsync();
        Assert.Equal("not-found", (await AskAsync(house, house.Get<BringBackHorse>(), horse)).Codes());

        await DoneAsync(house, house.Get<ArchiveHorse>(), horse);
        Assert.Equal("changed-meanwhile", (await AskAsync(house, house.Get<BringBackHorse>(), horse)).Codes());
    }

    [Fact]
    public async Task A_person_comes_back_and_staff_only_by_whom_staff_may_be_changed()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Actor assistant = await house.PersonAsync("Petra Lowe", Role.Assistant);
        Actor colleague = await house.PersonAsync("Ivo Larch", Role.Vet);
        PersonView vet = (await house.Get<GetPerson>().ExecuteAsync(house.Vet, colleague.PersonId)).Value;
        Saved away = await DoneAsync(house, house.Get<ArchivePerson>(), new Saved(vet.Id, vet.Version));
        Assert.Equal("not-allowed", (await house.Get<ListPeople>().ExecuteAsync(colleague, new ListPeopleInput())).Codes());

        Assert.Equal("vet-only", (await AskAsync(house, house.Get<BringBackPerson>(), away, assistant)).Codes());
        ArchivedPerson listed = await OneAsync<ArchivedPerson>(house, ArchivedKind.Person);
        Assert.Equal(("Ivo Larch", Role.Vet, true, "Edda Marrow"), (listed.Name, listed.Role, listed.CanSignIn, listed.By));
        await DoneAsync(house, house.Get<BringBackPerson>(), Of(listed));

        Assert.True((await house.Get<ListPeople>().ExecuteAsync(colleague, new ListPeopleInput())).Succeeded);
    }

    [Fact]
    public async Task Who_was_erased_is_not_listed_and_does_not_come_back()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Saved owner = await house.AddAsync("Quilla Overwater", Role.Owner);
        Saved away = await DoneAsync(house, house.Get<ArchivePerson>(), owner);
        Assert.Single(await ListAsync(house, ArchivedKind.Person));

        PersonErased erased = (
            await house
                .Get<ErasePerson>()
                .ExecuteAsync(house.Vet, new ErasePersonInput(Guid.NewGuid(), away.Id, away.Version, "Erased person"))
        ).Value;
        PersonView left = (await house.Get<GetPerson>().ExecuteAsync(house.Vet, erased.Id)).Value;

        Assert.Empty(await ListAsync(house, ArchivedKind.Person));
        Assert.Equal("bring-back-erased", (await AskAsync(house, house.Get<BringBackPerson>(), new Saved(left.Id, left.Version))).Codes());
    }

    [Fact]
    public async Task A_case_comes_back_once_its_horse_is_back()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Saved horse = await house.HorseAsync();
        Saved injury = await house.CaseAsync(horse.Id);
        await house.SignedAsync(injury.Id, Wishes.Content(June, (10, 0), (12, 0.4)));
        CaseView read = (await house.Get<GetCase>().ExecuteAsync(house.Vet, injury.Id)).Value;
        Saved away = await DoneAsync(house, house.Get<ArchiveCase>(), new Saved(read.Id, read.Version));
        Saved horseAway = await DoneAsync(house, house.Get<ArchiveHorse>(), horse);
        ArchivedCase listed = await OneAsync<ArchivedCase>(house, ArchivedKind.Case);
        Assert.Equal(("Thistle Vane", 1, ArchivedKind.Horse), (listed.Horse, listed.Examinations, listed.After));

        Assert.Equal("bring-back-horse-first", (await AskAsync(house, house.Get<BringBackCase>(), away)).Codes());
        await DoneAsync(house, house.Get<BringBackHorse>(), horseAway);
        Assert.Null((await OneAsync<ArchivedCase>(house, ArchivedKind.Case)).After);
        await DoneAsync(house, house.Get<BringBackCase>(), away);

        CaseView back = (await house.Get<GetCase>().ExecuteAsync(house.Vet, injury.Id)).Value;
        Assert.Equal((1, 1), (back.Examinations.Count, back.Summary!.ExaminationCount));
    }

    [Fact]
    public async Task The_summary_of_a_case_that_comes_back_is_that_of_today()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Saved injury = await house.CaseAsync((await house.HorseAsync()).Id);
        await house.SignedAsync(injury.Id, Wishes.Content(June, (10, 0), (12, 0.4)));
        CaseView read = (await house.Get<GetCase>().ExecuteAsync(house.Vet, injury.Id)).Value;
        Saved away = await DoneAsync(house, house.Get<ArchiveCase>(), new Saved(read.Id, read.Version));
        house.Time.Advance(TimeSpan.FromDays(3));
        await DoneAsync(house, house.Get<BringBackCase>(), away);

        DateOnly asOf = await house.LookAsync(records =>
            records.CaseSummaries.Where(summary => summary.CaseId == injury.Id).Select(summary => summary.AsOf).SingleAsync()
        );

        Assert.Equal(Diary.Today.AddDays(3), asOf);
    }

    [Fact]
    public async Task A_case_that_was_away_when_a_vet_signed_stops_growth_once_it_is_back()
    {
        await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
        Saved other = await at.House.CaseAsync(at.Horse);
        await at.House.SignedAsync(other.Id, Wishes.Content(ExerciseHouse.Today.AddDays(-60), (16, 0.1), (18, 0.3)));
        CaseView read = (await at.House.Get<GetCase>().ExecuteAsync(at.House.Vet, other.Id)).Value;
        Saved away = await DoneAsync(at.House, at.House.Get<ArchiveCase>(), new Saved(read.Id, read.Version));
        Assert.True((await at.SignAsync(ExerciseHouse.Plan)).Succeeded);
        at.House.Time.Advance(TimeSpan.FromDays(1));
        async Task<bool> IsHeldAsync() => (await at.YardAsync()).Permit.Reasons.Any(reason => reason.Code == PermitReasonCode.BasisChanged);
        Assert.False(await IsHeldAsync());

        await DoneAsync(at.House, at.House.Get<BringBackCase>(), away);

        Assert.True(await IsHeldAsync());
    }

    [Fact]
    public async Task A_case_that_the_last_signature_knew_of_holds_nothing_when_it_comes_back()
    {
        await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
        await at.House.SignedAsync(at.Case, Wishes.Content(ExerciseHouse.Today.AddDays(-60), (16, 0.1), (18, 0.3), (20, 0)));
        Assert.True((await at.SignAsync(ExerciseHouse.Plan)).Succeeded);
        at.House.Time.Advance(TimeSpan.FromDays(1));
        Permit before = (await at.YardAsync()).Permit;
        CaseView read = (await at.House.Get<GetCase>().ExecuteAsync(at.House.Vet, at.Case)).Value;

        Saved away = await DoneAsync(at.House, at.House.Get<ArchiveCase>(), new Saved(read.Id, read.Version));
        Assert.Empty((await at.House.Get<GetYard>().ExecuteAsync(at.Trainer, NoInput.Value)).Value);
        await DoneAsync(at.House, at.House.Get<BringBackCase>(), away);

        Assert.Equal(before.Work, (await at.YardAsync()).Permit.Work);
        Assert.DoesNotContain((await at.YardAsync()).Permit.Reasons, reason => reason.Code == PermitReasonCode.BasisChanged);
    }

    [Fact]
    public async Task A_draft_comes_back_with_all_that_was_typed()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Saved horse = await house.HorseAsync();
        Saved injury = await house.CaseAsync(horse.Id);
        SavedDraft draft = await house.DraftAsync(injury.Id, Wishes.Content(June, (10, 0), (12, 0.4)));
        ExaminationView before = (await house.Get<GetExamination>().ExecuteAsync(house.Vet, draft.Id)).Value;
        await DoneAsync(house, house.Get<ArchiveDraft>(), new Saved(draft.Id, draft.Version));

        ArchivedDraft away = await OneAsync<ArchivedDraft>(house, ArchivedKind.Draft);
        Assert.Equal(
            ("Thistle Vane", June, 2, "Edda Marrow", "Edda Marrow"),
            (away.Horse, away.Date, away.Readings, away.EnteredBy, away.By)
        );
        await DoneAsync(house, house.Get<BringBackDraft>(), Of(away));

        ExaminationView back = (await house.Get<GetExamination>().ExecuteAsync(house.Vet, draft.Id)).Value;
        Assert.Equivalent(before.Content, back.Content, strict: true);
    }

    [Fact]
    public async Task The_drafts_of_a_horse_are_its_own()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Saved horse = await house.HorseAsync();
        foreach (Guid of in (Guid[])[horse.Id, (await house.HorseAsync()).Id])
        {
            SavedDraft draft = await house.DraftAsync((await house.CaseAsync(of)).Id, Wishes.Content(June, (10, 0)));
            await DoneAsync(house, house.Get<ArchiveDraft>(), new Saved(draft.Id, draft.Version));
        }

        Assert.Equal(2, (await ListAsync(house, ArchivedKind.Draft)).Count);
        Assert.Single(await ListAsync(house, ArchivedKind.Draft, horse.Id));
    }

    [Fact]
    public async Task A_draft_of_a_case_or_a_horse_that_is_away_waits_for_it()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Saved horse = await house.HorseAsync();
        Saved injury = await house.CaseAsync(horse.Id);
        SavedDraft draft = await house.DraftAsync(injury.Id, Wishes.Content(June, (10, 0)));
        Saved away = await DoneAsync(house, house.Get<ArchiveDraft>(), new Saved(draft.Id, draft.Version));
        await DoneAsync(house, house.Get<ArchiveCase>(), injury);
        Assert.Equal("bring-back-case-first", (await AskAsync(house, house.Get<BringBackDraft>(), away)).Codes());
        Assert.Equal(ArchivedKind.Case, (await OneAsync<ArchivedDraft>(house, ArchivedKind.Draft)).After);

        await DoneAsync(house, house.Get<ArchiveHorse>(), horse);
        Assert.Equal("bring-back-horse-first", (await AskAsync(house, house.Get<BringBackDraft>(), away)).Codes());
    }

    [Fact]
    public async Task A_draft_that_shows_a_setback_stops_growth_again_though_a_vet_signed_while_it_was_away()
    {
        await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
        await at.House.SignedAsync(at.Case, Wishes.Content(ExerciseHouse.Today.AddDays(-60), (16, 0.1), (18, 0.3), (20, 0)));
        Assert.True((await at.SignAsync(ExerciseHouse.Plan)).Succeeded);
        at.House.Time.Advance(TimeSpan.FromDays(1));
        SavedDraft draft = await at.House.DraftAsync(at.Case, Wishes.Content(ExerciseHouse.Today, (16, 0.1), (18, 0.3), (20, 0.4)));
        Saved away = await DoneAsync(at.House, at.House.Get<ArchiveDraft>(), new Saved(draft.Id, draft.Version));
        at.House.Time.Advance(TimeSpan.FromHours(1));
        Assert.True((await at.DecideAsync(DecisionKind.Hold)).Succeeded);
        async Task<bool> IsHeldAsync() =>
            (await at.YardAsync()).Permit.Reasons.Any(reason => reason.Code == PermitReasonCode.UnsignedSetback);
        Assert.False(await IsHeldAsync());

        at.House.Time.Advance(TimeSpan.FromHours(1));
        await DoneAsync(at.House, at.House.Get<BringBackDraft>(), away);

        Assert.True(await IsHeldAsync());
    }

    [Fact]
    public async Task Care_comes_back_and_why_it_was_away_stays_in_the_history()
    {
        await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
        RecordsHouse house = at.House;
        CareEntry entry = new()
        {
            Kind = CareKind.ShockWave,
            From = ExerciseHouse.Today,
            Words = "three places",
        };
        Saved kept = (
            await house
                .Get<SaveCare>()
                .ExecuteAsync(
                    house.Vet,
                    new SaveCareInput
                    {
                        CommandId = Guid.NewGuid(),
                        HorseId = at.Horse,
                        Entry = entry,
                    }
                )
        ).Value;
        await house
            .Get<ArchiveCare>()
            .ExecuteAsync(house.Vet, new ArchiveCareInput(Guid.NewGuid(), kept.Id, kept.Version, "Another horse"));

        ArchivedCare away = await OneAsync<ArchivedCare>(house, ArchivedKind.Care, at.Horse);
        Assert.Equal(("three places", "Another horse", "Edda Marrow"), (away.Entry.Words, away.Reason, away.By));
        await DoneAsync(house, house.Get<BringBackCare>(), Of(away));

        Assert.Equal("three places", Assert.Single((await house.Get<ListCare>().ExecuteAsync(house.Vet, at.Horse)).Value).Entry.Words);
        Assert.Contains(
            await house.LookAsync(records => records.Changes.Where(line => line.UseCase == "BringBackCare").ToListAsync()),
            line => line.BeforeJson!.Contains("Another horse", StringComparison.Ordinal)
        );
    }

    [Fact]
    public async Task Cover_comes_back_unless_somebody_else_stands_in_or_its_days_are_over()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Guid covering = (await house.PersonAsync("Sorrel Dunn", Role.Vet)).PersonId;
        Task<Outcome<Saved>> SetAsync() =>
            house
                .Get<SaveCover>()
                .ExecuteAsync(
                    house.Vet,
                    new SaveCoverInput(Guid.NewGuid(), house.Vet.PersonId, covering, Diary.Today.AddDays(1), Diary.Today.AddDays(3))
                );
        Saved away = await DoneAsync(house, house.Get<WithdrawCover>(), (await SetAsync()).Value);
        Saved meanwhile = (await SetAsync()).Value;
        Assert.Equal("cover-set-already", (await AskAsync(house, house.Get<BringBackCover>(), away)).Codes());

        Saved gone = await DoneAsync(house, house.Get<WithdrawCover>(), meanwhile);
        Assert.Equal(2, (await ListAsync(house, ArchivedKind.Cover)).Count);
        await DoneAsync(house, house.Get<BringBackCover>(), away);
        Assert.Equal(
            "Sorrel Dunn",
            Assert.Single((await house.Get<ListCovers>().ExecuteAsync(house.Vet, NoInput.Value)).Value).CoveringVet
        );

        house.Time.Advance(TimeSpan.FromDays(4));
        Assert.Empty(await ListAsync(house, ArchivedKind.Cover));
        Assert.Equal("cover-in-the-past", (await AskAsync(house, house.Get<BringBackCover>(), gone)).Codes());
    }

    [Fact]
    public async Task Repeats_that_were_put_away_together_come_back_together()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        RepeatTracing Tracing(string subject, double value) => new(subject, RepeatKind.SameImage, MeasuredSize.LesionArea, null, value);
        await house
            .Get<AddRepeats>()
            .ExecuteAsync(
                house.Vet,
                new AddRepeatsInput { CommandId = Guid.NewGuid(), Tracings = [Tracing("a", 1.2), Tracing("a", 1.1), Tracing("b", 0.4)] }
            );
        IReadOnlyList<RepeatView> entered = (await house.Get<GetRepeats>().ExecuteAsync(house.Vet, NoInput.Value)).Value.Entered;
        await house
            .Get<PutAwayRepeats>()
            .ExecuteAsync(
                house.Vet,
                new PutAwayRepeatsInput { CommandId = Guid.NewGuid(), Ids = [.. entered.Take(2).Select(row => row.Id)] }
            );

        ArchivedRepeats away = await OneAsync<ArchivedRepeats>(house, ArchivedKind.Repeats);
        Assert.Equal([1.2, 1.1], away.Tracings.Select(tracing => tracing.Value));
        Assert.Equal("Edda Marrow", away.By);
        Outcome<int> back = await house
            .Get<BringBackRepeats>()
            .ExecuteAsync(house.Vet, new BringBackRepeatsInput(Guid.NewGuid(), away.Ids));

        Assert.Equal(2, back.Value);
        Assert.Equal(3, (await house.Get<GetRepeats>().ExecuteAsync(house.Vet, NoInput.Value)).Value.Entered.Count);
        Assert.Empty(await ListAsync(house, ArchivedKind.Repeats));
    }

    [Fact]
    public async Task The_list_of_a_horse_holds_what_belongs_to_it_and_counts_each_kind()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Saved horse = await house.HorseAsync();
        Saved injury = await house.CaseAsync(horse.Id);
        Saved another = await house.HorseAsync();
        await DoneAsync(house, house.Get<ArchiveCase>(), injury);
        await DoneAsync(house, house.Get<ArchiveCase>(), await house.CaseAsync(another.Id));

        ArchivedPage all = (await house.Get<ListArchived>().ExecuteAsync(house.Vet, new ListArchivedInput(ArchivedKind.Case))).Value;
        ArchivedPage own = (
            await house.Get<ListArchived>().ExecuteAsync(house.Vet, new ListArchivedInput(ArchivedKind.Case, horse.Id))
        ).Value;

        Assert.Equal((2, 2, null), (all.Things.Count, all.Counts[ArchivedKind.Case], all.Horse));
        Assert.Equal((1, "Thistle Vane"), (own.Counts[ArchivedKind.Case], own.Horse));
        Assert.Equal(injury.Id, Assert.Single(own.Things).Id);
        Assert.Equal(Enum.GetValues<ArchivedKind>(), own.Counts.Keys.Order());
        ArchivedPage counted = (
            await house.Get<ListArchived>().ExecuteAsync(house.Vet, new ListArchivedInput(ArchivedKind.Case, horse.Id, IsCount: true))
        ).Value;
        Assert.Equal((1, 0), (Assert.Single(counted.Counts).Value, counted.Things.Count));
    }

    private static Saved Of(ArchivedThing thing) => new(thing.Id, thing.Version);

    private static Task<Outcome<Saved>> AskAsync(
        RecordsHouse house,
        UseCase<RecordInput, Saved> useCase,
        Saved record,
        Actor? who = null
    ) => useCase.ExecuteAsync(who ?? house.Vet, new RecordInput(Guid.NewGuid(), record.Id, record.Version));

    private static async Task<Saved> DoneAsync(RecordsHouse house, UseCase<RecordInput, Saved> useCase, Saved record)
    {
        Outcome<Saved> outcome = await AskAsync(house, useCase, record);
        return outcome.Value;
    }

    private static async Task<IReadOnlyList<ArchivedThing>> ListAsync(RecordsHouse house, ArchivedKind kind, Guid? horse = null) =>
        (await house.Get<ListArchived>().ExecuteAsync(house.Vet, new ListArchivedInput(kind, horse))).Value.Things;

    private static async Task<T> OneAsync<T>(RecordsHouse house, ArchivedKind kind, Guid? horse = null)
        where T : ArchivedThing => Assert.IsType<T>(Assert.Single(await ListAsync(house, kind, horse)));
}
