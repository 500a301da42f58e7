using System.Text;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Records.Bookings;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Examinations;
using RehabTrack.Records.Feeds;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Imports;
using RehabTrack.Records.People;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Web.Components;
using RehabTrack.Web.Tests.Shared;

namespace RehabTrack.Web.Tests.Walk;

/// <summary>A horse with people beside it and one record of each kind that an address can name, all of them marked with one word.</summary>
internal sealed class WalkRecords
{
    private readonly Dictionary<Subject, string> _ids = [];

    private WalkRecords(string mark)
    {
        Mark = mark;
    }

    /// <summary>The word that stands in the horse's name and in every text of its records.</summary>
    public string Mark { get; }

    public Guid Horse => Guid.Parse(_ids[Subject.Horse]);

    public Guid Yard => Guid.Parse(_ids[Subject.Yard]);

    public Guid Report => Guid.Parse(_ids[Subject.Report]);

    public Guid Case => Guid.Parse(_ids[Subject.Case]);

    /// <summary>What stands in the address for a record; an id of nothing where there is no such kind.</summary>
    public string Of(Subject subject) => _ids.GetValueOrDefault(subject, "");

    public static async Task<WalkRecords> FillAsync(IServiceProvider services, Actor vet, string mark, HorsePeopleIds people)
    {
        ShareHouse house = new(services, vet);
        WalkRecords records = new(mark);
        DateOnly today = await house.TodayAsync();
        Guid yard = (
            await house.AskAsync<SaveYard, SaveYardInput, Saved>(
                new SaveYardInput
                {
                    CommandId = Guid.NewGuid(),
                    Name = $"Yard {mark}",
                    Phone = "+43 1 5550199",
                }
            )
        ).Id;
        Guid horse = (
            await house.AskAsync<SaveHorse, SaveHorseInput, Saved>(
                new SaveHorseInput
                {
                    CommandId = Guid.NewGuid(),
                    Name = $"Horse {mark}",
                    Markings = $"star {mark}",
                    YardId = yard,
                    OwnerId = people.Owner,
                    TrainerId = people.Trainer,
                    ReferringVetId = people.ReferringVet,
                }
            )
        ).Id;
        await house.AskAsync<SaveHorsePhoto, SaveHorsePhotoInput, Saved>(
            new SaveHorsePhotoInput
            {
                CommandId = Guid.NewGuid(),
                HorseId = horse,
                ContentType = "image/png",
                Content = Encoding.UTF8.GetBytes($"no picture, {mark}"),
            }
        );
        Guid injury = (
            await house.AskAsync<OpenCase, OpenCaseInput, Saved>(
                new OpenCaseInput
                {
                    CommandId = Guid.NewGuid(),
                    HorseId = horse,
                    Limb = Limb.LeftHind,
                    Structure = Structure.SuspensoryLigament,
                    Onset = today.AddDays(-90),
                    Diagnosis = $"torn, {mark}",
                }
            )
        ).Id;
        Saved started = await house.AskAsync<StartExamination, StartExaminationInput, Saved>(
            new StartExaminationInput
            {
                CommandId = Guid.NewGuid(),
                CaseId = injury,
                FromLast = false,
            }
        );
        SavedDraft draft = await house.AskAsync<SaveDraft, SaveDraftInput, SavedDraft>(
            new SaveDraftInput
            {
                CommandId = Guid.NewGuid(),
                Id = started.Id,
                Version = started.Version,
                Content = new ExaminationContent
                {
                    Date = today.AddDays(-70),
                    Note = $"seen {mark}",
                    Readings = [Reading(16, 0), Reading(18, 0.3), Reading(20, 0)],
                },
            }
        );
        await house.AskAsync<SignExamination, SignExaminationInput, Saved>(
            new SignExaminationInput(Guid.NewGuid(), draft.Id, draft.Version)
        );
        Guid booking = (
            await house.AskAsync<BookRecheck, BookRecheckInput, Saved>(
                new BookRecheckInput(Guid.NewGuid(), injury, new BookingPlan { Date = today.AddDays(9), Place = $"at {mark}" })
            )
        ).Id;
        Guid file = (
            await house.AskAsync<StageImportFile, StageImportFileInput, Saved>(
                new StageImportFileInput(
                    Guid.NewGuid(),
                    $"{mark}.csv",
                    Encoding.UTF8.GetBytes($"case,examination_date,level_cm\n{mark},not a day,4\n")
                )
            )
        ).Id;
        Guid report = (await house.ReleaseAsync(injury, people.ReferringVet, mark)).Id;
        AddressSecret calendar = AddressSecret.Make();
        await house.AskAsync<RenewFeed, RenewFeedInput, Saved>(new RenewFeedInput(Guid.NewGuid(), calendar.Hash));
        records._ids[Subject.Horse] = horse.ToString();
        records._ids[Subject.Case] = injury.ToString();
        records._ids[Subject.Examination] = draft.Id.ToString();
        records._ids[Subject.Booking] = booking.ToString();
        records._ids[Subject.Person] = people.Owner.ToString();
        records._ids[Subject.Yard] = yard.ToString();
        records._ids[Subject.ImportFile] = file.ToString();
        records._ids[Subject.Report] = report.ToString();
        records._ids[Subject.Calendar] = calendar.Text;
        return records;
    }

    private static DraftReading Reading(double level, double lesion) =>
        new(
            null,
            new ReadingDraft
            {
                Part = Part.Body,
                LevelCm = level,
                LigamentAreaCm2 = 1.5,
                LesionAreaCm2 = lesion,
            }
        );
}
