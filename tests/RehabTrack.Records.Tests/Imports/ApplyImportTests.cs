using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Examinations;
using RehabTrack.Records.Imports;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Records.Tests.House;

namespace RehabTrack.Records.Tests.Imports;

public sealed class ApplyImportTests
{
    private static readonly HorseIdentity Vane = new("Thistle Vane", "999000000000001", new DateOnly(2015, 4, 2));

    [Fact]
    public async Task An_imported_case_is_history_has_a_verdict_at_once_and_raises_no_reminder()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();

        ImportResult result = (await ApplyAsync(house, [Files.Healing("Vane LH", Vane)])).Value;

        Assert.Equal((1, 1, 3, 9, 0), (result.NewHorses, result.NewCases, result.NewExaminations, result.NewReadings, result.Amended));
        CaseView view = (await house.Get<GetCase>().ExecuteAsync(house.Vet, result.Cases[0].CaseId)).Value;
        Assert.All(view.Course.Examinations, examination => Assert.Equal(ExaminationState.History, examination.State));
        Assert.All(view.Examinations, card => Assert.Null(card.SignedAt));
        Assert.Equal(Verdict.Healing, view.Summary!.Verdict);
        Assert.Null(view.Summary.DueOn);
        Assert.Equal("999000000000001", view.Horse.Microchip);
        Assert.Equal(2015, view.Horse.BirthYear);
    }

    [Fact]
    public async Task Importing_twice_adds_nothing_and_the_preview_says_so()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        CaseFile[] files =
        [
            Files.Healing("Vane LH", Vane),
            Files.Healing("Vane RH", Vane),
            Files.Healing("Moss LH", new("Moss", null, null)),
        ];
        await ApplyAsync(house, files);

        ImportPreview preview = (await PreviewAsync(house, files)).Value;
        ImportResult again = (await ApplyAsync(house, files)).Value;

        Assert.Equal((0, 0, 0, 0), (preview.NewHorses, preview.NewCases, preview.NewExaminations, preview.NewReadings));
        Assert.Equal((9, 27, 0), (preview.KnownExaminations, preview.KnownReadings, preview.DifferingExaminations));
        Assert.Equal((0, 0, 0, 0), (again.NewHorses, again.NewCases, again.NewExaminations, again.NewReadings));
        Assert.Equal(2, await house.LookAsync(records => records.Horses.CountAsync()));
        Assert.Equal(3, await house.LookAsync(records => records.Cases.CountAsync()));
        Assert.Equal(27, await house.LookAsync(records => records.Readings.CountAsync()));
    }

    [Fact]
    public async Task The_same_command_twice_answers_the_same_and_writes_once()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        ApplyImportInput input = new() { CommandId = Guid.NewGuid(), Cases = [Files.Healing("Vane LH", Vane)] };

        ImportResult first = (await house.Get<ApplyImport>().ExecuteAsync(house.Vet, input)).Value;
        ImportResult second = (await house.Get<ApplyImport>().ExecuteAsync(house.Vet, input)).Value;

        Assert.Equal(first.NewReadings, second.NewReadings);
        Assert.Equal(first.Cases, second.Cases);
        Assert.Equal(9, await house.LookAsync(records => records.Readings.CountAsync()));
    }

    [Fact]
    public async Task A_later_file_adds_its_new_examinations_to_the_case_that_is_there()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        CaseFile whole = Files.Healing("Vane LH", Vane);
        CaseFile early = whole with { Course = whole.Course with { Examinations = [.. whole.Course.Examinations.Take(2)] } };
        Guid caseId = (await ApplyAsync(house, [early])).Value.Cases[0].CaseId;

        ImportResult later = (await ApplyAsync(house, [whole])).Value;

        Assert.Equal((0, 0, 1, 3), (later.NewHorses, later.NewCases, later.NewExaminations, later.NewReadings));
        Assert.Equal(caseId, later.Cases[0].CaseId);
        CaseView view = (await house.Get<GetCase>().ExecuteAsync(house.Vet, caseId)).Value;
        Assert.Equal(3, view.Summary!.ExaminationCount);
    }

    [Fact]
    public async Task A_later_file_that_names_no_horse_finds_it_by_the_label_of_its_case()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        CaseFile whole = Files.Healing("Vane LH", Vane);
        CaseFile early = whole with { Course = whole.Course with { Examinations = [.. whole.Course.Examinations.Take(1)] } };
        CaseFile nameless = whole with
        {
            Horse = new(null, null, null),
            Course = whole.Course with { Examinations = [.. whole.Course.Examinations.Skip(1)] },
        };
        Guid caseId = (await ApplyAsync(house, [early])).Value.Cases[0].CaseId;

        CasePreview preview = (await PreviewAsync(house, [nameless])).Value.Cases[0];
        ImportResult later = (await ApplyAsync(house, [nameless])).Value;

        Assert.Equal("Thistle Vane", preview.HorseName);
        Assert.Equal((0, 0, 2, 6), (later.NewHorses, later.NewCases, later.NewExaminations, later.NewReadings));
        Assert.Equal(caseId, later.Cases[0].CaseId);
    }

    [Fact]
    public async Task A_label_that_two_horses_bear_asks_which_one_a_nameless_file_means()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        await ApplyAsync(house, [Files.Healing("LH", Vane)]);
        await ApplyAsync(house, [Files.Healing("LH", new("Moss", null, null))]);
        CaseFile file = Files.Healing("LH", new(null, null, null));
        CaseFile nameless = file with
        {
            Course = file.Course with
            {
                Examinations = [.. file.Course.Examinations.Select(one => one with { Date = one.Date.AddDays(7) })],
            },
        };

        CasePreview preview = (await PreviewAsync(house, [nameless])).Value.Cases[0];

        Assert.True(preview.MustChooseHorse);
        Assert.Equal(2, preview.MayBeSame.Count);
    }

    [Fact]
    public async Task What_differs_is_told_field_by_field_and_left_as_it_is()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        CaseFile file = Files.Healing("Vane LH", Vane);
        Guid caseId = (await ApplyAsync(house, [file])).Value.Cases[0].CaseId;
        CaseFile other = file.With("2026-05-01", 1, row => row with { LesionArea = LesionArea.Diffuse, Note = "traced again" });

        CasePreview preview = (await PreviewAsync(house, [other])).Value.Cases[0];
        ImportResult result = (await ApplyAsync(house, [other])).Value;

        ExaminationPreview differs = Assert.Single(
            preview.Examinations,
            examination => examination.Standing == ExaminationStanding.Differs
        );
        Assert.Equal(2, differs.KnownReadings);
        Assert.Equal(
            [
                new FieldDifference("readings[Body 12 E. Marrow].lesion_area_cm2", "0.35", "diffuse"),
                new FieldDifference("readings[Body 12 E. Marrow].note", null, "traced again"),
            ],
            differs.Differences
        );
        Assert.Equal(0, result.Amended);
        CaseView view = (await house.Get<GetCase>().ExecuteAsync(house.Vet, caseId)).Value;
        Assert.Equal(0.35, view.Course.Examinations[1].Readings[1].LesionArea.MeasuredArea!.Value.Value);
    }

    [Fact]
    public async Task An_other_limb_that_a_later_file_names_is_told_and_taken_only_when_chosen()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        CaseFile file = Files.Healing("Vane LH", Vane);
        Guid caseId = (await ApplyAsync(house, [file])).Value.Cases[0].CaseId;
        CaseFile other = file with { Course = file.Course with { OtherLimb = OtherLimb.HasLesion } };
        async Task<OtherLimb> KeptAsync() => (await house.Get<GetCase>().ExecuteAsync(house.Vet, caseId)).Value.Course.OtherLimb;

        CasePreview preview = (await PreviewAsync(house, [other])).Value.Cases[0];
        await ApplyAsync(house, [other]);

        Assert.Equal([new FieldDifference("other_limb", null, "lesion")], preview.Differences);
        Assert.Equal(OtherLimb.NotRecorded, await KeptAsync());

        await ApplyAsync(house, [other], Choose("Vane LH", new CaseChoice { TakeCaseFields = true }));

        Assert.Equal(OtherLimb.HasLesion, await KeptAsync());
        Assert.Empty((await PreviewAsync(house, [file])).Value.Cases[0].Differences);
    }

    [Fact]
    public async Task A_chosen_amendment_needs_a_reason_and_keeps_what_was_there()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        CaseFile file = Files.Healing("Vane LH", Vane);
        await ApplyAsync(house, [file]);
        CaseFile other = file.With("2026-05-01", 1, row => row with { LesionArea = LesionArea.Measured(new(0.5)) });
        ImportChoices choices = new()
        {
            Cases = new Dictionary<string, CaseChoice>(StringComparer.Ordinal) { ["Vane LH"] = new() { Amend = ["2026-05-01"] } },
        };

        Problem refused = Assert.Single((await ApplyAsync(house, [other], choices)).Problems);
        ImportResult result = (await ApplyAsync(house, [other], choices with { Reason = "Traced again from the clip" })).Value;

        Assert.Equal(("reason", "reason-missing"), (refused.Field, refused.Code));
        Assert.Equal(1, result.Amended);
        CaseView view = (await house.Get<GetCase>().ExecuteAsync(house.Vet, result.Cases[0].CaseId)).Value;
        ExaminationView amended = (await house.Get<GetExamination>().ExecuteAsync(house.Vet, view.Examinations[1].Id)).Value;
        Assert.Equal(0.5, amended.Content.Readings[1].Values.LesionAreaCm2);
        Assert.Equal([0.35, 0.5], amended.Versions.Select(version => version.Content.Readings[1].Values.LesionAreaCm2!.Value));
        Assert.Equal([null, "Traced again from the clip"], amended.Versions.Select(version => version.Reason));
    }

    [Fact]
    public async Task An_assistant_cannot_amend_what_a_vet_signed()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Actor assistant = await house.PersonAsync("Pip Danvers", Role.Assistant);
        CaseFile empty = Files.Case("Vane LH", Vane);
        Guid caseId = (await ApplyAsync(house, [empty])).Value.Cases[0].CaseId;
        await house.SignedAsync(caseId, Wishes.Content(new DateOnly(2026, 5, 1), (10, 0), (12, 0.5)));
        CaseFile other = Files
            .Case("Vane LH", Vane, ("2026-05-01", [(12, 1.5, 0.2)]))
            .With("2026-05-01", 0, row => row with { Measurer = null });

        Outcome<ImportResult> refused = await house
            .Get<ApplyImport>()
            .ExecuteAsync(
                assistant,
                new ApplyImportInput
                {
                    CommandId = Guid.NewGuid(),
                    Cases = [other],
                    Choices = new ImportChoices { AmendAll = true, Reason = "The sheet says so" },
                }
            );

        Assert.Equal("vet-only", Assert.Single(refused.Problems).Code);
    }

    [Fact]
    public async Task A_horse_of_the_same_chip_and_another_name_must_be_chosen()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Saved known = await house.HorseAsync("Larkspur", "999000000000001");
        CaseFile file = Files.Healing("Vane LH", Vane);

        CasePreview preview = (await PreviewAsync(house, [file])).Value.Cases[0];
        Outcome<ImportResult> unanswered = await ApplyAsync(house, [file]);
        ImportResult result = (await ApplyAsync(house, [file], Choose("Vane LH", new() { HorseId = known.Id }))).Value;
        ImportResult again = (await ApplyAsync(house, [file], Choose("Vane LH", new() { HorseId = known.Id }))).Value;
        ImportPreview unasked = (await PreviewAsync(house, [file])).Value;

        Assert.True(preview.MustChooseHorse);
        Assert.Equal((known.Id, HorseLikeness.SameChip), (preview.MayBeSame[0].HorseId, preview.MayBeSame[0].Likeness));
        Assert.Equal("horse-not-chosen", Assert.Single(unanswered.Problems).Code);
        Assert.Equal((0, 1, known.Id), (result.NewHorses, result.NewCases, result.Cases[0].HorseId));
        Assert.Equal((0, 0, 0), (again.NewHorses, again.NewCases, again.NewExaminations));
        Assert.Equal((false, 3), (unasked.Cases[0].MustChooseHorse, unasked.KnownExaminations));
    }

    [Theory]
    [InlineData("Thistle Vane", "999000000000002", true, HorseLikeness.SameNameOtherMark)]
    [InlineData("Thistle Vane", null, false, null)]
    [InlineData("thistle  vane", "999000000000001", false, null)]
    [InlineData("Thistel Vane", null, false, HorseLikeness.SimilarName)]
    [InlineData("Thistle Vanes", null, false, HorseLikeness.SimilarName)]
    [InlineData("Bracken", null, false, null)]
    public async Task Horses_that_may_be_the_same_are_found(string name, string? chip, bool mustChoose, HorseLikeness? likeness)
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        await house.HorseAsync("Thistle Vane", "999000000000001");

        CasePreview preview = (await PreviewAsync(house, [Files.Healing("X", new(name, chip, null))])).Value.Cases[0];

        Assert.Equal(mustChoose, preview.MustChooseHorse);
        Assert.Equal(likeness, preview.MayBeSame.Count == 0 ? null : preview.MayBeSame[0].Likeness);
    }

    [Fact]
    public async Task Two_cases_of_one_new_horse_make_one_horse()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();

        ImportResult result = (
            await ApplyAsync(house, [Files.Healing("Vane LH", Vane), Files.Healing("Vane RH", Vane with { Microchip = null })])
        ).Value;

        Assert.Equal((1, 2), (result.NewHorses, result.NewCases));
        Assert.Equal(result.Cases[0].HorseId, result.Cases[1].HorseId);
    }

    [Fact]
    public async Task A_case_left_out_by_choice_is_not_imported()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();

        ImportResult result = (
            await ApplyAsync(
                house,
                [Files.Healing("Vane LH", Vane), Files.Healing("Moss", new("Moss", null, null))],
                Choose("Moss", new() { Skip = true })
            )
        ).Value;

        Assert.Equal("Vane LH", Assert.Single(result.Cases).Label);
        Assert.Equal(1, await house.LookAsync(records => records.Horses.CountAsync()));
    }

    [Fact]
    public async Task A_tape_from_another_landmark_is_never_mixed_into_a_case()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        CaseFile file = Files.Healing("Vane LH", Vane);
        await ApplyAsync(house, [file]);

        Outcome<ImportResult> refused = await ApplyAsync(
            house,
            [file with { Course = file.Course with { Landmark = Rechecks.Anatomy.Landmark.TarsometatarsalJoint } }]
        );

        Assert.Equal("landmark-differs-from-case", Assert.Single(refused.Problems).Code);
    }

    [Fact]
    public async Task An_examination_later_than_the_practices_today_is_refused_and_nothing_of_the_file_is_written()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();

        Outcome<ImportResult> refused = await ApplyAsync(
            house,
            [Files.Healing("Moss", new("Moss", null, null)), Files.Case("Vane LH", Vane, ("2026-11-25", [(12, 1.5, 0.2)]))]
        );

        Assert.Equal("date-in-future", Assert.Single(refused.Problems).Code);
        Assert.Equal(0, await house.LookAsync(records => records.Horses.CountAsync()));
    }

    [Fact]
    public async Task Progress_counts_the_readings_up_to_what_the_preview_said()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        CaseFile[] files = [.. Enumerable.Range(0, 150).Select(at => Files.Healing($"C{at}", new($"Horse {at:000}{at:000}", null, null)))];
        List<int> told = [];
        int total = (await PreviewAsync(house, files)).Value.NewReadings;

        await house
            .Get<ApplyImport>()
            .ExecuteAsync(
                house.Vet,
                new ApplyImportInput
                {
                    CommandId = Guid.NewGuid(),
                    Cases = files,
                    Progress = new Told(told),
                }
            );

        Assert.Equal([900, 1350], told);
        Assert.Equal(1350, total);
    }

    [Fact]
    public async Task The_history_tells_the_import_and_who_did_it()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Guid caseId = (await ApplyAsync(house, [Files.Healing("Vane LH", Vane)])).Value.Cases[0].CaseId;

        IReadOnlyList<Records.History.ChangeView> changes = (
            await house.Get<Records.History.GetChanges>().ExecuteAsync(house.Vet, caseId)
        ).Value;

        Assert.Equal(4, changes.Count);
        Assert.All(changes, change => Assert.Equal(("Edda Marrow", "ApplyImport", true), (change.By, change.UseCase, change.IsNew)));
        Assert.Equal(3, changes.Count(change => change.Fields.Any(field => field is { Field: "readingCount", After: "3" })));
    }

    private static Task<Outcome<ImportResult>> ApplyAsync(
        RecordsHouse house,
        IReadOnlyList<CaseFile> files,
        ImportChoices? choices = null
    ) =>
        house
            .Get<ApplyImport>()
            .ExecuteAsync(
                house.Vet,
                new ApplyImportInput
                {
                    CommandId = Guid.NewGuid(),
                    Cases = files,
                    Choices = choices ?? new ImportChoices(),
                }
            );

    private static Task<Outcome<ImportPreview>> PreviewAsync(RecordsHouse house, IReadOnlyList<CaseFile> files) =>
        house.Get<PreviewImport>().ExecuteAsync(house.Vet, new PreviewImportInput { Cases = files });

    private static ImportChoices Choose(string label, CaseChoice choice) =>
        new() { Cases = new Dictionary<string, CaseChoice>(StringComparer.Ordinal) { [label] = choice } };

    private sealed class Told(List<int> told) : IProgress<int>
    {
        public void Report(int value) => told.Add(value);
    }
}
