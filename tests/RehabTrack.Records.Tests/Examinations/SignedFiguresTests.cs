using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Examinations;
using RehabTrack.Records.Imports;
using RehabTrack.Records.Links;
using RehabTrack.Records.Practices;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Records.Tests.House;

namespace RehabTrack.Records.Tests.Examinations;

public sealed class SignedFiguresTests
{
    private static readonly DateOnly Recheck = new(2026, 9, 1);

    [Fact]
    public async Task A_signature_keeps_what_the_preview_showed_with_who_and_when()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Guid caseId = await HealingCaseAsync(house);
        SavedDraft draft = await house.DraftAsync(caseId, Content(0.1));
        CaseView before = await CaseAsync(house, caseId);
        CaseCourse preview = PreviewOf(before, draft.Id);
        CaseAnalysis seen = Analyse(before, preview);

        Outcome<Saved> signed = await SignAsync(house, draft, HashOf(before, preview));

        Assert.True(signed.Succeeded);
        SignedFiguresView kept = Assert.Single(await KeptAsync(house, caseId));
        Assert.Equal((draft.Id, 1, "Edda Marrow", house.Time.GetUtcNow().UtcDateTime), (kept.ExaminationId, kept.Number, kept.By, kept.At));
        Assert.Equal(CaseAnalyser.EngineVersion, kept.Figures.EngineVersion);
        Assert.Equal(before.Practice.Settings, kept.Figures.Settings);
        Assert.Equal(HashOf(before, preview), kept.Figures.InputHash);
        Assert.Equal(
            (seen.Trend.Verdict, seen.Trend.Reason, seen.Trend.Measure),
            (kept.Figures.Verdict, kept.Figures.Reason, kept.Figures.Measure)
        );
        Assert.Equal(seen.Trend.Window!.RatePercent, kept.Figures.RatePercentPer60Days);
        Assert.Equal(seen.Trend.Series.Select(point => point.Value), kept.Figures.Values.Select(value => value.Value));
        Assert.Equal(
            seen.Links.Tracks.Select(track => (track.Id, track.Steps.Count)),
            kept.Figures.Links.Select(track => (track.Id, track.Places.Count))
        );
        Assert.Equal(seen.Findings.Select(finding => finding.Kind), kept.Figures.Findings.Select(finding => finding.Kind));
        Assert.False(FiguresDifference.Between(kept.Figures, await TodayAsync(house, caseId)).Any);
    }

    [Fact]
    public async Task The_first_signature_of_a_case_keeps_that_there_was_no_rate_yet()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Guid caseId = (await house.CaseAsync((await house.HorseAsync()).Id)).Id;
        await house.SignedAsync(caseId, Content(0.1));

        SeenFigures kept = Assert.Single(await KeptAsync(house, caseId)).Figures;

        Assert.Equal((Verdict.NotYetReadable, VerdictReason.OnlyOneExamination), (kept.Verdict, kept.Reason));
        Assert.Null(kept.RatePercentPer60Days);
        Assert.Single(kept.Values);
        Assert.False(FiguresDifference.Between(kept, await TodayAsync(house, caseId)).Any);
    }

    [Fact]
    public async Task A_signature_that_nothing_can_be_compared_on_keeps_no_measure()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Guid caseId = (await house.CaseAsync((await house.HorseAsync()).Id)).Id;
        await house.SignedAsync(
            caseId,
            new ExaminationContent
            {
                Date = Recheck,
                Readings =
                [
                    new DraftReading(
                        null,
                        new ReadingDraft
                        {
                            Part = Part.Body,
                            LevelCm = 12,
                            LigamentAreaCm2 = 1.5,
                        }
                    ),
                ],
            }
        );

        SeenFigures kept = Assert.Single(await KeptAsync(house, caseId)).Figures;

        Assert.Equal((null, VerdictReason.NoMeasure), (kept.Measure, kept.Reason));
        Assert.Empty(kept.Values);
    }

    [Fact]
    public async Task A_case_that_changed_since_it_was_looked_at_is_not_signed_and_nothing_is_lost()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Guid caseId = await HealingCaseAsync(house);
        SavedDraft draft = await house.DraftAsync(caseId, Content(0.1));
        CaseView looked = await CaseAsync(house, caseId);
        string hash = HashOf(looked, PreviewOf(looked, draft.Id));
        await house.SignedAsync(caseId, Content(0.5) with { Date = Recheck.AddDays(-20) });

        Outcome<Saved> refused = await SignAsync(house, draft, hash);
        CaseView again = await CaseAsync(house, caseId);
        ExaminationView view = (await house.Get<GetExamination>().ExecuteAsync(house.Vet, draft.Id)).Value;

        Assert.Equal("case-changed-since-seen", Assert.Single(refused.Problems).Code);
        Assert.Equal((ExaminationState.Draft, draft.Version), (view.State, view.Version));
        Assert.Equal(3, view.Content.Readings.Count);
        Assert.DoesNotContain(await KeptAsync(house, caseId), kept => kept.ExaminationId == draft.Id);
        Assert.True((await SignAsync(house, draft, HashOf(again, PreviewOf(again, draft.Id)))).Succeeded);
    }

    [Fact]
    public async Task A_day_that_turned_since_the_page_was_opened_asks_for_another_look()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Guid caseId = await HealingCaseAsync(house);
        SavedDraft draft = await house.DraftAsync(caseId, Content(0.1));
        CaseView looked = await CaseAsync(house, caseId);
        house.Time.Advance(TimeSpan.FromDays(1));

        Outcome<Saved> refused = await SignAsync(house, draft, HashOf(looked, PreviewOf(looked, draft.Id)));

        Assert.Equal("case-changed-since-seen", Assert.Single(refused.Problems).Code);
    }

    [Fact]
    public async Task An_amendment_keeps_figures_of_its_own_beside_those_of_the_signature()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Guid caseId = await HealingCaseAsync(house);
        Saved signed = await house.SignedAsync(caseId, Content(0.1));
        string first = (await KeptAsync(house, caseId))[0].Figures.InputHash;
        house.Time.Advance(TimeSpan.FromMinutes(5));

        Outcome<Saved> stale = await AmendAsync(house, signed.Id, 0.5, new string('0', 64));
        Outcome<Saved> amended = await AmendAsync(house, signed.Id, 0.5, null);

        Assert.Equal("case-changed-since-seen", Assert.Single(stale.Problems).Code);
        Assert.True(amended.Succeeded);
        IReadOnlyList<SignedFiguresView> kept = await KeptAsync(house, caseId);
        Assert.Equal([2, 1], kept.Select(figures => figures.Number));
        Assert.Equal(first, kept[1].Figures.InputHash);
        Assert.NotEqual(first, kept[0].Figures.InputHash);
        ExaminationView view = (await house.Get<GetExamination>().ExecuteAsync(house.Vet, signed.Id)).Value;
        Assert.Equal([kept[1].Id, kept[0].Id], view.Versions.Select(version => version.FiguresId!.Value));
    }

    [Fact]
    public async Task An_examination_signed_for_another_practice_is_previewed_as_an_outside_one()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Guid caseId = await HealingCaseAsync(house);
        SavedDraft draft = await house.DraftAsync(caseId, Content(0.1) with { OutsidePractice = "Far Hill Equine" });
        CaseView looked = await CaseAsync(house, caseId);

        Assert.Equal(
            "case-changed-since-seen",
            Assert.Single((await SignAsync(house, draft, HashOf(looked, PreviewOf(looked, draft.Id)))).Problems).Code
        );
        Assert.True((await SignAsync(house, draft, HashOf(looked, PreviewOf(looked, draft.Id, ExaminationState.Outside)))).Succeeded);
    }

    [Theory]
    [InlineData("UPDATE \"SignedFigures\" SET \"Verdict\" = 'Healing'")]
    [InlineData("DELETE FROM \"SignedFigures\"")]
    public async Task Kept_figures_cannot_be_rewritten_by_anybody(string statement)
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        await house.SignedAsync(await HealingCaseAsync(house), Content(0.1));

        SqliteException refused = await Assert.ThrowsAsync<SqliteException>(() =>
            house.LookAsync(records => records.Database.ExecuteSqlRawAsync(statement))
        );

        Assert.Contains("append-only", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_repeated_signature_keeps_its_figures_once()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Guid caseId = await HealingCaseAsync(house);
        SavedDraft draft = await house.DraftAsync(caseId, Content(0.1));
        SignExaminationInput wish = new(Guid.NewGuid(), draft.Id, draft.Version);

        await house.Get<SignExamination>().ExecuteAsync(house.Vet, wish);
        Outcome<Saved> again = await house.Get<SignExamination>().ExecuteAsync(house.Vet, wish);

        Assert.True(again.Succeeded);
        Assert.Single(await KeptAsync(house, caseId));
    }

    [Fact]
    public async Task A_later_examination_and_an_amended_one_are_found_as_what_changed()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Guid caseId = await HealingCaseAsync(house);
        Saved signed = await house.SignedAsync(caseId, Content(0.1));
        await house.SignedAsync(caseId, Content(0.6) with { Date = Recheck.AddDays(60) });
        FiguresDifference more = FiguresDifference.Between((await KeptAsync(house, caseId))[^1].Figures, await TodayAsync(house, caseId));
        await AmendAsync(house, signed.Id, 0.5, null);

        FiguresDifference amended = FiguresDifference.Between(
            (await KeptAsync(house, caseId))[^1].Figures,
            await TodayAsync(house, caseId)
        );

        Assert.True(more is { Any: true, IsOnlyMore: true, IsOtherVerdict: true });
        Assert.Equal([Recheck.AddDays(60)], more.Added.Select(one => one.Date));
        Assert.Equal([Recheck], amended.Amended.Select(one => one.Date));
        Assert.True(amended.Values.Single(value => value.Then.Date == Recheck).IsBeyondError);
        Assert.False(amended.IsOnlyMore);
    }

    [Fact]
    public async Task A_changed_setting_is_named()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Guid caseId = await HealingCaseAsync(house);
        await house.SignedAsync(caseId, Content(0.1));
        PracticeView practice = (await house.Get<GetPractice>().ExecuteAsync(house.Vet, NoInput.Value)).Value;
        Assert.True(
            (
                await house
                    .Get<ChangePractice>()
                    .ExecuteAsync(
                        house.Vet,
                        new ChangePracticeInput
                        {
                            CommandId = Guid.NewGuid(),
                            Version = practice.Version,
                            Name = practice.Name,
                            TimeZone = practice.TimeZone,
                            Language = practice.Language,
                            Settings = practice.Settings with { Error = practice.Settings.Error with { LesionAreaCv = 0.3 } },
                        }
                    )
            ).Succeeded
        );

        FiguresDifference difference = FiguresDifference.Between(
            (await KeptAsync(house, caseId))[0].Figures,
            await TodayAsync(house, caseId)
        );

        Assert.Equal([new SettingDifference("measurement-error", "lesionAreaCv", 0.12, 0.3)], difference.Settings);
        Assert.True(difference.Any);
    }

    [Fact]
    public async Task A_word_on_a_link_said_since_is_counted_and_its_places_are_named()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Guid caseId = await HealingCaseAsync(house);
        await house.SignedAsync(caseId, Content(0.1));
        CaseView view = await CaseAsync(house, caseId);
        PlaceKey Key(int examination) => new(view.Course.Examinations[examination].Id, LinkPath.Axial, new Centimetres(12));
        foreach (int earlier in (int[])[0, 1, 2])
        {
            Assert.True(
                (
                    await house
                        .Get<BreakLink>()
                        .ExecuteAsync(
                            house.Vet,
                            new LinkWordInput
                            {
                                CommandId = Guid.NewGuid(),
                                CaseId = caseId,
                                First = Key(earlier),
                                Second = Key(3),
                                Reason = "Another place",
                            }
                        )
                ).Succeeded
            );
        }

        FiguresDifference difference = FiguresDifference.Between(
            (await KeptAsync(house, caseId))[0].Figures,
            await TodayAsync(house, caseId)
        );

        Assert.Equal((3, 0), (difference.WordsGiven, difference.WordsWithdrawn));
        Assert.Contains(Key(3), difference.Relinked);
    }

    [Fact]
    public async Task An_imported_examination_is_nobodys_signature_and_keeps_none()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();

        Assert.Empty(await KeptAsync(house, await HealingCaseAsync(house)));
    }

    [Fact]
    public async Task A_case_of_another_practice_shows_none()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Guid caseId = await HealingCaseAsync(house);
        await house.SignedAsync(caseId, Content(0.1));
        Actor stranger = await house.FoundSecondPracticeAsync();

        Outcome<IReadOnlyList<SignedFiguresView>> refused = await house.Get<GetSignedFigures>().ExecuteAsync(stranger, caseId);

        Assert.Equal("not-found", Assert.Single(refused.Problems).Code);
    }

    private static ExaminationContent Content(double lesion) => Wishes.Content(Recheck, (10, 0), (12, lesion), (14, 0));

    private static async Task<Guid> HealingCaseAsync(RecordsHouse house) =>
        (
            await house
                .Get<ApplyImport>()
                .ExecuteAsync(
                    house.Vet,
                    new ApplyImportInput
                    {
                        CommandId = Guid.NewGuid(),
                        Cases = [Files.Healing("Vane LH", new("Thistle Vane", "999000000000001", new DateOnly(2015, 4, 2)))],
                    }
                )
        )
            .Value
            .Cases[0]
            .CaseId;

    private static async Task<CaseView> CaseAsync(RecordsHouse house, Guid caseId) =>
        (await house.Get<GetCase>().ExecuteAsync(house.Vet, caseId)).Value;

    private static async Task<IReadOnlyList<SignedFiguresView>> KeptAsync(RecordsHouse house, Guid caseId) =>
        (await house.Get<GetSignedFigures>().ExecuteAsync(house.Vet, caseId)).Value;

    private static Task<Outcome<Saved>> SignAsync(RecordsHouse house, SavedDraft draft, string? seen) =>
        house.Get<SignExamination>().ExecuteAsync(house.Vet, new SignExaminationInput(Guid.NewGuid(), draft.Id, draft.Version, seen));

    private static async Task<Outcome<Saved>> AmendAsync(RecordsHouse house, Guid id, double lesion, string? seen)
    {
        ExaminationView view = (await house.Get<GetExamination>().ExecuteAsync(house.Vet, id)).Value;
        return await house
            .Get<AmendExamination>()
            .ExecuteAsync(
                house.Vet,
                new AmendExaminationInput
                {
                    CommandId = Guid.NewGuid(),
                    Id = id,
                    Version = view.Version,
                    Reason = "Outline traced again",
                    SeenHash = seen,
                    Content = view.Content with
                    {
                        Readings =
                        [
                            .. view.Content.Readings.Select(row =>
                                row.Values.LevelCm == 12 ? row with { Values = row.Values with { LesionAreaCm2 = lesion } } : row
                            ),
                        ],
                    },
                }
            );
    }

    /// <summary>The course as it will be with the draft signed.</summary>
    private static CaseCourse PreviewOf(CaseView view, Guid draft, ExaminationState state = ExaminationState.Signed) =>
        view.Course with
        {
            Examinations = [.. view.Course.Examinations, view.Drafts.Single(one => one.Id == draft.ToString()) with { State = state }],
        };

    private static CaseAnalysis Analyse(CaseView view, CaseCourse course) =>
        CaseAnalyser.Analyse(course, view.Constraints, view.Practice.Settings, view.Practice.Today);

    private static string HashOf(CaseView view, CaseCourse course) =>
        InputHash.Of(course, view.Constraints, view.Practice.Settings, view.Practice.Today);

    private static async Task<SeenFigures> TodayAsync(RecordsHouse house, Guid caseId)
    {
        CaseView view = await CaseAsync(house, caseId);
        return SeenFigures.Of(view.Course, view.Constraints, Analyse(view, view.Course));
    }
}
