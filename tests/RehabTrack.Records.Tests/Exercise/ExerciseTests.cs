using System.Text.Json;
using Microsoft.Data.Sqlite;
using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Findings;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Linking;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Rechecks.Suggestions;
using RehabTrack.Records.Bookings;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Examinations;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.Imports;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Links;
using RehabTrack.Records.People;
using RehabTrack.Records.Practices;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Records.Tests.Bookings;
using RehabTrack.Records.Tests.House;

namespace RehabTrack.Records.Tests.Exercise;

/// <summary>Plan, decision, log and concern on a real database: what is signed, what drops it, who may do what.</summary>
public sealed class ExerciseTests
{
    private static string Code<T>(Outcome<T> outcome) => Assert.Single(outcome.Problems).Code;

    public sealed class Plans
    {
        [Fact]
        public async Task Nothing_is_permitted_before_a_vet_signs_a_plan()
        {
            await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
            Assert.Equal(PermitState.NothingSigned, (await at.YardAsync()).Permit.State);

            Assert.True((await at.DraftAsync(ExerciseHouse.Plan)).Succeeded);
            Assert.Equal(
                (PermitState.NothingSigned, 0),
                ((await at.YardAsync()).Permit.State, (await at.YardAsync()).Permit.Work.Outing.Total)
            );

            Assert.True((await at.SignAsync(ExerciseHouse.Plan)).Succeeded);
            Permit permit = (await at.YardAsync()).Permit;
            Assert.Equal((PermitState.Live, 20, 2), (permit.State, permit.Work.Outing.Walk, permit.Work.OutingsADay));
            Assert.Equal(1, (await at.YardAsync()).PlanNumber);
            Assert.Null((await at.ViewAsync()).Draft);
        }

        [Fact]
        public async Task A_wrong_plan_is_kept_as_a_draft_with_what_is_wrong_and_cannot_be_signed()
        {
            await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
            PlanVersion wrong = ExerciseHouse.Plan with { Steps = [ExerciseHouse.Plan.Steps[0] with { ShortestDays = 0 }] };

            Outcome<Saved> kept = await at.DraftAsync(wrong);
            Assert.NotEmpty(kept.Cautions);
            Assert.Equal(0, (await at.ViewAsync()).Draft!.Plan.Steps[0].ShortestDays);
            Assert.Contains(
                (await at.SignAsync(wrong)).Problems,
                problem => problem.Field.StartsWith("steps[0]", StringComparison.Ordinal)
            );
        }

        [Fact]
        public async Task A_plan_is_signed_from_today_on_with_a_recheck_after_it_and_a_place_within_it()
        {
            await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
            Outcome<Saved> refused = await at.SignAsync(
                ExerciseHouse.Plan,
                input =>
                    input with
                    {
                        From = ExerciseHouse.Today.AddDays(-1),
                        RecheckDate = ExerciseHouse.Today.AddDays(-1),
                        Place = new PlanPlace(2, 0),
                    }
            );

            Assert.Equal(
                ["signature-in-past", "recheck-before-start", "step-not-in-plan"],
                refused.Problems.Select(problem => problem.Code)
            );
        }

        [Fact]
        public async Task Of_two_vets_who_sign_at_once_the_second_is_told_and_loses_nothing()
        {
            await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
            Assert.True((await at.SignAsync(ExerciseHouse.Plan)).Succeeded);
            Assert.True((await at.DecideAsync(DecisionKind.Hold)).Succeeded);

            Outcome<Saved> second = await at.DecideAsync(DecisionKind.Hold, input => input with { SeenNumber = 1 });
            Assert.Equal("exercise-changed-since-seen", Code(second));
            Assert.Single((await at.ViewAsync()).Decisions);

            // The second draft stands where it was.
            Saved draft = (await at.DraftAsync(ExerciseHouse.Plan with { Title = "second" })).Value;
            Outcome<Saved> plan = await at
                .House.Get<SignPlan>()
                .ExecuteAsync(
                    at.House.Vet,
                    new SignPlanInput
                    {
                        CommandId = Guid.NewGuid(),
                        HorseId = at.Horse,
                        Version = draft.Version,
                        SeenNumber = 0,
                        From = ExerciseHouse.Today,
                        Place = PlanPlace.Start,
                        IsAdvance = true,
                        RecheckDate = ExerciseHouse.Today.AddDays(30),
                    }
                );
            Assert.Equal("exercise-changed-since-seen", Code(plan));
            Assert.Equal("second", (await at.ViewAsync()).Draft!.Plan.Title);
        }

        [Fact]
        public async Task A_line_of_the_history_is_never_changed()
        {
            await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
            Assert.True((await at.SignAsync(ExerciseHouse.Plan)).Succeeded);

            await using SqliteConnection connection = new($"Data Source={at.House.Database}");
            await connection.OpenAsync();
            await using SqliteCommand change = connection.CreateCommand();
            change.CommandText = "UPDATE ExerciseEntry SET Number = 7";
            SqliteException refused = await Assert.ThrowsAsync<SqliteException>(() => change.ExecuteNonQueryAsync());
            Assert.Contains("append-only", refused.Message, StringComparison.Ordinal);
        }
    }

