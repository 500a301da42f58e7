using System.Net;
using System.Text.RegularExpressions;
using Microsoft.Extensions.DependencyInjection;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.Horses;
using RehabTrack.Records.People;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Web.Tests.Hosting;
using RehabTrack.Wording;

namespace RehabTrack.Web.Tests.Shared;

/// <summary>What trainer and owner read and post, without a script: permit, log and concern.</summary>
public sealed partial class YardPagesTests(RunningApp app) : IClassFixture<RunningApp>
{
    private async Task<T> AskAsync<TUseCase, TInput, T>(Actor actor, TInput input)
        where TUseCase : UseCase<TInput, T> => (await app.Services.GetRequiredService<TUseCase>().ExecuteAsync(actor, input)).Value;

    /// <summary>A horse with an owner and an open case; with a signed plan of 20 minutes of walk twice a day when wanted.</summary>
    private async Task<(Guid Horse, Actor Owner)> HorseAsync(string name, bool signed = true)
    {
        Guid owner = (
            await AskAsync<SavePerson, SavePersonInput, Saved>(
                app.Vet,
                new SavePersonInput
                {
                    CommandId = Guid.NewGuid(),
                    Name = $"Owner of {name}",
                    Role = Role.Owner,
                    CanSignIn = true,
                }
            )
        ).Id;
        Guid horse = (
            await AskAsync<SaveHorse, SaveHorseInput, Saved>(
                app.Vet,
                new SaveHorseInput
                {
                    CommandId = Guid.NewGuid(),
                    Name = name,
                    Markings = "bay, star",
                    TrainerId = app.Trainer.PersonId,
                    OwnerId = owner,
                }
            )
        ).Id;
        await AskAsync<OpenCase, OpenCaseInput, Saved>(
            app.Vet,
            new OpenCaseInput
            {
                CommandId = Guid.NewGuid(),
                HorseId = horse,
                Limb = Limb.LeftHind,
                Structure = Structure.SuspensoryLigament,
            }
        );
        if (signed)
        {
            PlanVersion plan = new()
            {
                Id = "",
                Number = 0,
                Steps =
                [
                    new PlanStep
                    {
                        Name = "walk in hand",
                        Walk = new GaitRule(20),
                        OutingsADay = 2,
                        DaysAWeek = 7,
                        Modes = WorkModes.InHand,
                        Surfaces = Surfaces.FirmEven,
                        ShortestDays = 28,
                    },
                ],
            };
            Saved draft = await AskAsync<SavePlanDraft, SavePlanDraftInput, Saved>(
                app.Vet,
                new SavePlanDraftInput(Guid.NewGuid(), horse, null, plan)
            );
            DateOnly today = (await AskAsync<GetExercise, Guid, ExerciseView>(app.Vet, horse)).Practice.Today;
            await AskAsync<SignPlan, SignPlanInput, Saved>(
                app.Vet,
                new SignPlanInput
                {
                    CommandId = Guid.NewGuid(),
                    HorseId = horse,
                    Version = draft.Version,
                    SeenNumber = 0,
                    From = today,
                    Place = PlanPlace.Start,
                    IsAdvance = true,
                    RecheckDate = today.AddDays(60),
                }
            );
        }

        return (horse, new Actor(app.Vet.PracticeId, owner, Role.Owner, $"Owner of {name}"));
    }

    private async Task<DayLog[]> LogsAsync(Guid horse) =>
        [
            .. (await AskAsync<GetExercise, Guid, ExerciseView>(app.Vet, horse))
                .Lines.Select(line => line.Entry)
                .OfType<DayLogged>()
                .Select(entry => entry.Log),
        ];

