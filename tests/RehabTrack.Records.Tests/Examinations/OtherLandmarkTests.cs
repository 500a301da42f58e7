using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Findings;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Room;
using RehabTrack.Records.Tests.House;

namespace RehabTrack.Records.Tests.Examinations;

/// <summary>A tape that starts at another landmark is compared only through a distance measured on that horse; fixed points are kept.</summary>
public sealed class OtherLandmarkTests
{
    private static readonly FixedPoint Origin = new(FixedPointKind.Origin, new Centimetres(8));

    private static async Task<CaseView> FollowedAsync(RecordsHouse house, double? hockToJoint)
    {
        Saved horse = await house.HorseAsync();
        Saved injury = (
            await house
                .Get<OpenCase>()
                .ExecuteAsync(
                    house.Vet,
                    new OpenCaseInput
                    {
                        CommandId = Guid.NewGuid(),
                        HorseId = horse.Id,
                        Limb = Limb.LeftHind,
                        Structure = Structure.SuspensoryLigament,
                        Onset = new DateOnly(2026, 4, 1),
                        OtherLimb = OtherLimb.HasLesion,
                        HockToJointCm = hockToJoint,
                    }
                )
        ).Value;
        await house.SignedAsync(
            injury.Id,
            Wishes.Content(new DateOnly(2026, 7, 1), (12, 0), (15, 0.5), (18, 0)) with
            {
                FixedPoints = [Origin],
            }
        );
        await house.SignedAsync(
            injury.Id,
            Wishes.Content(new DateOnly(2026, 9, 1), (5.5, 0), (8.5, 0.4), (11.5, 0)) with
            {
                Landmark = Landmark.TarsometatarsalJoint,
            }
        );
        return (await house.Get<GetCase>().ExecuteAsync(house.Vet, injury.Id)).Value;
    }

    private static CaseAnalysis Analysed(CaseView view) =>
        CaseAnalyser.Analyse(view.Course, view.Constraints, view.Practice.Settings, view.Practice.Today);

    [Fact]
    public async Task With_a_measured_distance_both_tapes_meet()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        CaseView view = await FollowedAsync(house, 6.5);

        CaseAnalysis analysis = Analysed(view);

        Assert.Equal(OtherLimb.HasLesion, view.Course.OtherLimb);
        Assert.Equal([Origin], view.Course.Examinations[0].FixedPoints);
        Assert.Empty(analysis.Links.Apart);
        Assert.Equal(3, analysis.Links.Tracks.Count);
        Assert.All(analysis.Links.Tracks, track => Assert.Equal(2, track.Steps.Count));
    }

    [Fact]
    public async Task Without_one_the_examination_stands_apart_and_says_so()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        CaseView view = await FollowedAsync(house, null);

        CaseAnalysis analysis = Analysed(view);

        Assert.Single(analysis.Links.Apart);
        Assert.Contains(analysis.Findings, finding => finding.Kind == FindingKind.LandmarkNotMeasured);
    }

    [Fact]
    public async Task A_distance_that_cannot_be_and_points_out_of_order_are_refused_by_their_field()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Saved horse = await house.HorseAsync();
        Task<Outcome<Saved>> Open(Limb limb, double distance) =>
            house
                .Get<OpenCase>()
                .ExecuteAsync(
                    house.Vet,
                    new OpenCaseInput
                    {
                        CommandId = Guid.NewGuid(),
                        HorseId = horse.Id,
                        Limb = limb,
                        Structure = Structure.SuspensoryLigament,
                        HockToJointCm = distance,
                    }
                );

        Assert.Equal("distance-out-of-range", Assert.Single((await Open(Limb.LeftHind, 0)).Problems).Code);
        Assert.Equal("distance-out-of-range", Assert.Single((await Open(Limb.LeftHind, 21)).Problems).Code);
        Assert.Equal("distance-not-of-limb", Assert.Single((await Open(Limb.LeftFore, 6.5)).Problems).Code);
        Assert.Equal(
            ["division_cm fixed-point-order", "lateral_insertion_cm level-out-of-range"],
            FixedPointRules
                .Check([
                    Origin,
                    new FixedPoint(FixedPointKind.Division, new Centimetres(8)),
                    new FixedPoint(FixedPointKind.LateralInsertion, new Centimetres(61)),
                ])
                .Select(problem => $"{problem.Field} {problem.Code}")
                .Order(StringComparer.Ordinal)
        );
    }
}
