using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Findings;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Examinations;
using RehabTrack.Records.Imports;
using RehabTrack.Records.Links;
using RehabTrack.Records.Room;
using RehabTrack.Records.Tests.House;

namespace RehabTrack.Records.Tests.Examinations;

/// <summary>Levels told by zones are kept as zones, with no level in cm beside them.</summary>
public sealed class ZoneTests
{
    private const ZoneScheme Nine = ZoneScheme.HindNine;

    private static ExaminationContent Content(DateOnly date, double size, ZoneScheme? scheme = Nine, params string[] zones) =>
        new()
        {
            Date = date,
            Zones = scheme,
            Readings =
            [
                .. zones.Select(
                    (zone, at) =>
                        new DraftReading(
                            null,
                            new ReadingDraft
                            {
                                Part = Part.Body,
                                ZoneScheme = scheme,
                                Zone = zone,
                                LigamentAreaCm2 = 1.5,
                                LesionAreaCm2 = at == 1 ? size : 0,
                            }
                        )
                ),
            ],
        };

    private static async Task<CaseView> ViewAsync(RecordsHouse house, Guid id) =>
        (await house.Get<GetCase>().ExecuteAsync(house.Vet, id)).Value;

    private static async Task<Guid> FollowedAsync(RecordsHouse house)
    {
        Saved injury = await house.CaseAsync((await house.HorseAsync()).Id);
        await house.SignedAsync(injury.Id, Content(new DateOnly(2026, 7, 1), 0.5, Nine, "2a", "2B", "3A"));
        await house.SignedAsync(injury.Id, Content(new DateOnly(2026, 9, 1), 0.4, Nine, "2A", "2B", "3A"));
        return injury.Id;
    }

    private static async Task<Outcome<Saved>> LengthAsync(RecordsHouse house, Guid caseId, double length)
    {
        CaseView view = await ViewAsync(house, caseId);
        return await house
            .Get<ChangeCase>()
            .ExecuteAsync(
                house.Vet,
                new ChangeCaseInput
                {
                    CommandId = Guid.NewGuid(),
                    Id = caseId,
                    Version = view.Version,
                    Limb = view.Course.Limb,
                    Structure = view.Course.Structure,
                    Landmark = view.Course.Landmark,
                    Onset = view.Course.Onset,
                    ZoneLengthCm = length,
                }
            );
    }

    [Fact]
    public async Task Zones_and_a_measured_zone_length_come_back_as_they_were_kept()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Guid caseId = await FollowedAsync(house);

        CaseView view = await ViewAsync(house, caseId);
        CaseAnalysis without = CaseAnalyser.Analyse(view.Course, [], view.Practice.Settings, view.Practice.Today);
        Assert.Equal([Nine, Nine], view.Course.Examinations.Select(examination => examination.Zones));
        Assert.Equal(["2A", "2B", "3A"], view.Course.Examinations[0].Readings.Select(reading => reading.Level.ToString()));
        Assert.Contains(without.Findings, finding => finding.Kind == FindingKind.ZoneLengthNotMeasured);
        Assert.All(without.Burdens, burden => Assert.Null(burden.Volume));

        Assert.True((await LengthAsync(house, caseId, 4.1)).Succeeded);
        view = await ViewAsync(house, caseId);
        CaseAnalysis with = CaseAnalyser.Analyse(view.Course, [], view.Practice.Settings, view.Practice.Today);
        Assert.Equal(0.5 * 4.1, with.Burdens[0].Volume!.Value.Value, 12);
        Assert.Equal(4.1, with.Burdens[0].LesionLength!.Value.Value, 12);