    public sealed class Decisions
    {
        [Fact]
        public async Task A_gate_is_passed_by_a_signed_examination_and_a_signed_decision_alone()
        {
            await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
            Assert.True((await at.SignAsync(ExerciseHouse.Plan)).Succeeded);
            for (int day = 0; day < 28; day++)
            {
                Assert.True(
                    (await at.LogAsync(new DayLog { Date = ExerciseHouse.Today.AddDays(day), Done = new OutingMinutes(40) })).Succeeded
                );
                at.House.Time.Advance(TimeSpan.FromDays(1));
            }

            Assert.Equal(0, (await at.YardAsync()).Permit.Work.Outing.Trot);
            static SignDecisionInput ToTrot(SignDecisionInput input) =>
                input with
                {
                    Decision = input.Decision with { Place = new PlanPlace(1, 0) },
                };
            // Signed without an examination it is kept, and raises nothing.
            Assert.True((await at.DecideAsync(DecisionKind.Advance, ToTrot)).Succeeded);
            Assert.Equal(0, (await at.YardAsync()).Permit.Work.Outing.Trot);

            await at.House.SignedAsync(at.Case, Wishes.Content(ExerciseHouse.Today.AddDays(28), (16, 0.1), (18, 0.3)));
            Assert.True((await at.DecideAsync(DecisionKind.Advance, ToTrot)).Succeeded);
            Assert.Equal((20, 5), ((await at.YardAsync()).Permit.Work.Outing.Walk, (await at.YardAsync()).Permit.Work.Outing.Trot));
        }

        [Fact]
        public async Task What_it_rested_on_is_kept_and_disagreeing_asks_for_a_sentence()
        {
            await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
            Assert.True((await at.SignAsync(ExerciseHouse.Plan)).Succeeded);
            Saved examination = await at.House.SignedAsync(at.Case, Wishes.Content(ExerciseHouse.Today, (16, 0.1), (18, 0.3)));

            Outcome<Saved> silent = await at.DecideAsync(
                DecisionKind.Advance,
                input => input with { Decision = input.Decision with { Place = PlanPlace.Start }, Disagreement = " " }
            );
            Assert.Equal("disagreement-missing", Code(silent));

            // One examination alone is not yet readable: the rules say hold.
            Assert.True((await at.DecideAsync(DecisionKind.Hold, input => input with { Disagreement = null })).Succeeded);
            DecisionView kept = Assert.Single((await at.ViewAsync()).Decisions);
            CaseGround ground = Assert.Single(kept.Ground.Cases);
            Assert.Equal(
                (at.Case, SuggestedMove.Hold, SuggestedMove.Hold),
                (ground.CaseId, ground.Suggested, kept.Ground.Suggested!.Value)
            );
            Assert.Equal([examination.Id], ground.Examinations);
            Assert.Contains(RuleCode.NotYetReadable, ground.Rules);
            Assert.Equal("Edda Marrow", ((DecisionSigned)kept.Line.Entry).Decision.SignedBy);
        }

        [Fact]
        public async Task Words_on_links_settings_and_what_the_rules_spoke_of_are_kept_with_their_figures()
        {
            await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
            Assert.True((await at.SignAsync(ExerciseHouse.Plan)).Succeeded);
            await at.House.SignedAsync(at.Case, Wishes.Content(ExerciseHouse.Today.AddDays(-60), (16, 0.1), (18, 0.2), (20, 0)));
            await at.House.SignedAsync(at.Case, Wishes.Content(ExerciseHouse.Today, (16, 0.1), (18, 0.6), (20, 0)));
            CaseView before = (await at.House.Get<GetCase>().ExecuteAsync(at.House.Vet, at.Case)).Value;
            PlaceKey[] places = [.. before.Course.Examinations.Select(one => new PlaceKey(one.Id, LinkPath.Axial, one.Readings[1].Level))];
            Assert.True(
                (
                    await at
                        .House.Get<PinLink>()
                        .ExecuteAsync(
                            at.House.Vet,
                            new LinkWordInput
                            {
                                CommandId = Guid.NewGuid(),
                                CaseId = at.Case,
                                First = places[0],
                                Second = places[1],
                                Reason = "same scar",
                            }
                        )
                ).Succeeded
            );

            Assert.True(
                (
                    await at.DecideAsync(
                        DecisionKind.StepBack,
                        input => input with { Decision = input.Decision with { Place = PlanPlace.Start } }
                    )
                ).Succeeded
            );

            CaseGround ground = Assert.Single((await at.ViewAsync()).Decisions[0].Ground.Cases);
            LinkConstraint word = Assert.Single(ground.Figures!.LinkWords);
            Assert.Equal((places[0], places[1]), (word.First, word.Second));
            Assert.Equal(before.Practice.Settings, ground.Figures.Settings);
            Assert.Equal(ground.Rules, ground.Hits.Select(hit => hit.Rule.Code));
            RuleHit worse = ground.Hits.First(hit => hit.Rule.Code == RuleCode.Worsening);
            Finding told = CaseAnalyser
                .Analyse(before.Course, [word], before.Practice.Settings, before.Practice.Today)
                .Findings.First(finding => finding is { Kind: FindingKind.Worsening, IsEarlier: false });
            Assert.Equal(
                (told.ChangePercent, told.Level, told.Date, told.ComparedWith),
                (worse.Finding!.ChangePercent, worse.Finding.Level, worse.Finding.Date, worse.Finding.ComparedWith)
            );
            Assert.True(told.ChangePercent > 100);
        }