    /// <summary>Posts a form of a page with the fields it has there, and others on top.</summary>
    private static async Task<HttpResponseMessage> PostAsync(
        HttpClient browser,
        string page,
        string action,
        params (string Name, string Value)[] fields
    )
    {
        string html = await browser.GetStringAsync(page);
        string form = Form()
            .Matches(html)
            .Select(match => match.Value)
            .First(found => found.Contains(action.TrimStart('/'), StringComparison.Ordinal));
        List<KeyValuePair<string, string>> posted =
        [
            .. Hidden()
                .Matches(form)
                .Select(match => KeyValuePair.Create(match.Groups["name"].Value, WebUtility.HtmlDecode(match.Groups["value"].Value)))
                .Where(pair => fields.All(field => field.Name != pair.Key)),
            .. fields.Select(field => KeyValuePair.Create(field.Name, field.Value)),
        ];
        return await browser.PostAsync(action.StartsWith('/') ? action : page, new FormUrlEncodedContent(posted));
    }

    private static async Task<string> TextAsync(HttpClient browser, string page) =>
        WebUtility.HtmlDecode(await browser.GetStringAsync(page));

    [Fact]
    public async Task The_yard_shows_the_permit_of_today_and_without_a_signature_the_number_to_call()
    {
        (Guid signed, _) = await HorseAsync("Signed Mare");
        await HorseAsync("Unsigned Cob", signed: false);
        using HttpClient browser = await app.BrowserAsync(app.Trainer);
        string page = await TextAsync(browser, "/yard");

        string mare = page[page.IndexOf($"horse-{signed}", StringComparison.Ordinal)..];
        mare = mare[..mare.IndexOf("</article>", StringComparison.Ordinal)];
        Assert.Contains("Walk 20 min", mare, StringComparison.Ordinal);
        Assert.Contains("Twice a day, every day", mare, StringComparison.Ordinal);
        Assert.Contains("plan version 1", mare, StringComparison.Ordinal);
        Assert.Contains(OutsidePages.DoneAsPermitted, mare, StringComparison.Ordinal);
        Assert.Contains("No work is signed.", page, StringComparison.Ordinal);
        Assert.Contains(OutsidePages.NoOlderSheet, page, StringComparison.Ordinal);
        Assert.DoesNotContain("<script", mare, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Done_as_permitted_is_one_tap_and_never_fills_in_the_signs()
    {
        (Guid horse, _) = await HorseAsync("Tapped Grey");
        using HttpClient browser = await app.BrowserAsync(app.Trainer);

        using HttpResponseMessage done = await PostAsync(browser, "/yard", $"/yard/{horse}/done");
        Assert.Equal(HttpStatusCode.Redirect, done.StatusCode);
        DayLog log = Assert.Single(await LogsAsync(horse));
        Assert.Equal((new OutingMinutes(40), 2, SignGrade.NotChecked, null), (log.Done, log.Outings!.Value, log.Heat, log.Lameness));
        // The permit leaves one choice in each, so the tap says it.
        Assert.Equal(
            (WorkModes.InHand, Circles.None, Surfaces.FirmEven, Turnout.None),
            (log.Modes, log.Circles!.Value, log.Surfaces, log.Turnout!.Value)
        );
        Assert.Contains("Logged today: walk 40 min.", await TextAsync(browser, "/yard"), StringComparison.Ordinal);

        using HttpResponseMessage none = await PostAsync(browser, "/yard", $"/yard/{horse}/checked-none");
        Assert.Equal((SignGrade.None, false), ((await LogsAsync(horse))[1].Heat, (await LogsAsync(horse))[1].Lameness!.Value));
        Assert.Equal(default, (await LogsAsync(horse))[1].Done);
    }

    [Fact]
    public async Task A_page_left_open_over_night_logs_for_its_own_day()
    {
        (Guid horse, _) = await HorseAsync("Overnight Dun");
        using HttpClient browser = await app.BrowserAsync(app.Trainer);
        DateOnly yesterday = (await AskAsync<GetExercise, Guid, ExerciseView>(app.Vet, horse)).Practice.Today.AddDays(-1);
        using HttpResponseMessage done = await PostAsync(
            browser,
            "/yard",
            $"/yard/{horse}/done",
            ("date", yesterday.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture))
        );

        Assert.Equal(yesterday, Assert.Single(await LogsAsync(horse)).Date);
    }

    [Fact]
    public async Task A_post_without_the_token_of_the_page_logs_nothing()
    {
        (Guid horse, _) = await HorseAsync("Guarded Roan");
        using HttpClient browser = await app.BrowserAsync(app.Trainer);
        using HttpResponseMessage refused = await browser.PostAsync(
            $"/yard/{horse}/done",
            new FormUrlEncodedContent(new Dictionary<string, string> { ["command"] = Guid.NewGuid().ToString(), ["walk"] = "40" })
        );

        Assert.Equal(HttpStatusCode.BadRequest, refused.StatusCode);
        Assert.Empty(await LogsAsync(horse));
    }

    [Fact]
    public async Task What_cannot_be_read_is_told_beside_its_field_and_what_was_typed_stays()
    {
        (Guid horse, _) = await HorseAsync("Typed Bay");
        using HttpClient browser = await app.BrowserAsync(app.Trainer);
        string page = $"/yard/{horse}/log";
        Assert.Contains("value=\"40\"", await TextAsync(browser, page), StringComparison.Ordinal);

        using HttpResponseMessage answer = await PostAsync(
            browser,
            page,
            "log",
            ("date", "2999-01-01"),
            ("walk", "twenty"),
            ("trot", ""),
            ("words", "spooked at a tractor")
        );
        string again = WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync());
        Assert.Contains("\"twenty\" is no number of minutes.", again, StringComparison.Ordinal);
        Assert.Contains("value=\"twenty\"", again, StringComparison.Ordinal);
        Assert.Contains("spooked at a tractor</textarea>", again, StringComparison.Ordinal);
        Assert.Empty(await LogsAsync(horse));

        using HttpResponseMessage future = await PostAsync(browser, page, "log", ("date", "2999-01-01"), ("walk", "20"));
        Assert.Contains("lies in the future", WebUtility.HtmlDecode(await future.Content.ReadAsStringAsync()), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_day_is_logged_whole_with_a_sign_and_the_sign_drops_the_permit()
    {
        (Guid horse, _) = await HorseAsync("Whole Dun");
        using HttpClient browser = await app.BrowserAsync(app.Trainer);
        string today = (await AskAsync<GetExercise, Guid, ExerciseView>(app.Vet, horse)).Practice.Today.ToString(
            "yyyy-MM-dd",
            System.Globalization.CultureInfo.InvariantCulture
        );
        using HttpResponseMessage answer = await PostAsync(
            browser,
            $"/yard/{horse}/log",
            "log",
            ("date", today),
            ("walk", "30"),
            ("modes", "InHand"),
            ("surfaces", "FirmEven"),
            ("outings", "3"),
            ("circles", "Large"),
            ("turnout", "SmallPaddock"),
            ("heat", "Slight"),
            ("swelling", "None"),
            ("lameness", "no"),
            ("handler", "Ned")
        );

        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        DayLog log = Assert.Single(await LogsAsync(horse));
        Assert.Equal(
            (30, WorkModes.InHand, Surfaces.FirmEven, Turnout.SmallPaddock, SignGrade.Slight, SignGrade.NotChecked, false),
            (log.Done.Walk, log.Modes, log.Surfaces, log.Turnout!.Value, log.Heat, log.Pain, log.Lameness!.Value)
        );
        Assert.Equal((3, Circles.Large), (log.Outings!.Value, log.Circles!.Value));
        string page = await TextAsync(browser, "/yard");
        Assert.Contains(OutsidePages.ConcernOpen, page, StringComparison.Ordinal);
        Assert.Equal(PermitState.Floor, (await AskAsync<GetExercise, Guid, ExerciseView>(app.Vet, horse)).Today.State);
    }

    [Fact]
    public async Task An_owner_reports_a_concern_and_trainer_and_practice_see_it()
    {
        (Guid calm, _) = await HorseAsync("Able Calm");
        (Guid horse, Actor owner) = await HorseAsync("Worried Chestnut");
        using HttpClient browser = await app.BrowserAsync(owner);
        using HttpResponseMessage sent = await PostAsync(browser, $"/concern/{horse}", "concern", ("words", "warm, left hind"));
        Assert.Equal(HttpStatusCode.Redirect, sent.StatusCode);
        Assert.StartsWith(
            "/progress",
            sent.Headers.Location!.IsAbsoluteUri ? sent.Headers.Location.AbsolutePath : sent.Headers.Location.ToString(),
            StringComparison.Ordinal
        );

        string own = await TextAsync(browser, "/progress");
        Assert.Contains("Nobody of the practice has seen it yet.", own, StringComparison.Ordinal);
        using HttpClient trainer = await app.BrowserAsync(app.Trainer);
        string yard = await TextAsync(trainer, "/yard");
        Assert.Contains(OutsidePages.ConcernOpen, yard, StringComparison.Ordinal);
        // Flags on top: the horse with the concern stands before one whose name comes first.
        Assert.InRange(Place(yard, horse), 0, Place(yard, calm));
        ConcernView concern = Assert.Single((await AskAsync<GetExercise, Guid, ExerciseView>(app.Vet, horse)).Concerns);
        Assert.Equal("warm, left hind", concern.Line.Words!.Words);
    }

    [Fact]
    public async Task A_trainer_says_that_a_horse_does_not_work_with_a_plain_form()
    {
        (Guid horse, _) = await HorseAsync("Resting Skewbald");
        using HttpClient browser = await app.BrowserAsync(app.Trainer);
        string page = $"/yard/{horse}/away";
        Assert.Contains($"href=\"{page[1..]}\"", await TextAsync(browser, "/yard"), StringComparison.Ordinal);

        using HttpResponseMessage wrong = await PostAsync(browser, page, "away", ("from", ""), ("until", "soon"), ("words", "shoe lost"));
        string again = WebUtility.HtmlDecode(await wrong.Content.ReadAsStringAsync());
        Assert.Contains("id=\"from-error\"", again, StringComparison.Ordinal);
        Assert.Contains("id=\"until-error\"", again, StringComparison.Ordinal);
        Assert.Contains("shoe lost</textarea>", again, StringComparison.Ordinal);
        DateOnly today = (await AskAsync<GetExercise, Guid, ExerciseView>(app.Vet, horse)).Practice.Today;

        using HttpResponseMessage sent = await PostAsync(
            browser,
            page,
            "away",
            ("from", $"{today:yyyy-MM-dd}"),
            ("until", $"{today:yyyy-MM-dd}")
        );

        Assert.Equal(HttpStatusCode.Redirect, sent.StatusCode);
        Assert.Equal(PermitState.Paused, (await AskAsync<GetExercise, Guid, ExerciseView>(app.Vet, horse)).Today.State);
        Assert.Contains(OutsidePages.SaidAway, await TextAsync(browser, "/yard?said=away"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Less_work_is_a_plain_form_that_lowers_and_never_raises()
    {
        (Guid horse, _) = await HorseAsync("Lowered Piebald");
        using HttpClient browser = await app.BrowserAsync(app.Trainer);
        string page = $"/yard/{horse}/less";
        Assert.Contains($"href=\"{page[1..]}\"", await TextAsync(browser, "/yard"), StringComparison.Ordinal);
        Assert.Contains("value=\"20\"", await TextAsync(browser, page), StringComparison.Ordinal);
        string today = $"{await TodayAsync(horse):yyyy-MM-dd}";

        using HttpResponseMessage unread = await PostAsync(
            browser,
            page,
            "less",
            ("walk", "a little"),
            ("from", today),
            ("words", "hot day")
        );
        string again = WebUtility.HtmlDecode(await unread.Content.ReadAsStringAsync());
        Assert.Contains("value=\"a little\"", again, StringComparison.Ordinal);
        Assert.Contains("class=\"error\"", again, StringComparison.Ordinal);
        using HttpResponseMessage more = await PostAsync(
            browser,
            page,
            "less",
            ("walk", "60"),
            ("outings", "2"),
            ("from", today),
            ("until", today),
            ("words", "hot day")
        );
        Assert.Equal(HttpStatusCode.OK, more.StatusCode);
        Assert.Equal(20, (await AskAsync<GetExercise, Guid, ExerciseView>(app.Vet, horse)).Today.Work.Outing.Walk);

        using HttpResponseMessage less = await PostAsync(
            browser,
            page,
            "less",
            ("walk", "12"),
            ("outings", "1"),
            ("from", today),
            ("until", today),
            ("words", "hot day")
        );
        Assert.Equal(HttpStatusCode.Redirect, less.StatusCode);
        Work work = (await AskAsync<GetExercise, Guid, ExerciseView>(app.Vet, horse)).Today.Work;
        Assert.Equal((12, 1, WorkModes.InHand), (work.Outing.Walk, work.OutingsADay, work.Modes));
        Assert.Contains(OutsidePages.SaidLess, await TextAsync(browser, "/yard?said=less"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_form_of_a_day_is_filled_in_where_the_permit_leaves_one_choice()
    {
        (Guid horse, _) = await HorseAsync("Filled Palomino");
        using HttpClient browser = await app.BrowserAsync(app.Trainer);
        string page = await TextAsync(browser, $"/yard/{horse}/log");

        Assert.Matches("value=\"InHand\" checked", page);
        Assert.DoesNotMatch("value=\"Ridden\" checked", page);
        Assert.Matches("value=\"FirmEven\" checked", page);
        Assert.Equal(2, OnlyNone().Count(page));
        Assert.Matches("id=\"outings\"[^>]*value=\"2\"", page);
    }

    [Fact]
    public async Task A_tap_that_is_refused_tells_why_at_its_horse()
    {
        (Guid horse, _) = await HorseAsync("Refused Cream");
        using HttpClient browser = await app.BrowserAsync(app.Trainer);
        using HttpResponseMessage refused = await PostAsync(browser, "/yard", $"/yard/{horse}/done", ("date", "2999-01-01"));
        string address = refused.Headers.Location!.ToString();
        Assert.StartsWith("/yard?refused=date-in-future", address, StringComparison.Ordinal);

        string card = Card(await TextAsync(browser, address[..address.IndexOf('#', StringComparison.Ordinal)]), horse);
        Assert.Contains(OutsidePages.RefusedFuture, card, StringComparison.Ordinal);
        Assert.Empty(await LogsAsync(horse));
    }

    [Fact]
    public async Task A_log_of_long_ago_is_kept_and_the_date_is_asked_about()
    {
        (Guid horse, _) = await HorseAsync("Early Buckskin");
        using HttpClient browser = await app.BrowserAsync(app.Trainer);
        string date = $"{(await TodayAsync(horse)).AddDays(-200):yyyy-MM-dd}";
        using HttpResponseMessage sent = await PostAsync(browser, $"/yard/{horse}/log", "log", ("date", date), ("walk", "5"));

        Assert.Contains("said=early", sent.Headers.Location!.ToString(), StringComparison.Ordinal);
        Assert.Single(await LogsAsync(horse));
        Assert.Contains(OutsidePages.SaidEarly, await TextAsync(browser, "/yard?said=early"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_was_released_leaves_both_pages_once_less_is_permitted_than_was_signed()
    {
        (Guid horse, Actor owner) = await HorseAsync("Withheld Grulla");
        ExerciseView view = await AskAsync<GetExercise, Guid, ExerciseView>(app.Vet, horse);
        Saved decision = await AskAsync<SignDecision, SignDecisionInput, Saved>(
            app.Vet,
            new SignDecisionInput
            {
                CommandId = Guid.NewGuid(),
                HorseId = horse,
                SeenNumber = view.LastNumber,
                Decision = new Decision
                {
                    Kind = DecisionKind.Hold,
                    PlanVersionId = view.Plan!.Plan.Id,
                    From = view.Practice.Today,
                    RecheckDate = view.Practice.Today.AddDays(60),
                    Reason = "as seen",
                },
                Visit = new Visit(),
                Disagreement = "she goes well",
            }
        );
        await AskAsync<ReleaseDecision, ReleaseDecisionInput, Saved>(
            app.Vet,
            new ReleaseDecisionInput(Guid.NewGuid(), decision.Id, decision.Version, ["She walks 37 minutes."], ["Walk 37 minutes."])
        );
        using HttpClient trainer = await app.BrowserAsync(app.Trainer);
        using HttpClient home = await app.BrowserAsync(owner);
        Assert.Contains("Walk 37 minutes.", await TextAsync(trainer, "/yard"), StringComparison.Ordinal);
        Assert.Contains("She walks 37 minutes.", await TextAsync(home, "/progress"), StringComparison.Ordinal);

        await AskAsync<ReportConcern, ReportConcernInput, LogAnswer>(owner, new ReportConcernInput(Guid.NewGuid(), horse, "warm"));

        foreach (string card in (string[])[Card(await TextAsync(trainer, "/yard"), horse), Card(await TextAsync(home, "/progress"), horse)])
        {
            Assert.DoesNotContain("37 minutes", card, StringComparison.Ordinal);
            Assert.Contains("does not count today. What stands above counts.", card, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task An_owner_of_a_horse_without_a_plan_reads_that_no_work_is_signed_and_sees_the_concern_that_was_reported()
    {
        (Guid horse, Actor owner) = await HorseAsync("Planless Silver", signed: false);
        using HttpClient browser = await app.BrowserAsync(owner);
        string card = Card(await TextAsync(browser, "/progress"), horse);
        Assert.Contains(OutsidePages.NoWork, card, StringComparison.Ordinal);
        Assert.Contains(OutsidePages.NoOlderSheet, card, StringComparison.Ordinal);
        Assert.Contains(OutsidePages.CallWithoutNumber, card, StringComparison.Ordinal);
        Assert.Contains(OutsidePages.NothingReleased, card, StringComparison.Ordinal);
        Assert.Contains(OutsidePages.Caution, card, StringComparison.Ordinal);

        using HttpResponseMessage sent = await PostAsync(browser, $"/concern/{horse}", "concern", ("words", "warm"));
        Assert.Equal(HttpStatusCode.Redirect, sent.StatusCode);
        Assert.Contains(
            "Nobody of the practice has seen it yet.",
            Card(await TextAsync(browser, "/progress"), horse),
            StringComparison.Ordinal
        );
        ConcernView concern = Assert.Single((await AskAsync<GetExercise, Guid, ExerciseView>(app.Vet, horse)).Concerns);
        await AskAsync<SeeConcern, RecordInput, Saved>(app.Vet, new RecordInput(Guid.NewGuid(), concern.Id, concern.Version));
        Assert.Contains($"Seen by {app.Vet.Name}", Card(await TextAsync(browser, "/progress"), horse), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/no-such-page", HttpStatusCode.NotFound)]
    [InlineData("/horses", HttpStatusCode.Forbidden)]
    [InlineData("/error", HttpStatusCode.OK)]
    public async Task A_page_that_leads_nowhere_tells_outsiders_that_no_work_is_signed(string address, HttpStatusCode status)
    {
        using HttpClient browser = await app.BrowserAsync(app.Trainer);
        using HttpResponseMessage answer = await browser.GetAsync(address);
        string page = WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync());
        Assert.Equal(status, answer.StatusCode);
        Assert.Contains(OutsidePages.NoWork, page, StringComparison.Ordinal);
        Assert.Contains(OutsidePages.CallWithoutNumber, page, StringComparison.Ordinal);
        Assert.Contains("href=\"/yard\"", page, StringComparison.Ordinal);

        using HttpClient staff = await app.BrowserAsync(app.Vet);
        using HttpResponseMessage own = await staff.GetAsync(address == "/horses" ? "/yard" : address);
        Assert.DoesNotContain(OutsidePages.NoWork, await own.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_owner_without_a_horse_here_reads_that_no_work_is_signed()
    {
        (_, Actor owner) = await HorseAsync("Somebody's Bay");
        Guid nobody = (
            await AskAsync<SavePerson, SavePersonInput, Saved>(
                app.Vet,
                new SavePersonInput
                {
                    CommandId = Guid.NewGuid(),
                    Name = "Odd Waller",
                    Role = Role.Owner,
                    CanSignIn = true,
                }
            )
        ).Id;
        using HttpClient browser = await app.BrowserAsync(new Actor(owner.PracticeId, nobody, Role.Owner, "Odd Waller"));
        string page = await TextAsync(browser, "/progress");

        Assert.Contains(OutsidePages.NoHorses, page, StringComparison.Ordinal);
        Assert.Contains(OutsidePages.NoWork, page, StringComparison.Ordinal);
        Assert.Contains(OutsidePages.NoOlderSheet, page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_horse_is_told_apart_by_limb_markings_and_photo()
    {
        (Guid horse, _) = await HorseAsync("Pictured Perlino");
        using HttpClient browser = await app.BrowserAsync(app.Trainer);
        string without = Card(await TextAsync(browser, "/yard"), horse);
        Assert.Contains("Left hind · bay, star", without, StringComparison.Ordinal);
        Assert.DoesNotContain("permit-photo", without, StringComparison.Ordinal);

        await AskAsync<SaveHorsePhoto, SaveHorsePhotoInput, Saved>(
            app.Vet,
            new SaveHorsePhotoInput
            {
                CommandId = Guid.NewGuid(),
                HorseId = horse,
                ContentType = "image/png",
                Content = [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A],
            }
        );
        Assert.Matches(
            $"<img class=\"permit-photo\" src=\"horses/{horse}/photo\" alt=\"[^\"]*Pictured Perlino[^\"]*\"",
            Card(await TextAsync(browser, "/yard"), horse)
        );
        using HttpResponseMessage photo = await browser.GetAsync($"/horses/{horse}/photo");
        Assert.Equal("image/png", photo.Content.Headers.ContentType!.MediaType);
    }

    [Fact]
    public async Task A_horse_of_somebody_else_is_not_found_and_cannot_be_reported()
    {
        (Guid horse, _) = await HorseAsync("Hidden Black");
        (_, Actor stranger) = await HorseAsync("Other Mare");
        using HttpClient browser = await app.BrowserAsync(stranger);

        using HttpResponseMessage page = await browser.GetAsync($"/concern/{horse}");
        Assert.Equal(HttpStatusCode.NotFound, page.StatusCode);
        using HttpResponseMessage log = await browser.GetAsync($"/yard/{horse}/log");
        Assert.Equal(HttpStatusCode.Forbidden, log.StatusCode);
    }

    private async Task<DateOnly> TodayAsync(Guid horse) => (await AskAsync<GetExercise, Guid, ExerciseView>(app.Vet, horse)).Practice.Today;

    private static int Place(string page, Guid horse) => page.IndexOf($"id=\"horse-{horse}\"", StringComparison.Ordinal);

    /// <summary>The part of a page that is about one horse.</summary>
    private static string Card(string page, Guid horse)
    {
        string card = page[Place(page, horse)..];
        return card[..card.IndexOf("</article>", StringComparison.Ordinal)];
    }

    [GeneratedRegex("<option value=\"None\" selected", RegexOptions.None, 1000)]
    private static partial Regex OnlyNone();

    [GeneratedRegex("<form.*?</form>", RegexOptions.Singleline, 1000)]
    private static partial Regex Form();

    [GeneratedRegex("<input type=\"hidden\" name=\"(?<name>[^\"]+)\"(?: value=\"(?<value>[^\"]*)\")?", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Hidden();
}