        Assert.Equal("zone-length-out-of-range", Assert.Single((await LengthAsync(house, caseId, 12)).Problems).Code);
    }

    [Fact]
    public async Task A_new_examination_is_laid_out_in_the_zones_of_the_last()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Guid caseId = await FollowedAsync(house);

        Saved started = (
            await house
                .Get<StartExamination>()
                .ExecuteAsync(
                    house.Vet,
                    new StartExaminationInput
                    {
                        CommandId = Guid.NewGuid(),
                        CaseId = caseId,
                        FromLast = true,
                    }
                )
        ).Value;

        ExaminationContent content = (await house.Get<GetExamination>().ExecuteAsync(house.Vet, started.Id)).Value.Content;
        Assert.Equal(Nine, content.Zones);
        Assert.Equal(["2A", "2B", "3A"], content.Readings.Select(row => row.Values.Zone));
        Assert.All(content.Readings, row => Assert.Null(row.Values.LevelCm));
    }

    [Fact]
    public async Task Rows_told_in_another_way_than_their_examination_and_a_scheme_of_the_other_limb_keep_it_from_being_signed()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Saved injury = await house.CaseAsync((await house.HorseAsync()).Id);

        async Task<IEnumerable<string>> RefusedAsync(ExaminationContent content)
        {
            SavedDraft draft = await house.DraftAsync(injury.Id, content);
            return (
                await house
                    .Get<SignExamination>()
                    .ExecuteAsync(house.Vet, new SignExaminationInput(Guid.NewGuid(), draft.Id, draft.Version))
            ).Problems.Select(problem => $"{problem.Field} {problem.Code}");
        }

        ExaminationContent zones = Content(new DateOnly(2026, 7, 1), 0.5, Nine, "2A", "2B");
        Assert.Equal(
            ["readings[0].zone zone-scheme-differs", "readings[1].zone zone-scheme-differs"],
            await RefusedAsync(zones with { Zones = null })
        );
        Assert.Equal(
            ["zone_scheme zone-scheme-other-limb"],
            await RefusedAsync(Content(new DateOnly(2026, 7, 1), 0.5, ZoneScheme.ForeSeven, "2A", "2B"))
        );
        Assert.Equal(
            ["division_cm fixed-point-by-zones"],
            await RefusedAsync(zones with { FixedPoints = [new FixedPoint(FixedPointKind.Division, new Centimetres(24))] })
        );
        Assert.Equal(["readings[1].zone place-read-twice"], await RefusedAsync(Content(new DateOnly(2026, 7, 1), 0.5, Nine, "2A", "2a")));
    }

    [Fact]
    public async Task A_word_on_a_link_names_zones_and_is_followed()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Guid caseId = await FollowedAsync(house);
        CaseView view = await ViewAsync(house, caseId);
        PlaceKey Place(int examination, int reading) =>
            new(view.Course.Examinations[examination].Id, LinkPath.Axial, view.Course.Examinations[examination].Readings[reading].Level);

        Outcome<Saved> broken = await house
            .Get<BreakLink>()
            .ExecuteAsync(
                house.Vet,
                new LinkWordInput
                {
                    CommandId = Guid.NewGuid(),
                    CaseId = caseId,
                    First = Place(0, 1),
                    Second = Place(1, 1),
                    Reason = "another zone was meant",
                }
            );

        Assert.True(broken.Succeeded);
        view = await ViewAsync(house, caseId);
        LinkWordView word = Assert.Single(view.LinkWords);
        Assert.True(word.Applies);
        Assert.Equal((Place(0, 1), Place(1, 1)), (word.Constraint.First, word.Constraint.Second));
        CaseAnalysis analysis = CaseAnalyser.Analyse(view.Course, view.Constraints, view.Practice.Settings, view.Practice.Today);
        Assert.Equal(4, analysis.Links.Tracks.Count);
    }

    [Fact]
    public async Task A_file_brings_zones_and_a_later_one_that_tells_them_on_a_tape_is_shown_as_a_difference()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Reading Row(string id, Level level) =>
            new()
            {
                Id = id,
                Part = Part.Body,
                Level = level,
                LigamentArea = new SquareCentimetres(1.5),
            };
        Examination byZones = new()
        {
            Id = "2026-01-10",
            Date = new DateOnly(2026, 1, 10),
            State = ExaminationState.History,
            Zones = Nine,
            Readings = [Row("2", new Level(new Zone(Nine, 2))), Row("3", new Level(new Zone(Nine, 3)))],
        };
        CaseFile File(Examination examination) =>
            new(
                "Zoned",
                new HorseIdentity("Thistle Vane", null, null),
                new CaseCourse
                {
                    Id = "Zoned",
                    Limb = Limb.LeftHind,
                    Structure = Structure.SuspensoryLigament,
                    Landmark = Landmark.PointOfHock,
                    ZoneLength = new Centimetres(4.1),
                    Examinations = [examination],
                }
            );
        ImportResult written = (
            await house
                .Get<ApplyImport>()
                .ExecuteAsync(house.Vet, new ApplyImportInput { CommandId = Guid.NewGuid(), Cases = [File(byZones)] })
        ).Value;

        CaseView view = await ViewAsync(house, written.Cases[0].CaseId);
        Assert.Equal(4.1, view.Course.ZoneLength?.Value);
        Assert.Equal(["2A", "2B"], view.Course.Examinations[0].Readings.Select(reading => reading.Level.ToString()));

        ImportPreview again = (
            await house.Get<PreviewImport>().ExecuteAsync(house.Vet, new PreviewImportInput { Cases = [File(byZones)] })
        ).Value;
        Assert.Equal(ExaminationStanding.Known, again.Cases[0].Examinations[0].Standing);

        Examination onTape = byZones with { Zones = null, Readings = [Row("2", new Centimetres(12))] };
        ImportPreview other = (
            await house.Get<PreviewImport>().ExecuteAsync(house.Vet, new PreviewImportInput { Cases = [File(onTape)] })
        ).Value;
        Assert.Contains(
            other.Cases[0].Examinations[0].Differences,
            difference => (difference.Field, difference.Kept, difference.InFile) == ("zone_scheme", "hind-9", "cm")
        );
    }
}