        [Fact]
        public void A_ground_of_before_figures_were_kept_reads_as_one_without_them()
        {
            const string Kept = """
                {
                  "visit": { "signs": {}, "heat": "NotChecked", "swelling": "NotChecked", "pain": "NotChecked" },
                  "asked": "More",
                  "suggested": "Hold",
                  "cases": [
                    {
                      "caseId": "0193a0c4-0000-7000-8000-000000000001",
                      "engineVersion": "1",
                      "asOf": "2026-10-01",
                      "verdict": "Healing",
                      "ratePercentPer60Days": -12.5,
                      "suggested": "Hold",
                      "rules": ["SoundnessNotRecorded"],
                      "examinations": [],
                      "inputHash": "00"
                    }
                  ]
                }
                """;

            DecisionGround ground = JsonSerializer.Deserialize<DecisionGround>(Kept, RecordJson.Options)!;

            Assert.Null(ground.Cases[0].Figures);
            Assert.Empty(ground.Cases[0].Hits);
            Assert.Equal((Verdict.Healing, -12.5), (ground.Cases[0].Verdict, ground.Cases[0].RatePercentPer60Days));
        }

        [Theory]
        [InlineData("UPDATE Decision SET GroundJson = '{}'", false)]
        [InlineData("UPDATE Decision SET Disagreement = NULL", false)]
        [InlineData("UPDATE Decision SET Disagreement = 'other', ReleaseJson = NULL", false)]
        [InlineData("UPDATE Decision SET CorrectsId = Id", false)]
        [InlineData("UPDATE Decision SET EntryId = Id", false)]
        [InlineData("DELETE FROM Decision", false)]
        [InlineData("UPDATE Decision SET ReleaseJson = NULL, ReleasedAt = NULL, ReleasedById = NULL, Version = Id", true)]
        public async Task Of_a_signed_decision_nothing_can_be_changed_but_its_release(string statement, bool passes)
        {
            await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
            Assert.True((await at.SignAsync(ExerciseHouse.Plan)).Succeeded);
            Assert.True((await at.DecideAsync(DecisionKind.Hold)).Succeeded);

            await using SqliteConnection connection = new($"Data Source={at.House.Database}");
            await connection.OpenAsync();
            await using SqliteCommand change = connection.CreateCommand();
            change.CommandText = statement;
            Exception? refused = await Record.ExceptionAsync(() => change.ExecuteNonQueryAsync());

            Assert.Equal(
                passes ? null : "append-only",
                refused?.Message.Contains("append-only", StringComparison.Ordinal) == true ? "append-only" : refused?.Message
            );
        }

        [Fact]
        public async Task A_correction_is_a_new_decision_that_names_the_one_it_corrects()
        {
            await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
            Assert.True((await at.SignAsync(ExerciseHouse.Plan)).Succeeded);
            Guid wrong = (await at.DecideAsync(DecisionKind.Stop)).Value.Id;

            Outcome<Saved> unknown = await at.DecideAsync(DecisionKind.Hold, input => input with { CorrectsId = Guid.NewGuid() });
            Outcome<Saved> right = await at.DecideAsync(
                DecisionKind.StepBack,
                input => input with { CorrectsId = wrong, Decision = input.Decision with { Place = PlanPlace.Start } }
            );

            Assert.Equal(("corrects", "not-found"), (unknown.Problems[0].Field, unknown.Problems[0].Code));
            ExerciseView view = await at.ViewAsync();
            Assert.Equal([(right.Value.Id, wrong), (wrong, (Guid?)null)], view.Decisions.Select(one => (one.Id, one.CorrectsId)));
            Assert.Equal(DecisionKind.Stop, ((DecisionSigned)view.Decisions[1].Line.Entry).Decision.Kind);
            Assert.True(view.Today.Work.HasOuting);
        }

        [Fact]
        public async Task A_booked_day_is_missed_until_somebody_examined_on_it_or_shortly_before()
        {
            await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
            Assert.True((await at.SignAsync(ExerciseHouse.Plan)).Succeeded);
            Assert.True((await at.House.BookAsync(at.Case, 3)).Succeeded);
            at.House.Time.Advance(TimeSpan.FromDays(3));
            Assert.Empty((await at.ViewAsync()).Missed);

            at.House.Time.Advance(TimeSpan.FromDays(1));
            Assert.Equal([new MissedRecheck(at.Case, ExerciseHouse.Today.AddDays(3))], (await at.ViewAsync()).Missed);

            await at.House.SignedAsync(at.Case, Wishes.Content(ExerciseHouse.Today.AddDays(4), (16, 0.1), (18, 0.3)));
            Assert.Single((await at.ViewAsync()).Missed);
            await at.House.SignedAsync(at.Case, Wishes.Content(ExerciseHouse.Today.AddDays(2), (16, 0.1), (18, 0.3)));
            Assert.Empty((await at.ViewAsync()).Missed);
        }

