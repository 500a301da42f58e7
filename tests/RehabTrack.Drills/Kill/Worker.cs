using System.Globalization;
using RehabTrack.Records.Examinations;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Imports;
using RehabTrack.Records.Room;

namespace RehabTrack.Drills.Kill;

/// <summary>
/// The process that is killed: several people enter and sign examinations, plans and decisions, log days and concerns, hand in photos and import
/// files, and every write that was acknowledged is told in a line of its own, after it was acknowledged.
/// </summary>
internal static class Worker
{
    private const int SavesPerExamination = 4;
    private const int Photos = 2;
    private const int Visits = 3;

    public static async Task<int> RunAsync(string folder, int writers)
    {
        await using DrillHouse house = await DrillHouse.OpenAsync(folder);
        Say("ready", Guid.Empty, 0);
        await Task.WhenAll(Enumerable.Range(0, writers).Select(writer => Task.Run(() => WriteAsync(house, writer))));
        return 0;
    }

    private static async Task WriteAsync(DrillHouse house, int writer)
    {
        for (int number = 1; ; number += SavesPerExamination)
        {
            string name = string.Create(CultureInfo.InvariantCulture, $"Drill {writer} {number}");
            Guid horse = await Writing.HorseAsync(house, name);
            Say("horse", horse, 0);
            Guid injury = await Writing.CaseAsync(house, horse);
            // A kill comes early or late: what is written first changes from horse to horse.
            if (number / SavesPerExamination % 2 == 1)
            {
                await ExerciseAsync(house, horse, name);
            }

            Saved examination = await Writing.BeginAsync(house, injury);
            Say("begun", examination.Id, 0);
            for (int save = 0; save < SavesPerExamination; save++)
            {
                SavedDraft saved = (
                    await house
                        .Get<SaveDraft>()
                        .ExecuteAsync(
                            house.Vet,
                            new SaveDraftInput
                            {
                                CommandId = Guid.CreateVersion7(),
                                Id = examination.Id,
                                Version = examination.Version,
                                Content = Writing.Content(number + save),
                            }
                        )
                ).Value;
                Say("saved", saved.Id, number + save);
                examination = new Saved(saved.Id, saved.Version);
            }

            Outcome<Saved> signed = await house
                .Get<SignExamination>()
                .ExecuteAsync(house.Vet, new SignExaminationInput(Guid.CreateVersion7(), examination.Id, examination.Version));
            Say("signed", signed.Value.Id, number + SavesPerExamination - 1);
            if (number / SavesPerExamination % 2 == 0)
            {
                await ExerciseAsync(house, horse, name);
            }
        }
    }

    private static async Task ExerciseAsync(DrillHouse house, Guid horse, string name)
    {
        _ = (await Writing.SignPlanAsync(house, horse)).Value;
        ExerciseView view = await SayLinesAsync(house, horse);
        _ = (await house.Get<LogDay>().ExecuteAsync(house.Vet, Writing.Log(horse, view))).Value;
        view = await SayLinesAsync(house, horse);
        _ = (await house.Get<SignDecision>().ExecuteAsync(house.Vet, Writing.Hold(horse, view))).Value;
        await SayLinesAsync(house, horse);
        _ = (
            await house
                .Get<ReportConcern>()
                .ExecuteAsync(house.Vet, new ReportConcernInput(Guid.CreateVersion7(), horse, "warm", "the groom"))
        ).Value;
        await SayLinesAsync(house, horse);
        for (byte mark = 1; mark <= Photos; mark++)
        {
            _ = (
                await house
                    .Get<SaveHorsePhoto>()
                    .ExecuteAsync(
                        house.Vet,
                        new SaveHorsePhotoInput
                        {
                            CommandId = Guid.CreateVersion7(),
                            HorseId = horse,
                            ContentType = "image/png",
                            Content = Writing.Photo(mark),
                        }
                    )
            ).Value;
            Say("photo", horse, mark);
        }

        ImportResult imported = (
            await house
                .Get<ApplyImport>()
                .ExecuteAsync(
                    house.Vet,
                    new ApplyImportInput { CommandId = Guid.CreateVersion7(), Cases = [Writing.File($"{name} of a file", Visits)] }
                )
        ).Value;
        Say("import", imported.Cases[0].CaseId, Visits);
    }

    private static async Task<ExerciseView> SayLinesAsync(DrillHouse house, Guid horse)
    {
        ExerciseView view = await Writing.ExerciseAsync(house, horse);
        Say("lines", horse, view.LastNumber);
        return view;
    }

    // One write a line, so that no line of a killed process is half an acknowledgement of another.
    private static void Say(string what, Guid id, int number) =>
        Console.Out.Write(string.Create(CultureInfo.InvariantCulture, $"{what} {id:D} {number}\n"));
}
