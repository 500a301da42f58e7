using RehabTrack.Rechecks.Care;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Rechecks.Repeats;
using RehabTrack.Rechecks.Watch;
using RehabTrack.Records.Accounts;
using RehabTrack.Records.Bookings;
using RehabTrack.Records.Care;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Covers;
using RehabTrack.Records.Examinations;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.Feeds;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Imports;
using RehabTrack.Records.Links;
using RehabTrack.Records.People;
using RehabTrack.Records.Practices;
using RehabTrack.Records.Referrals;
using RehabTrack.Records.Reminders;
using RehabTrack.Records.Repeats;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Records.Shares;
using RehabTrack.Records.Tests.Bookings;
using RehabTrack.Records.Tests.Exercise;
using RehabTrack.Records.Tests.House;
using RehabTrack.Records.Watch;

namespace RehabTrack.Records.Tests.EveryCommand;

/// <summary>For every command an input that succeeds, made anew each time; whatever must be there before is made with it.</summary>
internal static class ValidInputs
{
    private static readonly Dictionary<Type, Func<Scene, Task<object>>> Makers = new()
    {
        // Rechecks
        [typeof(BookRecheck)] = async at => new BookRecheckInput(New(), (await at.House.ExaminedAsync(30)).Id, Plan),
        [typeof(MoveBooking)] = async at =>
            await at.BookedAsync() is var booked ? new MoveBookingInput(New(), booked.Id, booked.Version, Plan) : null!,
        [typeof(CancelBooking)] = async at =>
            await at.BookedAsync() is var booked ? new CancelBookingInput(New(), booked.Id, booked.Version, "rain") : null!,
        [typeof(NoteCall)] = at => Now(new NoteCallInput(New(), at.At.Case, CallOutcome.Spoke, null, "they come")),
        [typeof(SetInterval)] = async at =>
            await at.CaseAsync() is var injury ? new SetIntervalInput(New(), injury.Id, injury.Version, 40) : null!,
        [typeof(BeginReminder)] = BeginReminderAsync,
        [typeof(SettleReminder)] = async at => new SettleReminderInput(
            New(),
            (await at.DoneAsync<BeginReminder, BeginReminderInput, BegunReminder>((BeginReminderInput)await BeginReminderAsync(at))).Id,
            "mail-refused"
        ),
        // Care
        [typeof(SaveCare)] = at => Now(CareOf(at)),
        [typeof(ArchiveCare)] = async at =>
            await at.DoneAsync<SaveCare, SaveCareInput, Saved>(CareOf(at)) is var care
                ? new ArchiveCareInput(New(), care.Id, care.Version, "another horse")
                : null!,
        [typeof(BringBackCare)] = async at =>
            await at.DoneAsync<SaveCare, SaveCareInput, Saved>(CareOf(at)) is var care
                ? Record(
                    await at.DoneAsync<ArchiveCare, ArchiveCareInput, Saved>(
                        new ArchiveCareInput(New(), care.Id, care.Version, "another horse")
                    )
                )
                : null!,
        // Cases
        [typeof(OpenCase)] = async at => new OpenCaseInput
        {
            CommandId = New(),
            HorseId = (await at.House.HorseAsync()).Id,
            Limb = Rechecks.Anatomy.Limb.LeftHind,
            Structure = Rechecks.Anatomy.Structure.SuspensoryLigament,
            Diagnosis = "body lesion",
            TargetWork = "hacking",
        },
        [typeof(ChangeCase)] = async at =>
            await at.CaseAsync() is var injury
                ? new ChangeCaseInput
                {
                    CommandId = New(),
                    Id = injury.Id,
                    Version = injury.Version,
                    Limb = injury.Course.Limb,
                    Structure = injury.Course.Structure,
                    Onset = injury.Course.Onset,
                    Diagnosis = "body lesion",
                    TargetWork = "hacking",
                }
                : null!,
        [typeof(CloseCase)] = async at =>
            await at.FreshCaseAsync() is var injury
                ? new CloseCaseInput
                {
                    CommandId = New(),
                    CaseId = injury.Id,
                    Version = injury.Version,
                    End = CaseEnd.Resolved,
                    On = ExerciseHouse.Today,
                    Outcome = "back in work",
                }
                : null!,
        [typeof(ArchiveCase)] = async at => Record(await at.FreshCaseAsync()),
        [typeof(BringBackCase)] = async at =>
            Record(await at.DoneAsync<ArchiveCase, RecordInput, Saved>(Record(await at.FreshCaseAsync()))),
        // Cover
        [typeof(SaveCover)] = async at => await CoverAsync(at),
        [typeof(WithdrawCover)] = async at => Record(await at.DoneAsync<SaveCover, SaveCoverInput, Saved>(await CoverAsync(at))),
        [typeof(BringBackCover)] = async at =>
            await at.DoneAsync<SaveCover, SaveCoverInput, Saved>(await CoverAsync(at)) is var cover
                ? Record(await at.DoneAsync<WithdrawCover, RecordInput, Saved>(Record(cover)))
                : null!,
        // Examinations
        [typeof(StartExamination)] = async at => new StartExaminationInput
        {
            CommandId = New(),
            CaseId = (await at.FreshCaseAsync()).Id,
            Name = "morning",
            OutsidePractice = "Far Shore Equine",
        },
        [typeof(SaveDraft)] = async at =>
            await at.DraftAsync() is var draft
                ? new SaveDraftInput
                {
                    CommandId = New(),
                    Id = draft.Id,
                    Version = draft.Version,
                    Content = Scene.FullContent,
                    Typed = "{}",
                }
                : null!,
        [typeof(SignExamination)] = async at =>
            await at.DraftAsync() is var draft ? new SignExaminationInput(New(), draft.Id, draft.Version) : null!,
        [typeof(AmendExamination)] = async at =>
            await at.SignedAsync() is var signed
                ? new AmendExaminationInput
                {
                    CommandId = New(),
                    Id = signed.Id,
                    Version = signed.Version,
                    Reason = "read wrongly",
                    Content = Scene.FullContent,
                }
                : null!,
        [typeof(ArchiveDraft)] = async at => await at.DraftAsync() is var draft ? new RecordInput(New(), draft.Id, draft.Version) : null!,
        [typeof(BringBackDraft)] = async at =>
            await at.DraftAsync() is var draft
                ? Record(await at.DoneAsync<ArchiveDraft, RecordInput, Saved>(new RecordInput(New(), draft.Id, draft.Version)))
                : null!,
        // Exercise
        [typeof(LogDay)] = at =>
            Now(
                new LogDayInput
                {
                    CommandId = New(),
                    HorseId = at.At.Horse,
                    Log = new DayLog { Date = ExerciseHouse.Today, Done = new OutingMinutes(20) },
                    Words = new LogWords
                    {
                        Words = "went well",
                        Handler = "Oona Pell",
                        Care = "cold hosed",
                    },
                    OnBehalfOf = "the groom",
                }
            ),
        [typeof(LowerWork)] = at =>
            Now(new LowerWorkInput(New(), at.At.Horse, Scene.Less, at.NextDay(), at.LastDay, "deep ground", "the groom")),
        [typeof(PauseWork)] = at =>
            Now(new PauseWorkInput(New(), at.At.Horse, ExerciseHouse.Today, ExerciseHouse.Today.AddDays(2), "farrier", "the groom")),
        [typeof(ReportConcern)] = at => Now(new ReportConcernInput(New(), at.At.Horse, "warm behind", "the groom")),
        [typeof(SeeConcern)] = async at => new RecordInput(New(), await at.ConcernAsync(), Guid.Empty),
        [typeof(NoteLook)] = at => Now(new NoteLookInput(New(), [at.At.Horse])),
        [typeof(KeepTyped)] = at =>
            Now(
                new KeepTypedInput(
                    New(),
                    at.At.Horse,
                    TypedForm.Decision,
                    new Dictionary<string, string?>(StringComparer.Ordinal) { ["reason"] = "as seen" }
                )
            ),
        [typeof(SavePlanDraft)] = async at => new SavePlanDraftInput(
            New(),
            at.At.Horse,
            (await at.At.ViewAsync()).Draft?.Version,
            FullPlan
        ),
        [typeof(SignPlan)] = async at =>
            await at.At.ViewAsync() is var view && (await at.At.DraftAsync(FullPlan, view.Draft?.Version)).Value is var draft
                ? new SignPlanInput
                {
                    CommandId = New(),
                    HorseId = at.At.Horse,
                    Version = draft.Version,
                    SeenNumber = view.LastNumber,
                    From = ExerciseHouse.Today,
                    Place = PlanPlace.Start,
                    IsAdvance = true,
                    RecheckDate = ExerciseHouse.Today.AddDays(60),
                }
                : null!,
        [typeof(SignDecision)] = async at =>
            await at.At.ViewAsync() is var view
                ? new SignDecisionInput
                {
                    CommandId = New(),
                    HorseId = at.At.Horse,
                    SeenNumber = view.LastNumber,
                    Decision = new Decision
                    {
                        Kind = DecisionKind.Hold,
                        PlanVersionId = view.Plan!.Plan.Id,
                        From = ExerciseHouse.Today,
                        RecheckDate = ExerciseHouse.Today.AddDays(60),
                        Reason = "as seen",
                    },
                    Visit = new Visit { LamenessContext = "on the straight", Note = "calm" },
                    Disagreement = "the horse goes well",
                }
                : null!,
        [typeof(ReleaseDecision)] = async at =>
            await at.DecisionAsync() is var decision
                ? new ReleaseDecisionInput(New(), decision.Id, decision.Version, ["She walks."], ["Walk 20 minutes."])
                : null!,
        [typeof(ReleaseReport)] = async at =>
        {
            Guid reader = (await at.PersonAsync(role: Role.ReferringVet)).Id;
            Saved horse = await at.DoneAsync<SaveHorse, SaveHorseInput, Saved>(HorseOf(at) with { ReferringVetId = reader });
            Saved injury = await at.House.CaseAsync(horse.Id);
            await at.House.SignedAsync(injury.Id, Wishes.Content(ExerciseHouse.Today.AddDays(-3), (10, 0), (12, 0.5)));
            return new ReleaseReportInput(New(), injury.Id, reader, "with thanks");
        },
        // Calendar and links to share
        [typeof(RenewFeed)] = _ => Now(new RenewFeedInput(New(), Secret())),
        [typeof(RevokeFeed)] = async at =>
            Record(await at.DoneAsync<RenewFeed, RenewFeedInput, Saved>(new RenewFeedInput(New(), Secret()))),
        [typeof(RenewShare)] = at => Now(ShareOf(at)),
        [typeof(RevokeShare)] = async at => Record(await at.DoneAsync<RenewShare, RenewShareInput, Saved>(ShareOf(at))),
        // Horses and people
        [typeof(SaveHorse)] = at => Now(HorseOf(at)),
        [typeof(ArchiveHorse)] = async at => Record(await at.House.HorseAsync()),
        [typeof(BringBackHorse)] = async at =>
            Record(await at.DoneAsync<ArchiveHorse, RecordInput, Saved>(Record(await at.House.HorseAsync()))),
        [typeof(SaveHorsePhoto)] = at =>
            Now(
                new SaveHorsePhotoInput
                {
                    CommandId = New(),
                    HorseId = at.At.Horse,
                    ContentType = "image/png",
                    Content = [0x89, 0x50, 0x4E, 0x47],
                }
            ),
        [typeof(SavePerson)] = _ =>
            Now(
                new SavePersonInput
                {
                    CommandId = New(),
                    Name = "Wren Ashby",
                    Role = Role.Owner,
                    Phone = "0123 456",
                    Mail = "wren@yard.example",
                }
            ),
        [typeof(ArchivePerson)] = async at =>
            await at.PersonAsync() is var person ? new RecordInput(New(), person.Id, person.Version) : null!,
        [typeof(BringBackPerson)] = async at =>
            await at.PersonAsync() is var person
                ? Record(await at.DoneAsync<ArchivePerson, RecordInput, Saved>(new RecordInput(New(), person.Id, person.Version)))
                : null!,
        [typeof(ErasePerson)] = async at =>
            await at.PersonAsync() is var person
            && await at.DoneAsync<ArchivePerson, RecordInput, Saved>(new RecordInput(New(), person.Id, person.Version)) is var gone
                ? new ErasePersonInput(New(), gone.Id, gone.Version, "somebody")
                : null!,
        [typeof(SaveYard)] = _ =>
            Now(
                new SaveYardInput
                {
                    CommandId = New(),
                    Name = "High Barn",
                    Phone = "0123 456",
                    Address = "by the mill",
                }
            ),
        [typeof(InvitePerson)] = async at => new InvitePersonInput(New(), await at.ColleagueAsync(), Secret(), TakesSecondStep: false),
        [typeof(EndSession)] = _ => Now(new EndSessionInput(New(), null, null, null)),
        // Files
        [typeof(StageImportFile)] = _ => Now(new StageImportFileInput(New(), "sheet.csv", [0x61])),
        [typeof(RememberMapping)] = _ => Now(new RememberMappingInput(New(), Guid.NewGuid().ToString("N"), "{}")),
        [typeof(ApplyImport)] = _ => Now(FullImport()),
        // Links between examinations
        [typeof(PinLink)] = async at => await WordAsync(at),
        [typeof(BreakLink)] = async at => await WordAsync(at),
        [typeof(WithdrawLinkWord)] = async at =>
            await at.DoneAsync<PinLink, LinkWordInput, Saved>(await WordAsync(at)) is var word
                ? new WithdrawLinkWordInput(New(), word.Id, word.Version, "another vessel")
                : null!,
        // Practice
        [typeof(ChangePractice)] = async at => ChangePracticeInput.Of(await at.PracticeAsync(), New()) with { Phone = "0123 456" },
        [typeof(AddRepeats)] = _ => Now(RepeatsOf()),
        [typeof(PutAwayRepeats)] = async at =>
        {
            await at.DoneAsync<AddRepeats, AddRepeatsInput, int>(RepeatsOf());
            RepeatsView view = (await at.House.Get<GetRepeats>().ExecuteAsync(at.Vet, NoInput.Value)).Value;
            return new PutAwayRepeatsInput { CommandId = New(), Ids = [view.Entered[^1].Id] };
        },
        [typeof(BringBackRepeats)] = async at =>
        {
            await at.DoneAsync<AddRepeats, AddRepeatsInput, int>(RepeatsOf());
            RepeatsView view = (await at.House.Get<GetRepeats>().ExecuteAsync(at.Vet, NoInput.Value)).Value;
            PutAwayRepeatsInput away = new() { CommandId = New(), Ids = [view.Entered[^1].Id] };
            await at.DoneAsync<PutAwayRepeats, PutAwayRepeatsInput, int>(away);
            return new BringBackRepeatsInput(New(), away.Ids);
        },
        [typeof(TakeError)] = async at => new TakeErrorInput
        {
            CommandId = New(),
            Version = (await at.PracticeAsync()).Version,
            Size = MeasuredSize.LesionArea,
            ShownCv = null,
        },
        // What stands
        [typeof(AcknowledgeFinding)] = async at =>
        {
            await at.At.LogAsync(
                new DayLog
                {
                    Date = ExerciseHouse.Today,
                    Done = new OutingMinutes(200),
                    Modes = WorkModes.InHand,
                    Surfaces = Surfaces.FirmEven,
                }
            );
            StandingFinding over = (await at.House.Get<GetStanding>().ExecuteAsync(at.Vet, at.At.Case)).Value[0].Finding;
            return new AcknowledgeFindingInput(
                New(),
                at.At.Case,
                new Acknowledged(over.Key, over.Severity, over.Weight),
                "spoken with the yard"
            );
        },
    };

