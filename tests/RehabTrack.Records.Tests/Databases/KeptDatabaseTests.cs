using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Examinations;
using RehabTrack.Records.History;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Imports;
using RehabTrack.Records.Links;
using RehabTrack.Records.Room;
using RehabTrack.Records.Start;
using RehabTrack.Records.Tests.House;

namespace RehabTrack.Records.Tests.Databases;

/// <summary>Every earlier schema is opened and migrated by the present version.</summary>
public sealed class KeptDatabaseTests
{
    private const string MakeVariable = "REHABTRACK_MAKE_DATABASE";

    public static TheoryData<string> Names => ["issue-a", "issue-b"];

    private static string Folder => Path.Combine(Path.GetDirectoryName(Files.Seed)!, "tests", "RehabTrack.Records.Tests", "Databases");

    [Theory]
    [MemberData(nameof(Names))]
    public async Task A_kept_database_is_migrated_and_read_by_this_version(string name)
    {
        await MakeWhenAskedAsync();
        string folder = Directory.CreateTempSubdirectory("rehabtrack-records-").FullName;
        try
        {
            File.Copy(Path.Combine(Folder, $"{name}.db"), Path.Combine(folder, "rehabtrack.db"));
            await using RecordsHouse house = await RecordsHouse.BuildAsync(folder);
            await house.Get<RenewSummaries>().RunAsync();

            Assert.Equal("Edda Marrow", house.Vet.Name);
            Assert.Empty(await house.LookAsync(records => records.Database.GetPendingMigrationsAsync()));
            HorseRow row = Assert.Single((await house.Get<FindHorses>().ExecuteAsync(house.Vet, new FindHorsesInput())).Value.Rows);
            Assert.Equal(("Thistle Vane", "999000000000001", 2015), (row.Name, row.Microchip, row.BirthYear));
            CaseView view = (await house.Get<GetCase>().ExecuteAsync(house.Vet, Assert.Single(row.OpenCases).Id)).Value;
            Assert.Equal(
                [
                    ExaminationState.History,
                    ExaminationState.History,
                    ExaminationState.History,
                    ExaminationState.Signed,
                    ExaminationState.Draft,
                ],
                view.Examinations.Select(card => card.State)
            );
            Assert.Equal([3, 3, 3, 3], view.Course.Examinations.Select(examination => examination.Readings.Count));
            ExaminationView signed = (await house.Get<GetExamination>().ExecuteAsync(house.Vet, view.Examinations[3].Id)).Value;
            Assert.Equal([null, "Outline traced again"], signed.Versions.Select(version => version.Reason));
            Assert.Equal([0.1, 0.12], signed.Versions.Select(version => version.Content.Readings[1].Values.LesionAreaCm2!.Value));
            Assert.Equal("Same vessel beside it", Assert.Single(view.LinkWords).Reason);
            Assert.True((await house.Get<GetChanges>().ExecuteAsync(house.Vet, view.Id)).Value.Count >= 8);
            Assert.Equal("{\"columns\":[]}", (await house.Get<FindMapping>().ExecuteAsync(house.Vet, "headings")).Value);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static async Task MakeWhenAskedAsync()
    {
        if (Environment.GetEnvironmentVariable(MakeVariable) is not { Length: > 0 } name)
        {
            return;
        }

        string file = Path.Combine(Folder, $"{name}.db");
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        await FillAsync(house);
        File.Delete(file);
        await house.LookAsync(records => records.Database.ExecuteSqlAsync($"VACUUM INTO {file}"));
    }

    private static async Task FillAsync(RecordsHouse house)
    {
        ImportResult imported = (
            await house
                .Get<ApplyImport>()
                .ExecuteAsync(
                    house.Vet,
                    new ApplyImportInput
                    {
                        CommandId = Guid.NewGuid(),
                        Cases = [Files.Healing("Vane LH", new("Thistle Vane", "999000000000001", new DateOnly(2015, 4, 2)))],
                    }
                )
        ).Value;
        Guid caseId = imported.Cases[0].CaseId;
        Saved signed = await house.SignedAsync(caseId, Wishes.Content(new DateOnly(2026, 9, 1), (10, 0), (12, 0.1), (14, 0)));
        ExaminationView view = (await house.Get<GetExamination>().ExecuteAsync(house.Vet, signed.Id)).Value;
        Assert.True(
            (
                await house
                    .Get<AmendExamination>()
                    .ExecuteAsync(
                        house.Vet,
                        new AmendExaminationInput
                        {
                            CommandId = Guid.NewGuid(),
                            Id = signed.Id,
                            Version = signed.Version,
                            Reason = "Outline traced again",
                            Content = view.Content with
                            {
                                Readings =
                                [
                                    .. view.Content.Readings.Select(row =>
                                        row.Values.LevelCm == 12 ? row with { Values = row.Values with { LesionAreaCm2 = 0.12 } } : row
                                    ),
                                ],
                            },
                        }
                    )
            ).Succeeded
        );
        await house.DraftAsync(caseId, Wishes.Content(new DateOnly(2026, 11, 20), (10, 0), (12, 0.05)));
        CaseView injury = (await house.Get<GetCase>().ExecuteAsync(house.Vet, caseId)).Value;
        PlaceKey Key(int examination) => new(injury.Course.Examinations[examination].Id, LinkPath.Axial, new Centimetres(12));
        Assert.True(
            (
                await house
                    .Get<PinLink>()
                    .ExecuteAsync(
                        house.Vet,
                        new LinkWordInput
                        {
                            CommandId = Guid.NewGuid(),
                            CaseId = caseId,
                            First = Key(0),
                            Second = Key(1),
                            Reason = "Same vessel beside it",
                        }
                    )
            ).Succeeded
        );
        await house
            .Get<RememberMapping>()
            .ExecuteAsync(house.Vet, new RememberMappingInput(Guid.NewGuid(), "headings", "{\"columns\":[]}"));
    }
}
