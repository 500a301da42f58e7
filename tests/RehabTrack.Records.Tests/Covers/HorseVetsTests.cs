using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Covers;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.People;
using RehabTrack.Records.Referrals;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Records.Tests.Exercise;
using RehabTrack.Records.Tests.House;

namespace RehabTrack.Records.Tests.Covers;

/// <summary>Which vet may sign for a horse: the responsible one, and who stands in, on those days only.</summary>
public sealed class HorseVetsTests
{
    [Fact]
    public async Task Who_stands_in_signs_from_the_first_day_to_the_last_and_neither_before_nor_after()
    {
        await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
        Actor covering = await at.House.PersonAsync("Sorrel Dunn", Role.Vet);
        Assert.True((await at.SignAsync(ExerciseHouse.Plan)).Succeeded);
        await at.StandInAsync(covering, 1, 3);

        List<string> answers = [];
        for (int day = 0; day < 5; day++)
        {
            answers.Add(CodeOf(await at.DecideAsync(DecisionKind.Hold, who: covering)));
            at.House.Time.Advance(TimeSpan.FromDays(1));
        }

        Assert.Equal(["other-vet-responsible", "", "", "", "other-vet-responsible"], answers);
        Assert.Equal(
            ["Sorrel Dunn"],
            (await at.ViewAsync()).Decisions.Select(decision => decision.Line.EnteredBy).Distinct(StringComparer.Ordinal)
        );
    }

    [Fact]
    public async Task The_days_are_those_of_the_practice_and_not_of_the_server()
    {
        await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
        Actor covering = await at.House.PersonAsync("Sorrel Dunn", Role.Vet);
        Assert.True((await at.SignAsync(ExerciseHouse.Plan)).Succeeded);
        await at.StandInAsync(covering, 1, 1);

        // 22:30 and 23:30 UTC are 23:30 of the day before and 0:30 of the day in Vienna.
        at.House.Time.SetUtcNow(new DateTimeOffset(2026, 11, 24, 22, 30, 0, TimeSpan.Zero));
        string before = CodeOf(await at.DecideAsync(DecisionKind.Hold, who: covering));
        at.House.Time.SetUtcNow(new DateTimeOffset(2026, 11, 24, 23, 30, 0, TimeSpan.Zero));
        string within = CodeOf(await at.DecideAsync(DecisionKind.Hold, Tomorrow, covering));
        at.House.Time.SetUtcNow(new DateTimeOffset(2026, 11, 25, 22, 30, 0, TimeSpan.Zero));
        string last = CodeOf(await at.DecideAsync(DecisionKind.Hold, who: covering));
        at.House.Time.SetUtcNow(new DateTimeOffset(2026, 11, 25, 23, 30, 0, TimeSpan.Zero));
        string after = CodeOf(await at.DecideAsync(DecisionKind.Hold, Tomorrow, covering));

        Assert.Equal(["other-vet-responsible", "", "", "other-vet-responsible"], [before, within, last, after]);

        static SignDecisionInput Tomorrow(SignDecisionInput input) =>
            input with
            {
                Decision = input.Decision with { From = input.Decision.From.AddDays(1) },
            };
    }

    [Fact]
    public async Task Cover_that_is_taken_back_ends_at_the_next_click()
    {
        await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
        Actor covering = await at.House.PersonAsync("Sorrel Dunn", Role.Vet);
        Assert.True((await at.SignAsync(ExerciseHouse.Plan)).Succeeded);
        Saved cover = await at.StandInAsync(covering, 0, 9);
        Assert.Equal("", CodeOf(await at.DecideAsync(DecisionKind.Hold, who: covering)));
        Assert.Null((await at.House.Get<GetExercise>().ExecuteAsync(covering, at.Horse)).Value.SigningRefused);

        Assert.True(
            (
                await at.House.Get<WithdrawCover>().ExecuteAsync(at.House.Vet, new RecordInput(Guid.NewGuid(), cover.Id, cover.Version))
            ).Succeeded
        );

        Outcome<Saved> refused = await at.DecideAsync(DecisionKind.Hold, who: covering);
        Assert.Equal(("other-vet-responsible", at.House.Vet.Name), (CodeOf(refused), refused.Problems[0].Arguments[0]));
        Assert.Equal(
            "other-vet-responsible",
            (await at.House.Get<GetExercise>().ExecuteAsync(covering, at.Horse)).Value.SigningRefused!.Code
        );
        Assert.Equal(
            "other-vet-responsible",
            (await at.House.Get<ListReports>().ExecuteAsync(covering, at.Case)).Value.ReleaseRefused!.Code
        );
        Assert.Null((await at.House.Get<ListReports>().ExecuteAsync(at.House.Vet, at.Case)).Value.ReleaseRefused);
    }

