using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Examinations;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Records.Tests.House;

namespace RehabTrack.Records.Tests.Examinations;

public sealed class DraftAndSignTests
{
    private static readonly DateOnly June = new(2026, 6, 1);
    private static readonly DateOnly August = new(2026, 8, 1);

    [Fact]
    public async Task A_draft_starts_from_the_levels_of_the_last_examination_without_its_values()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Guid caseId = await NewCaseAsync(house);
        ExaminationContent first = Wishes.Content(June, (14, 0), (10, 0.2));
        await house.SignedAsync(
            caseId,
            first with
            {
                Readings =
                [
                    .. first.Readings,
                    new DraftReading(
                        null,
                        new ReadingDraft
                        {
                            Part = Part.MedialBranch,
                            LevelCm = 20,
                            Lesion = "tear",
                            Role = ReadingRole.Worst,
                            LesionIsDiffuse = true,
                            EchogenicityGrade = 2,
                            Measurer = "E. Marrow",
                            Note = "at the insertion",
                        }
                    ),
                ],
            }
        );

        Saved draft = (
            await house
                .Get<StartExamination>()
                .ExecuteAsync(house.Vet, new StartExaminationInput { CommandId = Guid.NewGuid(), CaseId = caseId })
        ).Value;
        ExaminationView view = (await house.Get<GetExamination>().ExecuteAsync(house.Vet, draft.Id)).Value;

