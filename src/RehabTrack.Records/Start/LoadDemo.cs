using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Records.Bookings;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Covers;
using RehabTrack.Records.Examinations;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Imports;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.People;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Start;

/// <summary>
/// A step of starting up with the demo: the invented practice, as a practice would have entered it, through the same use cases and at
/// the times it would have happened. Loading again does nothing; after being stopped half-way it goes on where it was.
/// </summary>
public sealed class LoadDemo(RecordsAccess access)
{
    private const int FoundedDaysBefore = 30;
    private static readonly TimeOnly Morning = new(8, 0);
    private static readonly TimeOnly Evening = new(17, 0);

    /// <summary>The actor of the vet who founded the practice.</summary>
    /// <param name="demo">The definition.</param>
    /// <param name="files">The cases read from its import files, with the dates of the files.</param>
    /// <param name="plans">The exercise of its horses, with the dates of the file.</param>
    /// <param name="cancellation">Gives up; goes on at the next start.</param>
    /// <exception cref="InvalidOperationException">Definition and files do not fit.</exception>
    public async Task<Actor> RunAsync(
        DemoDefinition demo,
        IReadOnlyList<CaseFile> files,
        IReadOnlyList<DemoPlan> plans,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(demo);
        ArgumentNullException.ThrowIfNull(files);
        ArgumentNullException.ThrowIfNull(plans);
        Story story = await FoundAsync(demo, files, cancellation);
        if (await IsDoneAsync(story, cancellation))
        {
            return story.Founder;
        }

        Dictionary<string, Actor> people = await PeopleAsync(story, cancellation);
        await HorsesAsync(story, people, cancellation);
        Dictionary<string, Guid> cases = new(StringComparer.Ordinal);
        foreach (DemoCase injury in demo.Cases)
        {
            CaseFile file =
                files.FirstOrDefault(file => file.Label == injury.Label)
                ?? throw new InvalidOperationException($"The demo's files have no case {injury.Label}.");
            cases.Add(
                injury.Label,
                await CaseAsync(story, people[injury.ResponsibleVet], injury, Shift(file, story.ShiftDays), cancellation)
            );
        }

        DemoExercise exercise = new((date, time) => At(demo, date, time), CommandOf, story.ShiftDays);
        foreach (DemoPlan plan in plans)
        {
            await exercise.RunAsync(plan, people, cancellation);
        }

        await DeskAsync(story, people, cases, cancellation);

        await DoneAsync(story, cancellation);
        return story.Founder;
    }

    private static Guid CommandOf(string wish) =>
        new(SHA256.HashData(Encoding.UTF8.GetBytes($"demo: {wish}")).AsSpan(0, 16), bigEndian: true);

    private async Task<Story> FoundAsync(DemoDefinition demo, IReadOnlyList<CaseFile> files, CancellationToken cancellation)
    {
        Guid command = CommandOf("practice");
        await using RecordsContext any = await access.OpenAsync(Guid.Empty, null, cancellation);
        AppliedCommandRecord? founded = await any
            .AppliedCommands.IgnoreQueryFilters()
            .AsNoTracking()
            .FirstOrDefaultAsync(applied => applied.CommandId == command && applied.UseCase == nameof(LoadDemo), cancellation);
        DateOnly first = files.SelectMany(file => file.Course.Examinations).Min(examination => examination.Date);
        DemoPerson founder = demo.People.First(person => RoleOf(person.Kind) == Role.Vet);
        if (founded is not null)
        {
            int kept = int.Parse(founded.ResultJson, CultureInfo.InvariantCulture);
            return new Story(
                demo,
                kept,
                first.AddDays(kept - FoundedDaysBefore),
                new Actor(founded.PracticeId, founded.PersonId, Role.Vet, founder.Name)
            );
        }

        int shift = PracticeTime.DateOf(access.Now, demo.Practice.TimeZone).DayNumber - demo.AnchorDate.DayNumber;
        DateOnly opening = first.AddDays(shift - FoundedDaysBefore);
        Actor actor = await FoundPractice.RunAsync(
            At(demo, opening, Morning),
            new FoundPractice.Founding(
                command,
                nameof(LoadDemo),
                demo.Practice.Name,
                demo.Practice.Phone,
                demo.Practice.TimeZone,
                demo.Practice.Language,
                founder.Name,
                founder.Phone,
                founder.Mail,
                shift.ToString(CultureInfo.InvariantCulture)
            ),
            cancellation
        );
        return new Story(demo, shift, opening, actor);
    }

    private async Task<bool> IsDoneAsync(Story story, CancellationToken cancellation)
    {
        Guid command = CommandOf("done");
        await using RecordsContext records = await access.OpenAsync(story.Founder.PracticeId, null, cancellation);
        return await records.AppliedCommands.AnyAsync(applied => applied.CommandId == command, cancellation);
    }

