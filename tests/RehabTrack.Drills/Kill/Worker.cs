using System.Globalization;
using RehabTrack.Records.Examinations;
using RehabTrack.Records.Room;

namespace RehabTrack.Drills.Kill;

/// <summary>
/// The process that is killed: several people enter and sign examinations, and every write that was acknowledged is told in a line of
/// its own, after it was acknowledged.
/// </summary>
internal static class Worker
{
    private const int SavesPerExamination = 4;

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
            Saved examination = await Writing.BeginAsync(house, await Writing.CaseAsync(house, horse));
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
        }
    }

    // One write a line, so that no line of a killed process is half an acknowledgement of another.
    private static void Say(string what, Guid id, int number) =>
        Console.Out.Write(string.Create(CultureInfo.InvariantCulture, $"{what} {id:D} {number}\n"));
}