        [Fact]
        public async Task With_one_of_two_cases_resolved_the_plan_goes_on_and_with_the_last_no_work_is_signed()
        {
            await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
            Guid other = (await at.House.CaseAsync(at.Horse)).Id;
            Assert.True((await at.SignAsync(ExerciseHouse.Plan)).Succeeded);
            Work before = (await at.YardAsync()).Permit.Work;

            await at.CloseAsync(CaseEnd.Resolved);
            Assert.Equal(before, (await at.YardAsync()).Permit.Work);
            Assert.True(before.HasOuting);

            await at.CloseAsync(CaseEnd.Resolved, other);
            Assert.Equal(Work.None, (await at.YardAsync()).Permit.Work);
        }

        [Fact]
        public async Task Signs_found_by_hand_make_the_rules_say_stop()
        {
            await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
            Assert.True((await at.SignAsync(ExerciseHouse.Plan)).Succeeded);

            Outcome<Saved> refused = await at.DecideAsync(
                DecisionKind.Hold,
                input =>
                    input with
                    {
                        Visit = new Visit { Heat = SignGrade.Slight },
                        Disagreement = null,
                    }
            );

            Assert.Equal(("disagreement-missing", "Stop"), (Code(refused), refused.Problems[0].Arguments[0]));
        }

        [Fact]
        public async Task Only_what_is_released_reaches_owner_and_trainer_each_their_own()
        {
            await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
            Assert.True((await at.SignAsync(ExerciseHouse.Plan)).Succeeded);
            Saved decision = (await at.DecideAsync(DecisionKind.Hold)).Value;
            Assert.Empty((await at.YardAsync()).Release.Sentences);
            Assert.Empty((await at.YardAsync(at.Owner)).Release.Sentences);

            Outcome<Saved> empty = await at
                .House.Get<ReleaseDecision>()
                .ExecuteAsync(at.House.Vet, new ReleaseDecisionInput(Guid.NewGuid(), decision.Id, decision.Version, [" "], []));
            Assert.Equal(["owner", "trainer"], empty.Problems.Select(problem => problem.Field));

            Assert.True(
                (
                    await at
                        .House.Get<ReleaseDecision>()
                        .ExecuteAsync(
                            at.House.Vet,
                            new ReleaseDecisionInput(
                                Guid.NewGuid(),
                                decision.Id,
                                decision.Version,
                                ["Thistle Vane stays at walk."],
                                ["Walk in hand, nothing more."]
                            )
                        )
                ).Succeeded
            );
            Assert.Equal(["Walk in hand, nothing more."], (await at.YardAsync()).Release.Sentences);
            Assert.Equal(["Thistle Vane stays at walk."], (await at.YardAsync(at.Owner)).Release.Sentences);
        }

        [Fact]
        public async Task The_sizes_of_an_injury_reach_the_owner_alone_as_they_were_when_released_and_only_when_ticked()
        {
            await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
            foreach ((int days, double area) in ((int, double)[])[(-120, 0.5), (-60, 0.25), (0, 0.24)])
            {
                await at.House.SignedAsync(at.Case, Wishes.Content(ExerciseHouse.Today.AddDays(days), (16, 0.1), (18, area), (20, 0)));
            }

            await at.SignAsync(ExerciseHouse.Plan);
            Saved decision = (await at.DecideAsync(DecisionKind.Hold)).Value;
            Saved plain = await ReleaseAsync(at, decision, withPicture: false);
            Assert.Empty((await at.YardAsync(at.Owner)).Release.Pictures);

            await ReleaseAsync(at, plain, withPicture: true);
            IReadOnlyList<SizePicture> shown = (await at.YardAsync(at.Owner)).Release.Pictures;
            Assert.Equal([true, true, true], Assert.Single(shown).Bars.Select(bar => bar.Share is > 0 and <= 1));
            Assert.Equal([1, 0.5, 0.5], shown[0].Bars.Select(bar => Math.Round(bar.Share, 1)));
            Assert.Equal([false, true], shown[0].Bars.Skip(1).Select(bar => bar.IsWithinError));
            Assert.Empty((await at.YardAsync()).Release.Pictures);

            at.House.Time.Advance(TimeSpan.FromDays(1));
            await at.House.SignedAsync(at.Case, Wishes.Content(ExerciseHouse.Today.AddDays(1), (16, 0.1), (18, 0.9), (20, 0.4)));
            Assert.Equal(shown[0].Bars, (await at.YardAsync(at.Owner)).Release.Pictures[0].Bars);
        }

        [Fact]
        public async Task The_next_recheck_is_the_day_it_is_due_and_the_one_booked_when_there_is_a_booking()
        {
            await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
            Assert.Null((await at.YardAsync()).Recheck);
            await at.House.SignedAsync(at.Case, Wishes.Content(ExerciseHouse.Today, (16, 0.1), (18, 0.3), (20, 0)));
            Assert.Equal(new YardRecheck(ExerciseHouse.Today.AddDays(60), null, false), (await at.YardAsync()).Recheck);

            Outcome<Saved> booked = await at
                .House.Get<BookRecheck>()
                .ExecuteAsync(
                    at.House.Vet,
                    new BookRecheckInput(
                        Guid.NewGuid(),
                        at.Case,
                        new BookingPlan { Date = ExerciseHouse.Today.AddDays(62), Time = new TimeOnly(9, 30) }
                    )
                );
            Assert.True(booked.Succeeded);
            Assert.Equal(
                new YardRecheck(ExerciseHouse.Today.AddDays(62), new TimeOnly(9, 30), true),
                (await at.YardAsync(at.Owner)).Recheck
            );
        }

