using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Records.Examinations;
using RehabTrack.Records.History;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Records.Tests.House;

namespace RehabTrack.Records.Tests.History;

public sealed class GetTrailTests
{
    [Fact]
    public async Task The_trail_is_read_page_by_page_latest_first()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        for (int at = 0; at < 60; at++)
        {
            await house.HorseAsync($"Horse {at}");
        }

        TrailPage first = await ReadAsync(house, new TrailFilter());
        TrailPage second = await ReadAsync(house, new TrailFilter { Before = first.Next });

        Assert.Equal(50, first.Lines.Count);
        Assert.Equal(62L, first.Lines[0].Number);
        Assert.Equal(first.Lines[^1].Number - 1, second.Lines[0].Number);
        Assert.Equal(1L, second.Lines[^1].Number);
        Assert.Null(second.Next);
        Assert.Equal("Edda Marrow", first.Lines[0].By);
    }

    [Fact]
    public async Task The_trail_is_narrowed_to_a_person_a_kind_and_days_of_the_practice()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Actor owner = await house.PersonAsync("Wren Ashby", Role.Owner);
        await house.Get<GetExamination>().ExecuteAsync(owner, Guid.NewGuid());
        // 23:30 UTC is the next day in Vienna.
        house.Time.Advance(new TimeSpan(14, 30, 0));
        await house.HorseAsync();

        Assert.Equal(
            [AccessEvent.RightRefused],
            (await ReadAsync(house, new TrailFilter { PersonId = owner.PersonId })).Lines.Select(line => line.Event)
        );
        Assert.Equal(["Horse"], (await ReadAsync(house, new TrailFilter { Kind = "Horse" })).Lines.Select(line => line.Kind));
        Assert.Equal(
            ["Horse"],
            (await ReadAsync(house, new TrailFilter { From = new DateOnly(2026, 11, 25) })).Lines.Select(line => line.Kind)
        );
        Assert.DoesNotContain(
            (await ReadAsync(house, new TrailFilter { To = new DateOnly(2026, 11, 24) })).Lines,
            line => line.Kind == "Horse"
        );
        Assert.Contains("Examination", (await ReadAsync(house, new TrailFilter())).Kinds);
        Assert.DoesNotContain("ImportFile", (await ReadAsync(house, new TrailFilter())).Kinds);
    }

    [Fact]
    public async Task Nobody_reads_the_trail_of_another_practice()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Actor other = await house.FoundSecondPracticeAsync();
        await house.HorseAsync();

        TrailPage page = (await house.Get<GetTrail>().ExecuteAsync(other, new TrailFilter())).Value;

        Assert.DoesNotContain(page.Lines, line => line.Kind == "Horse");
        Assert.All(page.Lines, line => Assert.Equal("Runa Tolland", line.By));
    }

    [Fact]
    public async Task A_check_by_the_practice_itself_finds_what_was_changed_and_what_was_cut_off()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        await house.HorseAsync();
        TrailCheck before = (await house.Get<CheckTrail>().ExecuteAsync(house.Vet, new CheckTrailInput(null))).Value;
        Assert.Null(before.FirstBreak);
        await house.TamperAsync("DELETE FROM \"Change\" WHERE \"Number\" = 3");

        TrailCheck after = (await house.Get<CheckTrail>().ExecuteAsync(house.Vet, new CheckTrailInput(before.End))).Value;

        Assert.Equal(TrailFault.NotAsNoted, after.FirstBreak!.Why);
    }

    [Fact]
    public async Task What_is_taken_out_is_the_whole_trail_with_its_hashes_and_the_note_that_it_was()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        await house.CaseAsync((await house.HorseAsync()).Id);
        List<TrailRow> rows = [];

        long count = (
            await house
                .Get<ExportTrail>()
                .ExecuteAsync(
                    house.Vet,
                    new ExportTrailInput(
                        new TrailFilter(),
                        row =>
                        {
                            rows.Add(row);
                            return ValueTask.CompletedTask;
                        }
                    )
                )
        ).Value;

        ChangeRecord[] lines = await house.LinesAsync();
        Assert.Equal((lines.Length, lines.Length), (rows.Count, (int)count));
        Assert.Equal(lines.Select(line => Convert.ToHexStringLower(line.Hash!)), rows.Select(row => row.Hash));
        Assert.Equal(rows[..^1].Select(row => row.Hash), rows[1..].Select(row => row.PreviousHash));
        Assert.Equal(("Access", "ExportTrail", """{"event":"DataExported"}"""), (rows[^1].Kind, rows[^1].UseCase, rows[^1].AfterJson));
        Assert.Equal(rows[0].At.AddHours(1), rows[0].AtPractice);
        Assert.All(
            rows,
            row =>
                Assert.Equal(
                    row.BodyHash,
                    Convert.ToHexStringLower(TrailHash.OfBody(Convert.FromHexString(row.Salt), row.BeforeJson, row.AfterJson))
                )
        );
    }

    [Fact]
    public async Task Who_changed_a_reading_is_told_with_before_and_after_also_from_when_it_stood_elsewhere()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Saved horse = await house.HorseAsync();
        Saved injury = await house.CaseAsync(horse.Id);
        SavedDraft draft = await house.DraftAsync(injury.Id, Wishes.Content(new DateOnly(2026, 6, 1), (10, 0), (12.5, 0.5)));
        Saved moved = await ChangeAsync(house, draft.Id, draft.Version, values => values with { LevelCm = 13 });
        await ChangeAsync(house, draft.Id, moved.Version, values => values with { LesionAreaCm2 = 0.45 });

        IReadOnlyList<ChangeView> changes = (
            await house.Get<GetReadingChanges>().ExecuteAsync(house.Vet, new ReadingPlace(draft.Id, [Part.Body], 13, null))
        ).Value;
        Outcome<IReadOnlyList<ChangeView>> nowhere = await house
            .Get<GetReadingChanges>()
            .ExecuteAsync(house.Vet, new ReadingPlace(draft.Id, [Part.Body], 12.5, null));

        Assert.Equal(
            [
                new FieldChange("readings[Body 13].lesionAreaCm2", "0.5", "0.45"),
                new FieldChange("readings[Body 12.5].levelCm", "12.5", "13"),
            ],
            changes.Take(2).SelectMany(change => change.Fields)
        );
        Assert.All(changes, change => Assert.Equal("Edda Marrow", change.By));
        Assert.DoesNotContain(
            changes.SelectMany(change => change.Fields),
            field => field.Field.StartsWith("readings[Body 10]", StringComparison.Ordinal)
        );
        Assert.Equal("not-found", Assert.Single(nowhere.Problems).Code);
    }

    private static async Task<Saved> ChangeAsync(
        RecordsHouse house,
        Guid id,
        Guid version,
        Func<Rechecks.Exams.ReadingDraft, Rechecks.Exams.ReadingDraft> change
    )
    {
        house.Time.Advance(TimeSpan.FromMinutes(1));
        ExaminationView view = (await house.Get<GetExamination>().ExecuteAsync(house.Vet, id)).Value;
        DraftReading second = view.Content.Readings[1];
        SavedDraft saved = (
            await house
                .Get<SaveDraft>()
                .ExecuteAsync(
                    house.Vet,
                    new SaveDraftInput
                    {
                        CommandId = Guid.NewGuid(),
                        Id = id,
                        Version = version,
                        Content = view.Content with
                        {
                            Readings = [view.Content.Readings[0], second with { Values = change(second.Values) }],
                        },
                    }
                )
        ).Value;
        return new Saved(saved.Id, saved.Version);
    }

    private static async Task<TrailPage> ReadAsync(RecordsHouse house, TrailFilter filter) =>
        (await house.Get<GetTrail>().ExecuteAsync(house.Vet, filter)).Value;
}