    private async Task DoneAsync(Story story, CancellationToken cancellation)
    {
        await using RecordsContext records = await access.OpenAsync(story.Founder.PracticeId, null, cancellation);
        records.AppliedCommands.Add(
            new AppliedCommandRecord
            {
                PracticeId = story.Founder.PracticeId,
                CommandId = CommandOf("done"),
                UseCase = nameof(LoadDemo),
                PersonId = story.Founder.PersonId,
                At = access.Now,
                ResultJson = "{}",
            }
        );
        await records.SaveChangesAsync(cancellation);
    }

    private async Task<Dictionary<string, Actor>> PeopleAsync(Story story, CancellationToken cancellation)
    {
        SavePerson save = new(At(story.Demo, story.Opening, Morning));
        Dictionary<string, Actor> people = new(StringComparer.Ordinal);
        bool founderSeen = false;
        foreach (DemoPerson person in story.Demo.People)
        {
            Role role = RoleOf(person.Kind);
            if (!founderSeen && role == Role.Vet)
            {
                founderSeen = true;
                people.Add(person.Key, story.Founder);
                continue;
            }

            Saved saved = Must(
                await save.ExecuteAsync(
                    story.Founder,
                    new SavePersonInput
                    {
                        CommandId = CommandOf($"person {person.Key}"),
                        Name = person.Name,
                        Role = role,
                        Phone = person.Phone,
                        Mail = person.Mail,
                        Language = person.Language,
                        CanSignIn = role != Role.ReferringVet,
                    },
                    cancellation
                )
            );
            people.Add(person.Key, new Actor(story.Founder.PracticeId, saved.Id, role, person.Name));
        }

        return people;
    }

    private async Task HorsesAsync(Story story, Dictionary<string, Actor> people, CancellationToken cancellation)
    {
        RecordsAccess opening = At(story.Demo, story.Opening, Morning);
        Dictionary<string, Guid> yards = new(StringComparer.Ordinal);
        foreach (DemoYard yard in story.Demo.Yards)
        {
            Saved saved = Must(
                await new SaveYard(opening).ExecuteAsync(
                    story.Founder,
                    new SaveYardInput
                    {
                        CommandId = CommandOf($"yard {yard.Key}"),
                        Name = yard.Name,
                        Phone = yard.Phone,
                    },
                    cancellation
                )
            );
            yards.Add(yard.Key, saved.Id);
        }

        foreach (DemoHorse horse in story.Demo.Horses)
        {
            Guid? Person(string? key) => key is null ? null : people[key].PersonId;
            Must(
                await new SaveHorse(opening).ExecuteAsync(
                    story.Founder,
                    new SaveHorseInput
                    {
                        CommandId = CommandOf($"horse {horse.Name}"),
                        Name = horse.Name,
                        Microchip = horse.Microchip,
                        BirthYear = horse.BirthYear,
                        Sex = horse.Sex,
                        Use = horse.Use,
                        Markings = horse.Markings,
                        YardId = horse.Yard is null ? null : yards[horse.Yard],
                        OwnerId = Person(horse.Owner),
                        TrainerId = Person(horse.Trainer),
                        ReferringVetId = Person(horse.ReferringVet),
                    },
                    cancellation
                )
            );
        }
    }

    private async Task<Guid> CaseAsync(Story story, Actor vet, DemoCase injury, CaseFile file, CancellationToken cancellation)
    {
        DateOnly last = file.Course.Examinations.Max(examination => examination.Date);
        DateOnly signedFrom = injury.SignedFrom?.AddDays(story.ShiftDays) ?? last.AddDays(1);
        Examination[] history = [.. file.Course.Examinations.Where(examination => examination.Date < signedFrom)];
        RecordsAccess began = At(story.Demo, signedFrom, Morning);
        Guid caseId = Must(
            await new ApplyImport(began).ExecuteAsync(
                vet,
                new ApplyImportInput
                {
                    CommandId = CommandOf($"import {injury.Label}"),
                    Cases = [file with { Course = file.Course with { Examinations = history } }],
                },
                cancellation
            )
        )
            .Cases[0]
            .CaseId;
        CaseView view = Must(await new GetCase(began).ExecuteAsync(vet, caseId, cancellation));
        Must(
            await new ChangeCase(began).ExecuteAsync(
                vet,
                new ChangeCaseInput
                {
                    CommandId = CommandOf($"case {injury.Label}"),
                    Id = caseId,
                    Version = view.Version,
                    Limb = view.Course.Limb,
                    Structure = view.Course.Structure,
                    Landmark = view.Course.Landmark,
                    Onset = view.Course.Onset,
                    Reinjury = view.Course.Reinjury,
                    TargetFraction = view.Course.TargetFraction,
                    OtherLimb = view.Course.OtherLimb,
                    ZoneLengthCm = view.Course.ZoneLength?.Value,
                    FirstDiagnosis = injury.FirstDiagnosis?.AddDays(story.ShiftDays),
                    ResponsibleVetId = vet.PersonId,
                },
                cancellation
            )
        );
        foreach (Examination examination in file.Course.Examinations.Except(history).OrderBy(entered => entered.Date))
        {
            await ExaminationAsync(story, vet, caseId, $"{injury.Label} {examination.Id}", examination, cancellation);
        }

        return caseId;
    }