        private static async Task<Saved> ReleaseAsync(ExerciseHouse at, Saved decision, bool withPicture) =>
            (
                await at
                    .House.Get<ReleaseDecision>()
                    .ExecuteAsync(
                        at.House.Vet,
                        new ReleaseDecisionInput(Guid.NewGuid(), decision.Id, decision.Version, ["She walks."], ["Walk."], withPicture)
                    )
            ).Value;
    }

    public sealed class LogsAndConcerns
    {
        [Fact]
        public async Task A_log_keeps_what_was_permitted_on_its_day_whatever_is_signed_later()
        {
            await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
            Assert.True((await at.SignAsync(ExerciseHouse.Plan)).Succeeded);
            at.House.Time.Advance(TimeSpan.FromDays(1));
            Assert.True((await at.DecideAsync(DecisionKind.Stop)).Succeeded);

            Assert.True((await at.LogAsync(new DayLog { Date = ExerciseHouse.Today, Done = new OutingMinutes(40) })).Succeeded);
            Assert.True((await at.LogAsync(new DayLog { Date = ExerciseHouse.Today.AddDays(1), Done = new OutingMinutes(5) })).Succeeded);

            Assert.Equal(
                [20, 0],
                (await at.ViewAsync()).Lines.Where(line => line.Entry is DayLogged).Select(line => line.Words!.Permitted!.Outing.Walk)
            );
        }

        [Fact]
        public async Task A_concern_drops_the_permit_at_once_until_a_vet_signs_and_seeing_it_lifts_nothing()
        {
            await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
            Assert.True((await at.SignAsync(ExerciseHouse.Plan)).Succeeded);
            Assert.True((await at.House.Get<NoteLook>().ExecuteAsync(at.Trainer, new NoteLookInput(Guid.NewGuid(), [at.Horse]))).Succeeded);
            at.House.Time.Advance(TimeSpan.FromHours(1));

            Assert.True((await at.ReportAsync(at.Owner)).Value.IsConcern);
            YardHorse horse = await at.YardAsync();
            Assert.Equal((PermitState.Floor, 0), (horse.Permit.State, horse.Permit.Work.Outing.Total));
            Assert.Null(horse.Concern!.SeenBy);

            ConcernView concern = Assert.Single((await at.ViewAsync()).Concerns);
            Assert.Equal(("warm behind", "Jory Fenn"), (concern.Line.Words!.Words, concern.Line.EnteredBy));
            Assert.Null(concern.TrainerLookedAt);
            Assert.True(
                (
                    await at
                        .House.Get<SeeConcern>()
                        .ExecuteAsync(at.House.Vet, new RecordInput(Guid.NewGuid(), concern.Id, concern.Version))
                ).Succeeded
            );
            Assert.Equal(("Edda Marrow", PermitState.Floor), ((await at.YardAsync()).Concern!.SeenBy, (await at.YardAsync()).Permit.State));

            at.House.Time.Advance(TimeSpan.FromHours(1));
            Assert.True((await at.House.Get<NoteLook>().ExecuteAsync(at.Trainer, new NoteLookInput(Guid.NewGuid(), [at.Horse]))).Succeeded);
            Assert.NotNull((await at.ViewAsync()).Concerns[0].TrainerLookedAt);

            Assert.True((await at.DecideAsync(DecisionKind.Hold)).Succeeded);
            Assert.Null((await at.YardAsync()).Concern);
            Assert.True((await at.ViewAsync()).Concerns[0].IsAnswered);
            Assert.Equal((PermitState.Held, 20), ((await at.YardAsync()).Permit.State, (await at.YardAsync()).Permit.Work.Outing.Walk));
        }

        [Fact]
        public async Task After_a_drop_the_practice_sees_whether_the_trainer_has_opened_the_page_since()
        {
            await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
            async Task LookAsync() =>
                Assert.Equal(
                    1,
                    (await at.House.Get<NoteLook>().ExecuteAsync(at.Trainer, new NoteLookInput(Guid.NewGuid(), [at.Horse]))).Value
                );
            await at.SignAsync(ExerciseHouse.Plan);
            await LookAsync();
            Assert.Null((await at.ViewAsync()).Drop);

            at.House.Time.Advance(TimeSpan.FromDays(1));
            DateOnly day = ExerciseHouse.Today.AddDays(1);
            Assert.True((await at.DecideAsync(DecisionKind.Stop)).Succeeded);
            Assert.Equal(new PermitDrop(day, null), (await at.ViewAsync()).Drop);

            at.House.Time.Advance(TimeSpan.FromMinutes(5));
            await LookAsync();
            Assert.Equal(new PermitDrop(day, at.House.Time.GetUtcNow().UtcDateTime), (await at.ViewAsync()).Drop);
        }