    [Fact]
    public async Task Another_vet_signs_no_plan_no_decision_but_a_stop_no_release_and_no_closing()
    {
        await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
        Actor other = await at.House.PersonAsync("Sorrel Dunn", Role.Vet);
        Assert.True((await at.SignAsync(ExerciseHouse.Plan)).Succeeded);
        Assert.True((await at.DecideAsync(DecisionKind.Hold)).Succeeded);
        foreach (DecisionKind kind in Enum.GetValues<DecisionKind>().Where(kind => kind != DecisionKind.Stop))
        {
            Assert.Equal((kind, "other-vet-responsible"), (kind, CodeOf(await at.DecideAsync(kind, who: other))));
        }

        DecisionView decision = (await at.ViewAsync()).Decisions[0];
        Assert.Equal(
            "other-vet-responsible",
            CodeOf(
                await at
                    .House.Get<ReleaseDecision>()
                    .ExecuteAsync(
                        other,
                        new ReleaseDecisionInput(Guid.NewGuid(), decision.Id, decision.Version, ["well"], ["well"], WithPicture: false)
                    )
            )
        );
        Saved draft = (await at.DraftAsync(ExerciseHouse.Plan)).Value;
        Assert.Equal(
            "other-vet-responsible",
            CodeOf(
                await at
                    .House.Get<SignPlan>()
                    .ExecuteAsync(
                        other,
                        new SignPlanInput
                        {
                            CommandId = Guid.NewGuid(),
                            HorseId = at.Horse,
                            Version = draft.Version,
                            SeenNumber = (await at.ViewAsync()).LastNumber,
                            From = ExerciseHouse.Today,
                            Place = PlanPlace.Start,
                            IsAdvance = true,
                            RecheckDate = ExerciseHouse.Today.AddDays(60),
                        }
                    )
            )
        );
        CaseView injury = (await at.House.Get<GetCase>().ExecuteAsync(other, at.Case)).Value;
        Assert.Equal(
            "other-vet-responsible",
            CodeOf(
                await at
                    .House.Get<CloseCase>()
                    .ExecuteAsync(
                        other,
                        new CloseCaseInput
                        {
                            CommandId = Guid.NewGuid(),
                            CaseId = injury.Id,
                            Version = injury.Version,
                            End = CaseEnd.Resolved,
                            On = ExerciseHouse.Today,
                            Outcome = "sound",
                        }
                    )
            )
        );

        Assert.Equal("", CodeOf(await at.DecideAsync(DecisionKind.Stop, who: other)));
        Assert.False((await at.YardAsync()).Permit.Work.HasOuting);
    }

    [Fact]
    public async Task Nobody_stands_in_for_who_stands_in()
    {
        await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
        Actor covering = await at.House.PersonAsync("Sorrel Dunn", Role.Vet);
        Actor second = await at.House.PersonAsync("Merle Oake", Role.Vet);
        Assert.True((await at.SignAsync(ExerciseHouse.Plan)).Succeeded);
        await at.StandInAsync(covering, 0, 9);
        await at
            .House.Get<SaveCover>()
            .ExecuteAsync(
                at.House.Vet,
                new SaveCoverInput(Guid.NewGuid(), covering.PersonId, second.PersonId, ExerciseHouse.Today, ExerciseHouse.Today)
            );

        Assert.Equal("other-vet-responsible", CodeOf(await at.DecideAsync(DecisionKind.Hold, who: second)));
    }

    [Fact]
    public async Task Who_is_responsible_for_one_of_the_open_cases_signs_and_where_nobody_is_every_vet_does()
    {
        await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
        Actor other = await at.House.PersonAsync("Sorrel Dunn", Role.Vet);
        Assert.True((await at.SignAsync(ExerciseHouse.Plan)).Succeeded);
        Guid second = (await at.House.CaseAsync(at.Horse)).Id;

        await ResponsibleAsync(at, second, other.PersonId);
        Assert.Equal("", CodeOf(await at.DecideAsync(DecisionKind.Hold, who: other)));
        await ResponsibleAsync(at, second, null);
        Assert.Equal("other-vet-responsible", CodeOf(await at.DecideAsync(DecisionKind.Hold, who: other)));
        await ResponsibleAsync(at, at.Case, null);
        Assert.Equal("", CodeOf(await at.DecideAsync(DecisionKind.Hold, who: other)));
    }

    [Fact]
    public async Task A_responsible_vet_who_was_put_away_keeps_nobody_from_signing()
    {
        await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
        Actor leaving = await at.House.PersonAsync("Sorrel Dunn", Role.Vet);
        Assert.True((await at.SignAsync(ExerciseHouse.Plan)).Succeeded);
        await ResponsibleAsync(at, at.Case, leaving.PersonId);
        Assert.Equal("other-vet-responsible", CodeOf(await at.DecideAsync(DecisionKind.Hold)));

        PersonView person = (await at.House.Get<GetPerson>().ExecuteAsync(at.House.Vet, leaving.PersonId)).Value;
        Assert.True(
            (
                await at.House.Get<ArchivePerson>().ExecuteAsync(at.House.Vet, new RecordInput(Guid.NewGuid(), person.Id, person.Version))
            ).Succeeded
        );

        Assert.Equal("", CodeOf(await at.DecideAsync(DecisionKind.Hold)));
    }

    private static async Task ResponsibleAsync(ExerciseHouse at, Guid caseId, Guid? vet)
    {
        CaseView injury = (await at.House.Get<GetCase>().ExecuteAsync(at.House.Vet, caseId)).Value;
        Outcome<Saved> changed = await at
            .House.Get<ChangeCase>()
            .ExecuteAsync(
                at.House.Vet,
                new ChangeCaseInput
                {
                    CommandId = Guid.NewGuid(),
                    Id = caseId,
                    Version = injury.Version,
                    Limb = injury.Course.Limb,
                    Structure = injury.Course.Structure,
                    Landmark = injury.Course.Landmark,
                    Onset = injury.Course.Onset,
                    TargetFraction = injury.Course.TargetFraction,
                    ResponsibleVetId = vet,
                }
            );
        Assert.True(changed.Succeeded, string.Join(", ", changed.Problems.Select(problem => problem.Code)));
    }

    private static string CodeOf<T>(Outcome<T> outcome) => outcome.Problems is [Problem first, ..] ? first.Code : "";
}