    public static IReadOnlyCollection<Type> Commands => Makers.Keys;

    /// <summary>A plan with every text filled.</summary>
    private static PlanVersion FullPlan =>
        ExerciseHouse.Plan with
        {
            Template = "own",
            Steps = [.. ExerciseHouse.Plan.Steps.Select(step => step with { Note = "quiet company" })],
        };

    private static BookingPlan Plan =>
        new()
        {
            Date = ExerciseHouse.Today.AddDays(6),
            Time = new TimeOnly(10, 0),
            Place = "yard",
            TravelNote = "by the ford",
        };

    public static Task<object> MakeAsync(Type command, Scene scene) => Makers[command](scene);

    private static Guid New() => Guid.NewGuid();

    private static Task<object> Now(object input) => Task.FromResult(input);

    private static RecordInput Record(Saved saved) => new(New(), saved.Id, saved.Version);

    private static string Secret() => $"{Guid.NewGuid():N}{Guid.NewGuid():N}";

    private static SaveHorseInput HorseOf(Scene at) =>
        new()
        {
            CommandId = New(),
            Name = "Larkspur",
            Use = "hacking",
            Markings = "star",
            TrainerId = at.At.Trainer.PersonId,
        };

    private static SaveCareInput CareOf(Scene at) =>
        new()
        {
            CommandId = New(),
            HorseId = at.At.Horse,
            Entry = new CareEntry
            {
                Kind = CareKind.Shoeing,
                From = ExerciseHouse.Today,
                CaseId = at.At.Case.ToString("D"),
                Context = "in front",
                Words = "egg bar",
            },
        };