    /// <summary>Bookings, calls and cover, each at the time at which it was made.</summary>
    private async Task DeskAsync(
        Story story,
        Dictionary<string, Actor> people,
        Dictionary<string, Guid> cases,
        CancellationToken cancellation
    )
    {
        DemoDesk desk = story.Demo.Desk;
        Actor clerk = people[desk.By];
        DateOnly Day(DateOnly date) => date.AddDays(story.ShiftDays);
        foreach (DemoCover cover in desk.Covers)
        {
            Must(
                await new SaveCover(At(story.Demo, Day(cover.Set), Morning)).ExecuteAsync(
                    people[cover.Vet],
                    new SaveCoverInput(
                        CommandOf($"cover {cover.Vet} {cover.From.DayNumber}"),
                        people[cover.Vet].PersonId,
                        people[cover.By].PersonId,
                        Day(cover.From),
                        Day(cover.To)
                    ),
                    cancellation
                )
            );
        }

        foreach (DemoCall call in desk.Calls)
        {
            Must(
                await new NoteCall(At(story.Demo, Day(call.Date), Evening)).ExecuteAsync(
                    clerk,
                    new NoteCallInput(
                        CommandOf($"call {call.Case} {call.Date.DayNumber}"),
                        cases[call.Case],
                        call.Outcome,
                        people[call.Person].PersonId,
                        call.Words
                    ),
                    cancellation
                )
            );
        }

        foreach (DemoBooking booking in desk.Bookings)
        {
            Must(
                await new BookRecheck(At(story.Demo, Day(booking.Made), Evening)).ExecuteAsync(
                    clerk,
                    new BookRecheckInput(
                        CommandOf($"book {booking.Case} {booking.Date.DayNumber}"),
                        cases[booking.Case],
                        new BookingPlan
                        {
                            Date = Day(booking.Date),
                            Time = booking.Time,
                            VetId = people[booking.Vet].PersonId,
                            Place = booking.Place,
                            TravelNote = booking.TravelNote,
                        }
                    ),
                    cancellation
                )
            );
        }
    }

    private async Task ExaminationAsync(
        Story story,
        Actor vet,
        Guid caseId,
        string wish,
        Examination examination,
        CancellationToken cancellation
    )
    {
        RecordsAccess then = At(story.Demo, examination.Date, Evening);
        Saved draft = Must(
            await new StartExamination(then).ExecuteAsync(
                vet,
                new StartExaminationInput
                {
                    CommandId = CommandOf($"start {wish}"),
                    CaseId = caseId,
                    Date = examination.Date,
                    Name = examination.Name,
                    Stance = examination.Stance,
                    FromLast = false,
                },
                cancellation
            )
        );
        SavedDraft saved = Must(
            await new SaveDraft(then).ExecuteAsync(
                vet,
                new SaveDraftInput
                {
                    CommandId = CommandOf($"save {wish}"),
                    Id = draft.Id,
                    Version = draft.Version,
                    Content = new ExaminationContent
                    {
                        Date = examination.Date,
                        Name = examination.Name,
                        Stance = examination.Stance,
                        Examiner = examination.Examiner ?? vet.Name,
                        Transducer = examination.Transducer,
                        Landmark = examination.Landmark,
                        Zones = examination.Zones,
                        FixedPoints = examination.FixedPoints,
                        Readings = [.. examination.Readings.Select(reading => new DraftReading(null, ReadingMap.ToDraft(reading)))],
                    },
                },
                cancellation
            )
        );
        Must(
            await new SignExamination(then).ExecuteAsync(
                vet,
                new SignExaminationInput(CommandOf($"sign {wish}"), saved.Id, saved.Version),
                cancellation
            )
        );
    }

    /// <summary>The records at a time of the story, never later than now.</summary>
    private RecordsAccess At(DemoDefinition demo, DateOnly date, TimeOnly time)
    {
        DateTime instant = PracticeTime.InstantOf(date, time, demo.Practice.TimeZone);
        return access.At(new StandingClock(instant < access.Now ? instant : access.Now));
    }

    private static CaseFile Shift(CaseFile file, int days) =>
        file with
        {
            Course = file.Course with
            {
                Onset = file.Course.Onset?.AddDays(days),
                Reinjury = file.Course.Reinjury?.AddDays(days),
                Examinations =
                [
                    .. file.Course.Examinations.Select(examination => examination with { Date = examination.Date.AddDays(days) }),
                ],
            },
        };

    private static Role RoleOf(string kind) =>
        kind switch
        {
            "vet" => Role.Vet,
            "assistant" => Role.Assistant,
            "trainer" => Role.Trainer,
            "owner" => Role.Owner,
            "referring-vet" => Role.ReferringVet,
            _ => throw new InvalidOperationException($"The demo knows no kind of person {kind}."),
        };

    private static T Must<T>(Outcome<T> outcome) => outcome.Value;

    private sealed record Story(DemoDefinition Demo, int ShiftDays, DateOnly Opening, Actor Founder);
}
