using System.Net;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;
using Microsoft.Extensions.DependencyInjection;
using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Rechecks.Suggestions;
using RehabTrack.Records.Bookings;
using RehabTrack.Records.Examinations;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.Feeds;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Reminders;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Web.Components;
using RehabTrack.Web.Features.Board;
using RehabTrack.Web.Features.Reminders;
using RehabTrack.Web.Tests.Hosting;
using RehabTrack.Web.Tests.Shared;

namespace RehabTrack.Web.Tests.Leaks;

/// <summary>A word is planted in every text that is said inside the practice, and is on no page, file or letter that leaves it.</summary>
public sealed class LeakTests(WatchedServer watched) : IClassFixture<WatchedServer>
{
    private readonly RunningApp _app = watched.App;

    private const string Inside = "INSIDEWORD";
    private const string Released = "Released for you alone.";

    private readonly ShareHouse _house = new(watched.App.Services, watched.App.Vet);

    [Fact]
    public void Every_text_that_is_kept_is_said_to_be_internal_told_or_technical()
    {
        string[] said = [.. TextColumns.Internal, .. TextColumns.Told, .. TextColumns.Technical];

        Assert.Equal(said.Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal), said.Order(StringComparer.Ordinal));
        Assert.Empty(TextColumns.All.Select(text => text.Name).Except(said, StringComparer.Ordinal));
        Assert.Empty(said.Except(TextColumns.All.Select(text => text.Name), StringComparer.Ordinal));
    }

    [Fact]
    public async Task No_page_file_or_letter_for_somebody_outside_holds_a_word_said_inside()
    {
        Planted planted = await PlantAsync();
        Assert.Empty(await NotPlantedAsync());

        using HttpClient stranger = _app.Browser();
        using HttpClient vet = await _app.BrowserAsync(_app.Vet);
        Dictionary<string, string> told = [];
        foreach (string page in planted.Pages)
        {
            told.Add(page, WebUtility.HtmlDecode(await stranger.GetStringAsync(page)));
        }

        told.Add("calendar", await stranger.GetStringAsync(planted.Feed));
        told.Add("visit", await vet.GetStringAsync(planted.Visit));
        ReminderLetter letter = await _house.AskAsync<GetReminder, Guid, ReminderLetter>(planted.Case);
        MailText mail = ReminderText.Of(letter, "Owner Alder");
        told.Add("letter", $"{mail.Subject}\n{mail.Body}");

        Assert.Equal(planted.Pages.Count + 3, told.Count);
        foreach ((string where, string text) in told)
        {
            Assert.True(text.Contains("Leakless Bay", StringComparison.Ordinal), $"{where} does not speak of the horse.");
            Assert.False(text.Contains(Inside, StringComparison.OrdinalIgnoreCase), $"{where} holds a word said inside.");
        }

        Assert.Contains(Released, told[planted.Pages[0]], StringComparison.Ordinal);
        Assert.Contains(Inside, await vet.GetStringAsync($"/cases/{planted.Case}"), StringComparison.Ordinal);
    }

    /// <summary>What is not loaded cannot be shown by a mistake of a page.</summary>
    [Fact]
    public async Task Behind_a_link_no_word_said_inside_is_even_read_from_the_database()
    {
        Planted planted = await PlantAsync();
        await using RecordsContext records = await ContextAsync();
        using HttpClient stranger = _app.Browser();
        watched.Read.Watch(records.Database.GetConnectionString()!);
        foreach (string page in planted.Pages)
        {
            watched.Read.Clear();
            using HttpResponseMessage answer = await stranger.GetAsync(page);

            Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
            Assert.True(
                watched.Read.Cells.Any(cell => cell.Text.Contains("Leakless Bay", StringComparison.Ordinal)),
                $"What {page} reads is not seen: {string.Join(", ", watched.Read.Cells.Select(cell => cell.Column).Distinct(StringComparer.Ordinal))}"
            );
            Assert.Equal(
                [],
                watched
                    .Read.Cells.Where(cell => cell.Text.Contains(Inside, StringComparison.OrdinalIgnoreCase))
                    // By which telephone and address the practice reaches the reader, the reader knows.
                    .Where(cell =>
                        !(
                            cell.Column is "Mail" or "Phone"
                            && planted.Readers.Any(reader => reader.ToString().Equals(cell.RowId, StringComparison.OrdinalIgnoreCase))
                        )
                    )
                    .Select(cell => $"{page}: {cell.Column}")
                    .Distinct(StringComparer.Ordinal)
            );
        }
    }

    private async Task<Planted> PlantAsync()
    {
        DateOnly today = await _house.TodayAsync();
        Guid owner = await _house.PersonAsync("Owner Alder", Role.Owner);
        Guid trainer = await _house.PersonAsync("Trainer Cedar", Role.Trainer);
        Guid reader = await _house.PersonAsync("Anwen Quill", Role.ReferringVet);
        Guid horse = await _house.HorseAsync("Leakless Bay", owner, trainer, reader);
        Guid injury = await _house.SignedCaseAsync(horse);
        await AmendAsync(injury);
        await ExerciseAsync(horse, today);
        Guid booking = (
            await _house.AskAsync<BookRecheck, BookRecheckInput, Saved>(
                new BookRecheckInput(Guid.NewGuid(), injury, new BookingPlan { Date = today.AddDays(9), Place = "At the yard" })
            )
        ).Id;
        AddressSecret calendar = AddressSecret.Make();
        await _house.AskAsync<RenewFeed, RenewFeedInput, Saved>(new RenewFeedInput(Guid.NewGuid(), calendar.Hash));
        await PlantRowsAsync(horse, injury, owner, today);
        string own = (await _house.LinkAsync(owner, HorseRelation.Owner, horse)).Path;
        string yard = (await _house.LinkAsync(trainer, HorseRelation.Trainer, null)).Path;
        string report = await _house.ReportLinkAsync(injury, reader, "What follows was signed.");
        return new Planted(
            injury,
            [owner, trainer, reader],
            [
                own,
                $"{own}/concern/{horse}",
                yard,
                $"{yard}/yard/{horse}/log",
                $"{yard}/yard/{horse}/away",
                $"{yard}/yard/{horse}/less",
                $"{yard}/concern/{horse}",
                report,
            ],
            CalendarFiles.FeedPath(calendar),
            CalendarFiles.VisitPath(booking)
        );
    }

    private async Task AmendAsync(Guid injury)
    {
        await using RecordsContext records = await ContextAsync();
        ExaminationRecord signed = records.Examinations.Single(examination => examination.CaseId == injury);
        ExaminationView view = await _house.AskAsync<GetExamination, Guid, ExaminationView>(signed.Id);
        await _house.AskAsync<AmendExamination, AmendExaminationInput, Saved>(
            new AmendExaminationInput
            {
                CommandId = Guid.NewGuid(),
                Id = view.Id,
                Version = view.Version,
                Reason = Inside,
                Content = view.Content with { Note = Inside },
            }
        );
    }

    /// <summary>Plan, logs, a concern, and a decision that answers it and is released; inside words wherever one can be said.</summary>
    private async Task ExerciseAsync(Guid horse, DateOnly today)
    {
        PlanVersion plan = HorseInRehab.Plan with { Steps = [.. HorseInRehab.Plan.Steps.Select(step => step with { Note = Inside })] };
        Saved draft = await _house.AskAsync<SavePlanDraft, SavePlanDraftInput, Saved>(
            new SavePlanDraftInput(Guid.NewGuid(), horse, null, plan)
        );
        await _house.AskAsync<SignPlan, SignPlanInput, Saved>(
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
        await _house.AskAsync<LogDay, LogDayInput, LogAnswer>(
            new LogDayInput
            {
                CommandId = Guid.NewGuid(),
                HorseId = horse,
                Log = new DayLog { Date = today, Done = new OutingMinutes(20) },
                Words = new LogWords
                {
                    Words = Inside,
                    Handler = Inside,
                    Care = Inside,
                },
                OnBehalfOf = Inside,
            }
        );
        await _house.AskAsync<ReportConcern, ReportConcernInput, LogAnswer>(new ReportConcernInput(Guid.NewGuid(), horse, Inside, Inside));
        ExerciseView seen = await _house.AskAsync<GetExercise, Guid, ExerciseView>(horse);
        await _house.AskAsync<SignDecision, SignDecisionInput, Saved>(
            new SignDecisionInput
            {
                CommandId = Guid.NewGuid(),
                HorseId = horse,
                SeenNumber = seen.LastNumber,
                Decision = new Decision
                {
                    Kind = DecisionKind.Hold,
                    PlanVersionId = seen.Plan!.Plan.Id,
                    From = today,
                    RecheckDate = today.AddDays(60),
                    Reason = Inside,
                },
                Visit = new Visit
                {
                    Signs = new VisitSigns(),
                    LamenessContext = Inside,
                    Note = Inside,
                },
                Disagreement = Inside,
            }
        );
        DecisionView decision = (await _house.AskAsync<GetExercise, Guid, ExerciseView>(horse)).Decisions[0];
        await _house.AskAsync<ReleaseDecision, ReleaseDecisionInput, Saved>(
            new ReleaseDecisionInput(Guid.NewGuid(), decision.Id, decision.Version, [Released], [Released], WithPicture: true)
        );
        await _house.AskAsync<SavePlanDraft, SavePlanDraftInput, Saved>(
            new SavePlanDraftInput(Guid.NewGuid(), horse, null, plan with { Title = Inside })
        );
    }

    /// <summary>Rows of the kinds that are not there yet; then the word into every internal text that can be written over.</summary>
    private async Task PlantRowsAsync(Guid horse, Guid injury, Guid owner, DateOnly today)
    {
        await using RecordsContext records = await ContextAsync();
        Guid examination = records.Examinations.Single(one => one.CaseId == injury).Id;
        DateTime now = DateTime.UtcNow;
        await using IDbContextTransaction transaction = await records.Database.BeginTransactionAsync();
        records.AddRange(
            new AcknowledgementRecord
            {
                Id = Guid.CreateVersion7(),
                HorseId = horse,
                CaseId = injury,
                Finding = "planted",
                FindingKey = "planted",
                Reason = Inside,
                SaidById = _app.Vet.PersonId,
                SaidAt = now,
            },
            new CareRecord
            {
                Id = Guid.CreateVersion7(),
                HorseId = horse,
                CaseId = injury,
                From = today,
                EnteredById = _app.Vet.PersonId,
                EnteredAt = now,
            },
            new LinkWordRecord
            {
                Id = Guid.CreateVersion7(),
                CaseId = injury,
                FirstExaminationId = examination,
                FirstLevelCm = 18,
                SecondExaminationId = examination,
                SecondLevelCm = 20,
                Reason = "",
                SaidById = _app.Vet.PersonId,
                SaidAt = now,
                WithdrawnAt = now,
            },
            new RepeatTracingRecord
            {
                Id = Guid.CreateVersion7(),
                Subject = "",
                Value = 1,
                EnteredById = _app.Vet.PersonId,
                EnteredAt = now,
            },
            new ReminderRecord
            {
                Id = Guid.CreateVersion7(),
                CaseId = injury,
                PersonId = owner,
                Mail = "",
                DueOn = today,
                State = ReminderState.Refused,
                BegunById = _app.Vet.PersonId,
                BegunAt = now,
            },
            new CallRecord
            {
                Id = Guid.CreateVersion7(),
                CaseId = injury,
                NotedById = _app.Vet.PersonId,
                NotedAt = now,
            },
            new ImportFileRecord
            {
                Id = Guid.CreateVersion7(),
                FileName = "",
                Content = [1],
                Checksum = "",
                PersonId = _app.Vet.PersonId,
                HandedInAt = now,
            },
            new TypedFormRecord
            {
                Id = Guid.CreateVersion7(),
                HorseId = horse,
                PersonId = _app.Vet.PersonId,
                FieldsJson = $$"""{"visit-note":"{{Inside}}"}""",
                WrittenAt = now,
            },
            new YardRecord
            {
                Id = Guid.CreateVersion7(),
                Name = "Upper Yard",
                FoldedName = "upper yard",
            }
        );
        await records.SaveChangesAsync();
        foreach (
            (string name, System.Reflection.PropertyInfo column) in TextColumns.All.Where(text => TextColumns.Internal.Contains(text.Name))
        )
        {
            if (name.EndsWith("Json", StringComparison.Ordinal) || IsAppendOnly(name))
            {
                continue;
            }

            foreach (object row in await TextColumns.RowsAsync(records, column.DeclaringType!))
            {
                column.SetValue(row, Inside);
            }
        }

        await records.SaveChangesAsync();
        await transaction.CommitAsync();
    }

    private static bool IsAppendOnly(string name) =>
        name.Split('.')[0] is "Acknowledgement" or "ExaminationVersion" or "ExerciseEntry" or "Decision";

    /// <summary>The internal texts in which the word does not stand.</summary>
    private async Task<IReadOnlyList<string>> NotPlantedAsync()
    {
        await using RecordsContext records = await ContextAsync();
        List<string> without = [];
        foreach (
            (string name, System.Reflection.PropertyInfo column) in TextColumns.All.Where(text => TextColumns.Internal.Contains(text.Name))
        )
        {
            List<object> rows = await TextColumns.RowsAsync(records, column.DeclaringType!);
            if (!rows.Any(row => ((string?)column.GetValue(row))?.Contains(Inside, StringComparison.Ordinal) == true))
            {
                without.Add(name);
            }
        }

        return without;
    }

    private async Task<RecordsContext> ContextAsync() =>
        await _app
            .Services.GetRequiredService<RecordsAccess>()
            .OpenAsync(_app.Vet.PracticeId, new Writer(_app.Vet.PersonId, DateTime.UtcNow, Guid.NewGuid(), "Planted"), default);

    private sealed record Planted(Guid Case, IReadOnlyList<Guid> Readers, IReadOnlyList<string> Pages, string Feed, string Visit);
}