    private static async Task<SaveCoverInput> CoverAsync(Scene at) =>
        new(New(), await at.ColleagueAsync(), at.Vet.PersonId, ExerciseHouse.Today, ExerciseHouse.Today.AddDays(3));

    private static RenewShareInput ShareOf(Scene at) =>
        new()
        {
            CommandId = New(),
            PersonId = at.At.Trainer.PersonId,
            Relation = HorseRelation.Trainer,
            SecretHash = Secret(),
        };

    private static async Task<LinkWordInput> WordAsync(Scene at) =>
        await at.TwoPlacesAsync() is var (injury, first, second)
            ? new LinkWordInput
            {
                CommandId = New(),
                CaseId = injury,
                First = first,
                Second = second,
                Reason = "same vessel",
            }
            : null!;

    private static AddRepeatsInput RepeatsOf() =>
        new()
        {
            CommandId = New(),
            Tracings = [new RepeatTracing("horse 1", RepeatKind.SameHorseAndDay, MeasuredSize.LesionArea, "Ada", 0.4)],
        };

    private static async Task<object> BeginReminderAsync(Scene at)
    {
        Guid trainer = (await at.PersonAsync("wren@yard.example")).Id;
        Saved horse = await at.DoneAsync<SaveHorse, SaveHorseInput, Saved>(HorseOf(at) with { TrainerId = trainer });
        Saved injury = await at.House.CaseAsync(horse.Id);
        await at.House.SignedAsync(injury.Id, Wishes.Content(ExerciseHouse.Today.AddDays(-61), (10, 0), (12, 0.5)));
        return new BeginReminderInput(New(), injury.Id, trainer, Again: false);
    }

    private static ApplyImportInput FullImport()
    {
        string label = Guid.NewGuid().ToString("N");
        CaseFile file = Files.Healing(label, new HorseIdentity(label, null, null));
        return new ApplyImportInput
        {
            CommandId = New(),
            Cases =
            [
                file with
                {
                    Course = file.Course with
                    {
                        Examinations =
                        [
                            .. file.Course.Examinations.Select(examination =>
                                examination with
                                {
                                    Name = "morning",
                                    Examiner = "E. Marrow",
                                    Transducer = "linear",
                                    Readings = [.. examination.Readings.Select(row => row with { Lesion = "A", Note = "clear" })],
                                }
                            ),
                        ],
                    },
                },
            ],
            Choices = new ImportChoices { Reason = "first sheet" },
        };
    }
}