        Assert.Equal(new DateOnly(2026, 11, 24), view.Content.Date);
        Assert.Equal(
            [(Part.Body, 10.0), (Part.Body, 14.0), (Part.MedialBranch, 20.0)],
            view.Content.Readings.Select(row => (row.Values.Part!.Value, row.Values.LevelCm!.Value))
        );
        Assert.Equal(("tear", ReadingRole.Worst), (view.Content.Readings[2].Values.Lesion, view.Content.Readings[2].Values.Role));
        Assert.All(
            view.Content.Readings,
            row =>
            {
                Assert.False(row.Values.HasMeasurement);
                Assert.Null(row.Values.Measurer);
                Assert.Null(row.Values.Note);
            }
        );
        Assert.Equal("no-readings", Assert.Single(view.Unready).Code);
    }

    [Fact]
    public async Task What_is_wrong_with_a_draft_is_kept_and_told_beside_its_field()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Guid caseId = await NewCaseAsync(house);
        ExaminationContent wrong = Wishes.Content(new DateOnly(2026, 11, 25), (10, 1.9), (61, 0.2), (12, -1));

        SavedDraft draft = await house.DraftAsync(caseId, wrong);
        ExaminationView view = (await house.Get<GetExamination>().ExecuteAsync(house.Vet, draft.Id)).Value;
        Outcome<Saved> signed = await house
            .Get<SignExamination>()
            .ExecuteAsync(house.Vet, new SignExaminationInput(Guid.NewGuid(), draft.Id, draft.Version));

        Assert.Equal([1.9, 0.2, -1], view.Content.Readings.Select(row => row.Values.LesionAreaCm2!.Value));
        (string, string)[] expected =
        [
            ("date", "date-in-future"),
            ("readings[0].lesion_area_cm2", "lesion-larger-than-ligament"),
            ("readings[1].level_cm", "level-out-of-range"),
            ("readings[2].lesion_area_cm2", "area-negative"),
        ];
        Assert.Equal(expected, view.Unready.Select(problem => (problem.Field, problem.Code)));
        Assert.Equal(expected, signed.Problems.Select(problem => (problem.Field, problem.Code)));
    }

    [Fact]
    public async Task A_number_that_is_none_cannot_even_be_kept_in_a_draft()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        SavedDraft draft = await house.DraftAsync(await NewCaseAsync(house), Wishes.Content(June, (10, 0)));

        Outcome<SavedDraft> refused = await SaveAsync(house, draft, Wishes.Content(June, (10, double.NaN)));

        Assert.Equal(("readings[0].lesion_area_cm2", "not-a-number"), (refused.Problems[0].Field, refused.Problems[0].Code));
    }

    [Fact]
    public async Task Two_rows_of_one_place_and_lesions_larger_than_their_ligament_keep_a_draft_from_being_signed()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        ExaminationContent twice = Wishes.Content(June, (10, 0.9), (10, 0.1), (12, 0.9), (12, 0.9));
        ExaminationContent content = twice with
        {
            Readings = [.. twice.Readings.Take(3), twice.Readings[3] with { Values = twice.Readings[3].Values with { Lesion = "second" } }],
        };

        SavedDraft draft = await house.DraftAsync(await NewCaseAsync(house), content);
        ExaminationView view = (await house.Get<GetExamination>().ExecuteAsync(house.Vet, draft.Id)).Value;

        Assert.Equal(
            [
                ("readings[1].level_cm", "place-read-twice"),
                ("readings[2].lesion_area_cm2", "lesions-larger-than-ligament"),
                ("readings[3].lesion_area_cm2", "lesions-larger-than-ligament"),
            ],
            view.Unready.Select(problem => (problem.Field, problem.Code))
        );
    }

    [Fact]
    public async Task Saving_again_keeps_the_rows_their_identity_and_drops_those_left_out()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        SavedDraft first = await house.DraftAsync(await NewCaseAsync(house), Wishes.Content(June, (10, 0), (12, 0.4), (14, 0)));
        ExaminationView view = (await house.Get<GetExamination>().ExecuteAsync(house.Vet, first.Id)).Value;

        SavedDraft second = (
            await SaveAsync(
                house,
                first,
                view.Content with
                {
                    Readings =
                    [
                        view.Content.Readings[2],
                        view.Content.Readings[0],
                        new DraftReading(null, new ReadingDraft { Part = Part.Body, LevelCm = 16 }),
                    ],
                }
            )
        ).Value;

        Assert.Equal([first.ReadingIds[2], first.ReadingIds[0]], second.ReadingIds.Take(2));
        Assert.Equal(3, second.ReadingIds.Count);
        Assert.Equal(3, await house.LookAsync(records => records.Readings.CountAsync()));
    }

    [Fact]
    public async Task A_new_row_brings_its_own_identity_but_never_takes_that_of_another_examination()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Guid caseId = await NewCaseAsync(house);
        SavedDraft other = await house.DraftAsync(caseId, Wishes.Content(June, (10, 0.3)));
        SavedDraft draft = await house.DraftAsync(caseId, Wishes.Content(August, (10, 0)));
        Guid own = Guid.CreateVersion7();
        ReadingDraft values = new() { Part = Part.Body, LevelCm = 12 };

        SavedDraft saved = (
            await SaveAsync(
                house,
                draft,
                Wishes.Content(August) with
                {
                    Readings = [new(own, values), new(own, values), new(other.ReadingIds[0], values)],
                }
            )
        ).Value;
        ExaminationView untouched = (await house.Get<GetExamination>().ExecuteAsync(house.Vet, other.Id)).Value;

        Assert.Equal(own, saved.ReadingIds[0]);
        Assert.Equal(3, saved.ReadingIds.Except(other.ReadingIds).Distinct().Count());
        Assert.Equal(0.3, Assert.Single(untouched.Content.Readings).Values.LesionAreaCm2);
    }

    [Fact]
    public async Task Rows_that_were_not_read_go_when_it_is_signed_and_the_summary_follows()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Guid caseId = await NewCaseAsync(house);
        ExaminationContent content = Wishes.Content(June, (10, 0), (12, 0.4));
        SavedDraft draft = await house.DraftAsync(
            caseId,
            content with
            {
                Readings = [.. content.Readings, new DraftReading(null, new ReadingDraft { Part = Part.Body, LevelCm = 16 })],
            }
        );
        CaseView before = (await house.Get<GetCase>().ExecuteAsync(house.Vet, caseId)).Value;

        Assert.True(
            (
                await house
                    .Get<SignExamination>()
                    .ExecuteAsync(house.Vet, new SignExaminationInput(Guid.NewGuid(), draft.Id, draft.Version))
            ).Succeeded
        );

        CaseView after = (await house.Get<GetCase>().ExecuteAsync(house.Vet, caseId)).Value;
        Assert.Equal((0, 1), (before.Summary!.ExaminationCount, after.Summary!.ExaminationCount));
        Assert.Equal(2, Assert.Single(after.Course.Examinations).Readings.Count);
        Assert.Equal(June.AddDays(60), after.Summary.DueOn);
    }

    [Fact]
    public async Task An_examination_of_another_practice_is_filed_as_outside_and_raises_no_reminder()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Guid caseId = await NewCaseAsync(house);
        await house.SignedAsync(caseId, Wishes.Content(June, (10, 0), (12, 0.4)) with { OutsidePractice = "Far Hill Equine" });

        CaseView view = (await house.Get<GetCase>().ExecuteAsync(house.Vet, caseId)).Value;

        Assert.Equal(ExaminationState.Outside, view.Examinations[0].State);
        Assert.Equal(1, view.Summary!.ExaminationCount);
        Assert.Null(view.Summary.DueOn);
    }

    [Fact]
    public async Task A_second_examination_of_a_date_needs_a_name_of_its_own()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Guid caseId = await NewCaseAsync(house);
        await house.SignedAsync(caseId, Wishes.Content(June, (10, 0), (12, 0.4)));
        SavedDraft draft = await house.DraftAsync(caseId, Wishes.Content(June, (10, 0), (12, 0.4)));

        Outcome<Saved> refused = await house
            .Get<SignExamination>()
            .ExecuteAsync(house.Vet, new SignExaminationInput(Guid.NewGuid(), draft.Id, draft.Version));
        SavedDraft named = (await SaveAsync(house, draft, Wishes.Content(June, (10, 0), (12, 0.4)) with { Name = "evening" })).Value;
        Outcome<Saved> signed = await house
            .Get<SignExamination>()
            .ExecuteAsync(house.Vet, new SignExaminationInput(Guid.NewGuid(), named.Id, named.Version));

        Assert.Equal("examination-exists", Assert.Single(refused.Problems).Code);
        Assert.True(signed.Succeeded);
    }

    [Fact]
    public async Task What_is_signed_is_not_overwritten_and_its_first_version_stays_readable_after_an_amendment()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Guid caseId = await NewCaseAsync(house);
        Saved signed = await house.SignedAsync(caseId, Wishes.Content(June, (10, 0), (12, 0.4)));
        ExaminationView view = (await house.Get<GetExamination>().ExecuteAsync(house.Vet, signed.Id)).Value;
        ExaminationContent amended = view.Content with
        {
            Readings =
            [
                view.Content.Readings[0],
                view.Content.Readings[1] with
                {
                    Values = view.Content.Readings[1].Values with { LesionAreaCm2 = 0.55 },
                },
            ],
        };

        Outcome<SavedDraft> overwritten = await house
            .Get<SaveDraft>()
            .ExecuteAsync(
                house.Vet,
                new SaveDraftInput
                {
                    CommandId = Guid.NewGuid(),
                    Id = signed.Id,
                    Version = signed.Version,
                    Content = amended,
                }
            );
        Outcome<Saved> unreasoned = await AmendAsync(house, signed, " ", amended);
        Outcome<Saved> unchanged = await AmendAsync(house, signed, "Nothing new", view.Content);
        house.Time.Advance(TimeSpan.FromDays(1));
        Saved done = (await AmendAsync(house, signed, "Outline traced again", amended)).Value;
        ExaminationView after = (await house.Get<GetExamination>().ExecuteAsync(house.Vet, done.Id)).Value;
        CaseView injury = (await house.Get<GetCase>().ExecuteAsync(house.Vet, caseId)).Value;

        Assert.Equal("already-signed", Assert.Single(overwritten.Problems).Code);
        Assert.Equal("reason-missing", Assert.Single(unreasoned.Problems).Code);
        Assert.Equal("nothing-changed", Assert.Single(unchanged.Problems).Code);
        Assert.Equal([1, 2], after.Versions.Select(version => version.Number));
        Assert.Equal([0.4, 0.55], after.Versions.Select(version => version.Content.Readings[1].Values.LesionAreaCm2!.Value));
        Assert.Equal([null, "Outline traced again"], after.Versions.Select(version => version.Reason));
        Assert.Equal(ExaminationState.Signed, after.State);
        Assert.Equal(view.SignedAt, after.SignedAt);
        Assert.Equal(1, injury.Examinations[0].Amendments);
    }

    [Fact]
    public async Task Somebody_who_saved_meanwhile_is_told_with_both_values()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        SavedDraft read = await house.DraftAsync(await NewCaseAsync(house), Wishes.Content(June, (10, 0), (12, 0.4)));
        ExaminationContent content = (await house.Get<GetExamination>().ExecuteAsync(house.Vet, read.Id)).Value.Content;
        ExaminationContent Lesion(double area) =>
            content with
            {
                Readings =
                [
                    content.Readings[0],
                    content.Readings[1] with
                    {
                        Values = content.Readings[1].Values with { LesionAreaCm2 = area },
                    },
                ],
            };
        await SaveAsync(house, read, Lesion(0.45));

        Outcome<SavedDraft> refused = await SaveAsync(house, read, Lesion(0.5));
        Outcome<SavedDraft> same = await SaveAsync(house, read, Lesion(0.45));

        Problem told = Assert.Single(refused.Problems);
        Assert.Equal(("readings[1].lesion_area_cm2", "changed-meanwhile"), (told.Field, told.Code));
        Assert.Equal(["0.45", "0.5"], told.Arguments);
        Assert.True(same.Succeeded);
    }

    [Fact]
    public async Task A_command_sent_twice_signs_once_and_cannot_be_reused_for_something_else()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Guid caseId = await NewCaseAsync(house);
        SavedDraft draft = await house.DraftAsync(caseId, Wishes.Content(June, (10, 0), (12, 0.4)));
        SignExaminationInput input = new(Guid.NewGuid(), draft.Id, draft.Version);

        Saved first = (await house.Get<SignExamination>().ExecuteAsync(house.Vet, input)).Value;
        Saved second = (await house.Get<SignExamination>().ExecuteAsync(house.Vet, input)).Value;
        Outcome<Saved> other = await house
            .Get<ArchiveDraft>()
            .ExecuteAsync(house.Vet, new RecordInput(input.CommandId, input.Id, input.Version));

        Assert.Equal(first, second);
        Assert.Equal(1, await house.LookAsync(records => records.ExaminationVersions.CountAsync()));
        Assert.Equal("command-reused", Assert.Single(other.Problems).Code);
    }

    [Fact]
    public async Task An_assistant_writes_drafts_and_does_not_sign()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Actor assistant = await house.PersonAsync("Pip Danvers", Role.Assistant);
        SavedDraft draft = await house.DraftAsync(await NewCaseAsync(house), Wishes.Content(June, (10, 0), (12, 0.4)));

        Outcome<SavedDraft> saved = await house
            .Get<SaveDraft>()
            .ExecuteAsync(
                assistant,
                new SaveDraftInput
                {
                    CommandId = Guid.NewGuid(),
                    Id = draft.Id,
                    Version = draft.Version,
                    Content = Wishes.Content(June, (10, 0), (12, 0.5)),
                }
            );
        Outcome<Saved> refused = await house
            .Get<SignExamination>()
            .ExecuteAsync(assistant, new SignExaminationInput(Guid.NewGuid(), draft.Id, saved.Value.Version));

        Assert.Equal("not-allowed", Assert.Single(refused.Problems).Code);
    }

    [Fact]
    public async Task A_draft_put_away_is_no_longer_there_and_stays_kept()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        SavedDraft draft = await house.DraftAsync(await NewCaseAsync(house), Wishes.Content(June, (10, 0), (12, 0.4)));

        await house.Get<ArchiveDraft>().ExecuteAsync(house.Vet, new RecordInput(Guid.NewGuid(), draft.Id, draft.Version));

        Outcome<ExaminationView> gone = await house.Get<GetExamination>().ExecuteAsync(house.Vet, draft.Id);
        Assert.Equal("not-found", Assert.Single(gone.Problems).Code);
        Assert.Equal(2, await house.LookAsync(records => records.Readings.CountAsync()));
    }

    [Fact]
    public async Task A_grade_on_another_scale_than_the_case_carries_a_caution()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Guid caseId = await NewCaseAsync(house);
        ExaminationContent Graded(DateOnly date, GradeScale scale)
        {
            ExaminationContent content = Wishes.Content(date, (10, 0));
            return content with
            {
                Readings =
                [
                    content.Readings[0] with
                    {
                        Values = content.Readings[0].Values with { EchogenicityScale = scale, EchogenicityGrade = 2 },
                    },
                ],
            };
        }

        await house.SignedAsync(caseId, Graded(June, GradeScales.Echogenicity0To3));
        SavedDraft draft = await house.DraftAsync(caseId, Wishes.Content(August, (10, 0)));

        Outcome<SavedDraft> other = await SaveAsync(house, draft, Graded(August, GradeScales.Echogenicity0To4));

        Problem caution = Assert.Single(other.Cautions);
        Assert.Equal(("readings[0].echogenicity_scale", "scale-differs-from-case"), (caution.Field, caution.Code));
        Assert.Equal(["0-4", "0-3"], caution.Arguments);
    }

    private static async Task<Guid> NewCaseAsync(RecordsHouse house) => (await house.CaseAsync((await house.HorseAsync()).Id)).Id;

    private static Task<Outcome<SavedDraft>> SaveAsync(RecordsHouse house, SavedDraft draft, ExaminationContent content) =>
        house
            .Get<SaveDraft>()
            .ExecuteAsync(
                house.Vet,
                new SaveDraftInput
                {
                    CommandId = Guid.NewGuid(),
                    Id = draft.Id,
                    Version = draft.Version,
                    Content = content,
                }
            );

    private static Task<Outcome<Saved>> AmendAsync(RecordsHouse house, Saved signed, string reason, ExaminationContent content) =>
        house
            .Get<AmendExamination>()
            .ExecuteAsync(
                house.Vet,
                new AmendExaminationInput
                {
                    CommandId = Guid.NewGuid(),
                    Id = signed.Id,
                    Version = signed.Version,
                    Reason = reason,
                    Content = content,
                }
            );
}
