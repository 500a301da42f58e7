using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Examinations;
using RehabTrack.Records.Links;
using RehabTrack.Records.Room;
using RehabTrack.Records.Tests.House;

namespace RehabTrack.Records.Tests.Links;

public sealed class LinkWordsTests
{
    [Fact]
    public async Task A_pin_is_kept_with_its_reason_reaches_the_analysis_and_can_be_taken_back()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        (Guid caseId, string first, string second) = await TwoExaminationsAsync(house);

        Saved pin = (await PinAsync(house, caseId, Key(first, 12), Key(second, 14.6), "Same vessel beside it")).Value;
        CaseView pinned = (await house.Get<GetCase>().ExecuteAsync(house.Vet, caseId)).Value;
        CaseAnalysis analysis = CaseAnalyser.Analyse(pinned.Course, pinned.Constraints, pinned.Practice.Settings, pinned.Practice.Today);
        Outcome<Saved> unreasoned = await house
            .Get<WithdrawLinkWord>()
            .ExecuteAsync(house.Vet, new WithdrawLinkWordInput(Guid.NewGuid(), pin.Id, pin.Version, ""));
        await house
            .Get<WithdrawLinkWord>()
            .ExecuteAsync(house.Vet, new WithdrawLinkWordInput(Guid.NewGuid(), pin.Id, pin.Version, "It was another vessel"));
        CaseView withdrawn = (await house.Get<GetCase>().ExecuteAsync(house.Vet, caseId)).Value;

