using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Watch;
using RehabTrack.Records.Imports;
using RehabTrack.Records.Overview;
using RehabTrack.Records.Room;
using RehabTrack.Records.Tests.House;
using RehabTrack.Records.Watch;

namespace RehabTrack.Records.Tests.Overview;

public sealed class GetOverviewTests
{
    [Fact]
    public async Task It_says_who_is_overdue_who_is_due_soon_and_who_is_not()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        // Today is 24 November 2026, the interval 60 days, soon is 14 days.
        await SignedAsync(house, "Overdue by one day", new DateOnly(2026, 9, 24));
        await SignedAsync(house, "Due today", new DateOnly(2026, 9, 25));
        await SignedAsync(house, "Due in fourteen days", new DateOnly(2026, 10, 9));
        await SignedAsync(house, "Due in fifteen days", new DateOnly(2026, 10, 10));

        OverviewView overview = (await house.Get<GetOverview>().ExecuteAsync(house.Vet, NoInput.Value)).Value;

        Assert.Equal(["Due today", "Due in fourteen days"], overview.Soon.Select(row => row.HorseName));
        Assert.Equal((1, 2, 4, 4), (overview.OverdueCount, overview.SoonCount, overview.HorseCount, overview.OpenCaseCount));
        StandingRow overdue = Assert.Single((await house.Get<ListStanding>().ExecuteAsync(house.Vet, 1)).Value.Rows);
        Assert.Equal("Overdue by one day", overdue.HorseName);
        Assert.Equal(
            (StandingKind.RecheckOverdue, new DateOnly(2026, 11, 23)),
            (overdue.Findings[0].Finding.Kind, overdue.Findings[0].Finding.Since)
        );
    }

    [Fact]
    public async Task Today_is_the_practices_date_not_the_servers()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        house.Time.SetUtcNow(new DateTimeOffset(2026, 11, 24, 23, 30, 0, TimeSpan.Zero));

        OverviewView overview = (await house.Get<GetOverview>().ExecuteAsync(house.Vet, NoInput.Value)).Value;

        // Vienna is one hour ahead of UTC in winter.
        Assert.Equal(new DateOnly(2026, 11, 25), overview.Today);
    }

    [Fact]
    public async Task A_worsening_case_is_first_to_need_a_look_and_imported_ones_are_named_as_followed_nowhere()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        await ImportAsync(
            house,
            Files.Healing("Calm", new("Calm", null, null)),
            Files.Case(
                "Worse",
                new("Worse", null, null),
                ("2026-03-01", [(10, 1.4, 0), (12, 1.5, 0.3), (14, 1.3, 0)]),
                ("2026-05-01", [(10, 1.4, 0), (12, 1.6, 0.6), (14, 1.3, 0)]),
                ("2026-07-01", [(10, 1.4, 0), (12, 1.8, 1.0), (14, 1.3, 0)])
            )
        );

        OverviewView overview = (await house.Get<GetOverview>().ExecuteAsync(house.Vet, NoInput.Value)).Value;

        StandingPage standing = (await house.Get<ListStanding>().ExecuteAsync(house.Vet, 1)).Value;
        Assert.Equal(("Worse", Verdict.Worsening), (standing.Rows[0].HorseName, standing.Rows[0].Cases[0].Summary!.Verdict));
        Assert.Equal(2, overview.OnlyHistoryCount);
        Assert.Equal((0, 0), (overview.OverdueCount, overview.SoonCount));
    }

    [Fact]
    public async Task What_only_an_earlier_examination_said_asks_for_no_look_today()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        await ImportAsync(
            house,
            Files.Case(
                "Calm again",
                new("Calm again", null, null),
                ("2026-01-01", [(10, 1.4, 0), (14, 1.5, 0.8), (18, 1.3, 0)]),
                ("2026-03-01", [(10, 1.4, 0), (14, 1.9, 0.5), (18, 1.3, 0)]),
                ("2026-05-01", [(10, 1.4, 0), (14, 1.5, 0.3), (18, 1.3, 0)]),
                ("2026-07-01", [(10, 1.4, 0), (14, 1.5, 0.18), (18, 1.3, 0)])
            )
        );

        OverviewView overview = (await house.Get<GetOverview>().ExecuteAsync(house.Vet, NoInput.Value)).Value;

        Assert.Equal(1, overview.OpenCaseCount);
        Assert.Empty((await house.Get<ListStanding>().ExecuteAsync(house.Vet, 1)).Value.Rows);
    }

    [Fact]
    public async Task Drafts_wait_and_an_archived_horse_is_counted_nowhere()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Saved horse = await house.HorseAsync();
        Saved injury = await house.CaseAsync(horse.Id);
        await house.SignedAsync(injury.Id, Wishes.Content(new DateOnly(2026, 6, 1), (10, 0), (12, 0.4)));
        await house.DraftAsync(injury.Id, Wishes.Content(new DateOnly(2026, 11, 20), (10, 0)));
        OverviewView before = (await house.Get<GetOverview>().ExecuteAsync(house.Vet, NoInput.Value)).Value;

        await house.Get<Records.Horses.ArchiveHorse>().ExecuteAsync(house.Vet, new RecordInput(Guid.NewGuid(), horse.Id, horse.Version));

        OverviewView after = (await house.Get<GetOverview>().ExecuteAsync(house.Vet, NoInput.Value)).Value;
        DraftRow draft = Assert.Single(before.Drafts);
        Assert.Equal(("Thistle Vane", "Edda Marrow", new DateOnly(2026, 11, 20)), (draft.HorseName, draft.EnteredBy, draft.Date));
        Assert.Equal(1, before.OverdueCount);
        Assert.Equal((0, 0, 0, 0), (after.OverdueCount, after.HorseCount, after.OpenCaseCount, after.Drafts.Count));
    }

    private static Task ImportAsync(RecordsHouse house, params IReadOnlyList<CaseFile> files) =>
        house.Get<ApplyImport>().ExecuteAsync(house.Vet, new ApplyImportInput { CommandId = Guid.NewGuid(), Cases = files });

    private static async Task SignedAsync(RecordsHouse house, string horse, DateOnly date)
    {
        Guid caseId = (await house.CaseAsync((await house.HorseAsync(horse)).Id)).Id;
        await house.SignedAsync(caseId, Wishes.Content(date, (10, 0), (12, 0.4)));
    }
}