        [Fact]
        public async Task A_sign_in_a_log_is_a_concern_and_none_or_not_checked_is_not()
        {
            await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
            Assert.True((await at.SignAsync(ExerciseHouse.Plan)).Succeeded);

            Assert.False((await at.LogAsync(new DayLog { Date = ExerciseHouse.Today, Heat = SignGrade.None })).Value.IsConcern);
            Assert.False((await at.LogAsync(new DayLog { Date = ExerciseHouse.Today })).Value.IsConcern);
            Assert.Equal(PermitState.Live, (await at.YardAsync()).Permit.State);

            Assert.True((await at.LogAsync(new DayLog { Date = ExerciseHouse.Today, Swelling = SignGrade.Slight })).Value.IsConcern);
            Assert.Equal(PermitState.Floor, (await at.YardAsync()).Permit.State);
            Assert.Equal(3, (await at.YardAsync()).LoggedToday.Count);
        }

        [Fact]
        public async Task What_cannot_be_is_refused_with_its_field()
        {
            await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
            Outcome<LogAnswer> refused = await at.LogAsync(
                new DayLog
                {
                    Date = ExerciseHouse.Today.AddDays(1),
                    Done = new OutingMinutes(-1, 1441),
                    Outings = -1,
                }
            );

            Assert.Equal(
                [("date", "date-in-future"), ("walk", "minutes-negative"), ("trot", "minutes-over-day"), ("outings", "outings-negative")],
                refused.Problems.Select(problem => (problem.Field, problem.Code))
            );
            Assert.Equal(
                "until-before-from",
                Code(
                    await at
                        .House.Get<PauseWork>()
                        .ExecuteAsync(
                            at.Trainer,
                            new PauseWorkInput(Guid.NewGuid(), at.Horse, ExerciseHouse.Today, ExerciseHouse.Today.AddDays(-1), null)
                        )
                )
            );
        }

        [Fact]
        public async Task A_horse_whose_case_was_closed_stays_on_the_page_for_a_time_with_no_work_signed()
        {
            await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
            await at.SignAsync(ExerciseHouse.Plan);
            Assert.Equal(PermitState.Live, (await at.YardAsync()).Permit.State);
            await at.CloseAsync(CaseEnd.Retired);

            YardHorse horse = await at.YardAsync();
            Assert.Equal((PermitState.Closed, false), (horse.Permit.State, horse.Permit.Work.HasOuting));
            Assert.Equal("log-without-open-case", Code(await at.LogAsync(new DayLog { Date = ExerciseHouse.Today })));

            at.House.Time.Advance(TimeSpan.FromDays(61));
            Assert.Empty((await at.House.Get<GetYard>().ExecuteAsync(at.Trainer, NoInput.Value)).Value);
        }

        [Fact]
        public async Task A_horse_that_left_is_gone_from_the_page_at_once()
        {
            await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
            await at.SignAsync(ExerciseHouse.Plan);
            await at.CloseAsync(CaseEnd.Sold);

            Assert.Empty((await at.House.Get<GetYard>().ExecuteAsync(at.Trainer, NoInput.Value)).Value);
        }

        [Fact]
        public async Task A_repeated_tap_logs_once()
        {
            await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
            LogDayInput input = new()
            {
                CommandId = Guid.NewGuid(),
                HorseId = at.Horse,
                Log = new DayLog { Date = ExerciseHouse.Today, Done = new OutingMinutes(20) },
            };

            Outcome<LogAnswer> first = await at.House.Get<LogDay>().ExecuteAsync(at.Trainer, input);
            Outcome<LogAnswer> second = await at.House.Get<LogDay>().ExecuteAsync(at.Trainer, input);

            Assert.Equal(first.Value, second.Value);
            Assert.Single((await at.ViewAsync()).Lines);
        }

        [Fact]
        public async Task Another_persons_horse_is_neither_seen_nor_logged_nor_reported()
        {
            await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
            Actor stranger = await at.House.PersonAsync("Nobody Near", Role.Trainer);

            Assert.Empty((await at.House.Get<GetYard>().ExecuteAsync(stranger, NoInput.Value)).Value);
            Assert.Equal("not-found", Code(await at.LogAsync(new DayLog { Date = ExerciseHouse.Today }, stranger)));
            Assert.Equal("not-found", Code(await at.ReportAsync(stranger)));
            Assert.Equal(0, (await at.House.Get<NoteLook>().ExecuteAsync(stranger, new NoteLookInput(Guid.NewGuid(), [at.Horse]))).Value);
        }
    }

    public sealed class Holds
    {
        private static async Task<ExerciseHouse> DecidedAsync()
        {
            ExerciseHouse at = await ExerciseHouse.BuildAsync();
            await at.House.SignedAsync(at.Case, Wishes.Content(ExerciseHouse.Today.AddDays(-60), (16, 0.1), (18, 0.3), (20, 0)));
            Assert.True((await at.SignAsync(ExerciseHouse.Plan)).Succeeded);
            Assert.True((await at.DecideAsync(DecisionKind.Hold)).Succeeded);
            return at;
        }

        private static async Task<PermitHoldKind[]> KindsAsync(ExerciseHouse at) =>
            [.. (await at.ViewAsync()).Lines.Select(line => line.Entry).OfType<HoldPlaced>().Select(hold => hold.Kind)];