        LinkWordView word = Assert.Single(pinned.LinkWords);
        Assert.Equal(("Same vessel beside it", "Edda Marrow", true), (word.Reason, word.SaidBy, word.Applies));
        Assert.Contains(
            analysis.Links.Tracks,
            track =>
                track.Steps.Any(step => step.Place.Level.Position.Value == 12)
                && track.Steps.Any(step => step.Place.Level.Position.Value == 14.6)
        );
        Assert.Equal("reason-missing", Assert.Single(unreasoned.Problems).Code);
        Assert.Empty(withdrawn.Constraints);
        Assert.Equal("It was another vessel", Assert.Single(withdrawn.LinkWords).WithdrawnReason);
    }

    [Fact]
    public async Task A_break_renews_what_is_kept_of_the_analysis_in_the_same_transaction()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        (Guid caseId, string first, string second) = await TwoExaminationsAsync(house);
        string before = await HashAsync(house, caseId);

        await house.Get<BreakLink>().ExecuteAsync(house.Vet, Word(caseId, Key(first, 12), Key(second, 12.2), "Not the same place"));

        Assert.NotEqual(before, await HashAsync(house, caseId));
    }

    [Fact]
    public async Task A_word_that_the_linker_could_not_follow_is_refused()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        (Guid caseId, string first, string second) = await TwoExaminationsAsync(house);
        await PinAsync(house, caseId, Key(first, 12), Key(second, 12.2), "Seen twice");

        Assert.Equal("not-found", Code(await PinAsync(house, caseId, Key(first, 13), Key(second, 12.2), "No such level")));
        Assert.Equal("link-within-examination", Code(await PinAsync(house, caseId, Key(first, 10), Key(first, 14), "One day")));
        Assert.Equal("link-word-stands", Code(await PinAsync(house, caseId, Key(second, 12.2), Key(first, 12), "Again")));
        Assert.Equal("pin-contradicts-pin", Code(await PinAsync(house, caseId, Key(first, 10), Key(second, 14.6), "It crosses")));
        Assert.Equal("pin-contradicts-pin", Code(await PinAsync(house, caseId, Key(first, 12), Key(second, 14.6), "It shares one")));
        Assert.Equal(
            "link-across-paths",
            Code(
                await PinAsync(
                    house,
                    caseId,
                    Key(first, 14),
                    new PlaceKey(second, LinkPath.MedialBranch, new Centimetres(20)),
                    "Branch and body"
                )
            )
        );
        Assert.Equal("reason-missing", Code(await PinAsync(house, caseId, Key(first, 14), Key(second, 14.6), " ")));
    }

    [Fact]
    public async Task What_only_follows_from_several_words_together_is_refused_too()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        (Guid caseId, string first, string second) = await TwoExaminationsAsync(house);
        string third = (await house.SignedAsync(caseId, Wishes.Content(new DateOnly(2026, 9, 1), (10, 0), (12, 0.3), (14, 0)))).Id.ToString(
            "D"
        );
        await PinAsync(house, caseId, Key(first, 12), Key(second, 12.2), "Seen twice");
        await PinAsync(house, caseId, Key(second, 12.2), Key(third, 12), "Seen again");

        Assert.Equal("link-word-joins-one-examination", Code(await PinAsync(house, caseId, Key(first, 14), Key(third, 12), "Shared")));
        Assert.Equal("link-word-crosses", Code(await PinAsync(house, caseId, Key(first, 14), Key(third, 10), "Crossed")));
        Assert.Equal(
            "link-word-contradicted",
            Code(await house.Get<BreakLink>().ExecuteAsync(house.Vet, Word(caseId, Key(first, 12), Key(third, 12), "Apart")))
        );
    }

    [Fact]
    public async Task A_word_on_a_level_that_an_amendment_moved_no_longer_applies()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        (Guid caseId, string first, string second) = await TwoExaminationsAsync(house);
        await PinAsync(house, caseId, Key(first, 12), Key(second, 12.2), "Seen twice");
        ExaminationView view = (await house.Get<GetExamination>().ExecuteAsync(house.Vet, Guid.Parse(second))).Value;
        await house
            .Get<AmendExamination>()
            .ExecuteAsync(
                house.Vet,
                new AmendExaminationInput
                {
                    CommandId = Guid.NewGuid(),
                    Id = view.Id,
                    Version = view.Version,
                    Reason = "Tape read wrongly",
                    Content = view.Content with
                    {
                        Readings =
                        [
                            .. view.Content.Readings.Select(row =>
                                row.Values.LevelCm == 12.2 ? row with { Values = row.Values with { LevelCm = 12.4 } } : row
                            ),
                        ],
                    },
                }
            );

        CaseView after = (await house.Get<GetCase>().ExecuteAsync(house.Vet, caseId)).Value;

        Assert.False(Assert.Single(after.LinkWords).Applies);
    }

    private static async Task<(Guid CaseId, string First, string Second)> TwoExaminationsAsync(RecordsHouse house)
    {
        Guid caseId = (await house.CaseAsync((await house.HorseAsync()).Id)).Id;
        Saved first = await house.SignedAsync(caseId, Wishes.Content(new DateOnly(2026, 6, 1), (10, 0), (12, 0.5), (14, 0)));
        ExaminationContent content = Wishes.Content(new DateOnly(2026, 8, 1), (10.1, 0), (12.2, 0.4), (14.6, 0.1));
        Saved second = await house.SignedAsync(
            caseId,
            content with
            {
                Readings =
                [
                    .. content.Readings,
                    new DraftReading(
                        null,
                        new ReadingDraft
                        {
                            Part = Part.MedialBranch,
                            LevelCm = 20,
                            LigamentAreaCm2 = 0.8,
                        }
                    ),
                ],
            }
        );
        return (caseId, first.Id.ToString("D"), second.Id.ToString("D"));
    }

    private static PlaceKey Key(string examination, double level) => new(examination, LinkPath.Axial, new Centimetres(level));

    private static LinkWordInput Word(Guid caseId, PlaceKey first, PlaceKey second, string reason) =>
        new()
        {
            CommandId = Guid.NewGuid(),
            CaseId = caseId,
            First = first,
            Second = second,
            Reason = reason,
        };

    private static Task<Outcome<Saved>> PinAsync(RecordsHouse house, Guid caseId, PlaceKey first, PlaceKey second, string reason) =>
        house.Get<PinLink>().ExecuteAsync(house.Vet, Word(caseId, first, second, reason));

    private static Task<string> HashAsync(RecordsHouse house, Guid caseId) =>
        house.LookAsync(async records => (await records.CaseSummaries.FindAsync(caseId))!.InputHash);

    private static string Code<T>(Outcome<T> outcome) => Assert.Single(outcome.Problems).Code;
}
