using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Examinations;
using RehabTrack.Records.Horses;
using RehabTrack.Records.People;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Tests.House;

/// <summary>What people of the tests wish most often.</summary>
internal static class Wishes
{
    public static async Task<Saved> HorseAsync(this RecordsHouse house, string name = "Thistle Vane", string? chip = null) =>
        (
            await house
                .Get<SaveHorse>()
                .ExecuteAsync(
                    house.Vet,
                    new SaveHorseInput
                    {
                        CommandId = Guid.NewGuid(),
                        Name = name,
                        Microchip = chip,
                        BirthDate = new DateOnly(2015, 4, 2),
                    }
                )
        ).Value;

    public static async Task<Saved> CaseAsync(this RecordsHouse house, Guid horseId) =>
        (
            await house
                .Get<OpenCase>()
                .ExecuteAsync(
                    house.Vet,
                    new OpenCaseInput
                    {
                        CommandId = Guid.NewGuid(),
                        HorseId = horseId,
                        Limb = Limb.LeftHind,
                        Structure = Structure.SuspensoryLigament,
                        Onset = new DateOnly(2026, 4, 1),
                    }
                )
        ).Value;

    public static async Task<Actor> PersonAsync(this RecordsHouse house, string name, Role role, bool canSignIn = true) =>
        new(house.Vet.PracticeId, (await house.AddAsync(name, role, canSignIn: canSignIn)).Id, role, name);

    /// <summary>A new person, as they were saved.</summary>
    public static async Task<Saved> AddAsync(
        this RecordsHouse house,
        string name,
        Role role,
        string? phone = null,
        string? mail = null,
        bool canSignIn = false
    ) =>
        (
            await house
                .Get<SavePerson>()
                .ExecuteAsync(
                    house.Vet,
                    new SavePersonInput
                    {
                        CommandId = Guid.NewGuid(),
                        Name = name,
                        Role = role,
                        Phone = phone,
                        Mail = mail,
                        CanSignIn = canSignIn,
                    }
                )
        ).Value;

    public static ExaminationContent Content(DateOnly date, params (double Level, double Lesion)[] levels) =>
        new()
        {
            Date = date,
            Readings =
            [
                .. levels.Select(level => new DraftReading(
                    null,
                    new ReadingDraft
                    {
                        Part = Part.Body,
                        LevelCm = level.Level,
                        LigamentAreaCm2 = 1.5,
                        LesionAreaCm2 = level.Lesion,
                    }
                )),
            ],
        };

    public static async Task<SavedDraft> DraftAsync(this RecordsHouse house, Guid caseId, ExaminationContent content)
    {
        Saved started = (
            await house
                .Get<StartExamination>()
                .ExecuteAsync(
                    house.Vet,
                    new StartExaminationInput
                    {
                        CommandId = Guid.NewGuid(),
                        CaseId = caseId,
                        FromLast = false,
                    }
                )
        ).Value;
        return (
            await house
                .Get<SaveDraft>()
                .ExecuteAsync(
                    house.Vet,
                    new SaveDraftInput
                    {
                        CommandId = Guid.NewGuid(),
                        Id = started.Id,
                        Version = started.Version,
                        Content = content,
                    }
                )
        ).Value;
    }

    public static async Task<Saved> SignedAsync(this RecordsHouse house, Guid caseId, ExaminationContent content)
    {
        SavedDraft draft = await house.DraftAsync(caseId, content);
        return (
            await house.Get<SignExamination>().ExecuteAsync(house.Vet, new SignExaminationInput(Guid.NewGuid(), draft.Id, draft.Version))
        ).Value;
    }
}