        [Fact]
        public async Task A_signed_examination_with_a_setback_stops_growth_and_an_unremarkable_one_does_not()
        {
            await using ExerciseHouse at = await DecidedAsync();
            at.House.Time.Advance(TimeSpan.FromDays(1));
            await at.House.SignedAsync(at.Case, Wishes.Content(ExerciseHouse.Today.AddDays(-20), (16, 0.1), (18, 0.29), (20, 0)));
            Assert.Empty(await KindsAsync(at));

            await at.House.SignedAsync(at.Case, Wishes.Content(ExerciseHouse.Today, (16, 0.1), (18, 0.3), (20, 0.4)));
            // Its draft showed it first; that hold ended when the examination was signed.
            Assert.Equal([PermitHoldKind.UnsignedSetback, PermitHoldKind.Setback], await KindsAsync(at));
            Assert.DoesNotContain((await at.YardAsync()).Permit.Reasons, reason => reason.Code == PermitReasonCode.UnsignedSetback);
            Assert.Contains((await at.YardAsync()).Permit.Reasons, reason => reason.Code == PermitReasonCode.Setback);

            Assert.True((await at.DecideAsync(DecisionKind.Hold)).Succeeded);
            Assert.DoesNotContain((await at.YardAsync()).Permit.Reasons, reason => reason.Code == PermitReasonCode.Setback);
        }

        [Fact]
        public async Task A_case_is_held_against_the_phase_that_was_permitted_before_its_examination()
        {
            await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
            await at.SignAsync(ExerciseHouse.Plan with { Steps = [ExerciseHouse.Plan.Steps[1]] });
            async Task<IReadOnlyList<PlanPhaseStart>> PhasesAsync() =>
                (await at.House.Get<GetCase>().ExecuteAsync(at.House.Vet, at.Case)).Value.Course.PlanPhases;
            Assert.Equal([new PlanPhaseStart(ExerciseHouse.Today.AddDays(1), PlanPhase.Trot)], await PhasesAsync());

            at.House.Time.Advance(TimeSpan.FromDays(3));
            await at.ReportAsync();
            Assert.Equal(
                [
                    new PlanPhaseStart(ExerciseHouse.Today.AddDays(1), PlanPhase.Trot),
                    new PlanPhaseStart(ExerciseHouse.Today.AddDays(4), PlanPhase.Walk),
                ],
                await PhasesAsync()
            );
        }

        [Fact]
        public async Task A_draft_that_shows_a_setback_stops_growth_until_it_is_corrected()
        {
            await using ExerciseHouse at = await DecidedAsync();
            at.House.Time.Advance(TimeSpan.FromDays(1));
            async Task<bool> IsHeldAsync() =>
                (await at.YardAsync()).Permit.Reasons.Any(reason => reason.Code == PermitReasonCode.UnsignedSetback);
            ExaminationContent worse = Wishes.Content(ExerciseHouse.Today, (16, 0.1), (18, 0.3), (20, 0.4));
            SavedDraft draft = await at.House.DraftAsync(at.Case, worse);
            Assert.True(await IsHeldAsync());

            SaveDraftInput corrected = new()
            {
                CommandId = Guid.NewGuid(),
                Id = draft.Id,
                Version = draft.Version,
                Content = Wishes.Content(ExerciseHouse.Today, (16, 0.1), (18, 0.3), (20, 0)),
            };
            SavedDraft calm = (await at.House.Get<SaveDraft>().ExecuteAsync(at.House.Vet, corrected)).Value;
            Assert.False(await IsHeldAsync());

            SaveDraftInput again = corrected with { CommandId = Guid.NewGuid(), Version = calm.Version, Content = worse };
            SavedDraft back = (await at.House.Get<SaveDraft>().ExecuteAsync(at.House.Vet, again)).Value;
            Assert.True(await IsHeldAsync());

            await at.House.Get<ArchiveDraft>().ExecuteAsync(at.House.Vet, new RecordInput(Guid.NewGuid(), back.Id, back.Version));
            Assert.False(await IsHeldAsync());
        }

        [Fact]
        public async Task A_draft_without_a_setback_stops_nothing()
        {
            await using ExerciseHouse at = await DecidedAsync();
            at.House.Time.Advance(TimeSpan.FromDays(1));
            await at.House.DraftAsync(at.Case, Wishes.Content(ExerciseHouse.Today, (16, 0.1), (18, 0.29), (20, 0)));

            Assert.Empty(await KindsAsync(at));
        }

        [Fact]
        public async Task Where_the_vet_who_signed_last_is_put_away_no_work_is_permitted_until_another_signs()
        {
            await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
            await at.House.SignedAsync(at.Case, Wishes.Content(ExerciseHouse.Today.AddDays(-60), (16, 0.1), (18, 0.3), (20, 0)));
            Actor leaving = await at.House.PersonAsync("Ivo Larch", Role.Vet);
            Actor bystander = await at.House.PersonAsync("Merle Oake", Role.Vet);
            await at.StandInAsync(leaving);
            Assert.True((await at.SignAsync(ExerciseHouse.Plan)).Succeeded);
            Assert.True((await at.DecideAsync(DecisionKind.Hold, who: leaving)).Succeeded);

            await ChangeAsync(at, bystander, Role.Assistant, canSignIn: true);
            await PutAwayAsync(at, bystander);
            Assert.Empty(await KindsAsync(at));

            await PutAwayAsync(at, leaving);
            Assert.Equal([PermitHoldKind.VetWithdrawn], await KindsAsync(at));
            Permit stopped = (await at.YardAsync()).Permit;
            Assert.Equal((PermitState.Stopped, Work.None), (stopped.State, stopped.Work));

            Assert.True((await at.DecideAsync(DecisionKind.Hold)).Succeeded);
            Assert.True((await at.YardAsync()).Permit.Work.HasOuting);
        }

        [Theory]
        [InlineData(Role.Vet, true, false)]
        [InlineData(Role.Vet, false, true)]
        [InlineData(Role.Assistant, true, true)]
        [InlineData(Role.Administrator, true, true)]
        public async Task A_vet_who_may_sign_no_more_leaves_no_work_signed(Role role, bool canSignIn, bool isHeld)
        {
            await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
            Actor leaving = await at.House.PersonAsync("Ivo Larch", Role.Vet);
            await at.StandInAsync(leaving);
            Assert.True((await at.SignAsync(ExerciseHouse.Plan)).Succeeded);
            Assert.True((await at.DecideAsync(DecisionKind.Hold, who: leaving)).Succeeded);

            await ChangeAsync(at, leaving, role, canSignIn);

            Assert.Equal(isHeld ? [PermitHoldKind.VetWithdrawn] : [], await KindsAsync(at));
            Assert.Equal(!isHeld, (await at.YardAsync()).Permit.Work.HasOuting);
        }

        [Fact]
        public async Task A_new_injury_that_a_file_brings_in_changes_what_the_plan_rested_on()
        {
            await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
            Assert.True((await at.SignAsync(ExerciseHouse.Plan)).Succeeded);
            at.House.Time.Advance(TimeSpan.FromDays(1));
            await ImportAsync(at, "another horse", null);
            Assert.Empty(await KindsAsync(at));

            await ImportAsync(at, "second leg", at.Horse);
            Assert.Equal([PermitHoldKind.BasisChanged], await KindsAsync(at));
        }

        [Fact]
        public async Task Under_a_plan_signed_later_the_last_decisions_ground_is_held_against_the_case()
        {
            await using ExerciseHouse at = await DecidedAsync();
            Assert.True((await at.SignAsync(ExerciseHouse.Plan)).Succeeded);
            await SetLesionErrorAsync(at);

            Assert.Equal([PermitHoldKind.BasisChanged], await KindsAsync(at));
        }

        private static async Task ChangeAsync(ExerciseHouse at, Actor person, Role role, bool canSignIn)
        {
            PersonView view = (await at.House.Get<GetPerson>().ExecuteAsync(at.House.Vet, person.PersonId)).Value;
            Outcome<Saved> changed = await at
                .House.Get<SavePerson>()
                .ExecuteAsync(
                    at.House.Vet,
                    new SavePersonInput
                    {
                        CommandId = Guid.NewGuid(),
                        Id = view.Id,
                        Version = view.Version,
                        Name = view.Name,
                        Role = role,
                        CanSignIn = canSignIn,
                    }
                );
            Assert.Empty(changed.Problems);
        }

        private static async Task PutAwayAsync(ExerciseHouse at, Actor person)
        {
            PersonView view = (await at.House.Get<GetPerson>().ExecuteAsync(at.House.Vet, person.PersonId)).Value;
            Assert.True(
                (
                    await at
                        .House.Get<ArchivePerson>()
                        .ExecuteAsync(at.House.Vet, new RecordInput(Guid.NewGuid(), person.PersonId, view.Version))
                ).Succeeded
            );
        }

        private static async Task ImportAsync(ExerciseHouse at, string label, Guid? horse)
        {
            Outcome<ImportResult> done = await at
                .House.Get<ApplyImport>()
                .ExecuteAsync(
                    at.House.Vet,
                    new ApplyImportInput
                    {
                        CommandId = Guid.NewGuid(),
                        Cases = [Files.Healing(label, new(label, null, null))],
                        Choices = new ImportChoices
                        {
                            Cases = new Dictionary<string, CaseChoice>
                            {
                                [label] = new() { HorseId = horse, NewHorse = horse is null },
                            },
                        },
                    }
                );
            Assert.Empty(done.Problems);
        }

        private static async Task SetLesionErrorAsync(ExerciseHouse at)
        {
            PracticeView practice = (await at.House.Get<GetPractice>().ExecuteAsync(at.House.Vet, NoInput.Value)).Value;
            Outcome<Saved> changed = await at
                .House.Get<ChangePractice>()
                .ExecuteAsync(
                    at.House.Vet,
                    ChangePracticeInput.Of(practice, Guid.NewGuid()) with
                    {
                        Settings = practice.Settings with { Error = practice.Settings.Error with { LesionAreaCv = 0.2 } },
                    }
                );

            Assert.True(changed.Succeeded);
        }

        [Fact]
        public async Task Another_setting_changes_what_the_decision_rested_on()
        {
            await using ExerciseHouse at = await DecidedAsync();
            await SetLesionErrorAsync(at);

            Assert.Equal([PermitHoldKind.BasisChanged], await KindsAsync(at));
        }
    }
}
