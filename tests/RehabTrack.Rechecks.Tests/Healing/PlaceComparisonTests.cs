using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Tests.Healing;

public sealed class PlaceComparisonTests
{
    private static readonly MeasurementErrorSettings OnlyCv = new()
    {
        LigamentAreaCv = 0.07,
        LesionAreaCv = 0.12,
        AreaFloorCm2 = 1e-6,
        SharedGainLog = 0,
    };

    private static Place At(
        double? ligament = null,
        double? lesion = null,
        double? thickness = null,
        string? measurer = null,
        Part part = Part.Body
    ) =>
        Assert.Single(
            Places.Of(
                new Examination
                {
                    Id = "e",
                    Date = new DateOnly(2026, 1, 1),
                    Readings =
                    [
                        new Reading
                        {
                            Id = "r",
                            Part = part,
                            Level = new Centimetres(20),
                            LigamentArea = ligament is { } area ? new SquareCentimetres(area) : null,
                            LesionArea = lesion is { } hole ? LesionArea.Measured(new SquareCentimetres(hole)) : LesionArea.Unknown,
                            Thickness = thickness is { } length ? new Centimetres(length) : null,
                            Measurer = measurer,
                        },
                    ],
                }
            )
        );

    private static SizeChange Ligament(Place before, Place now, MeasurementErrorSettings? settings = null, Limb limb = Limb.LeftFore) =>
        PlaceComparison
            .Between(before, now, settings ?? OnlyCv, limb, ComparisonFactors.Single)
            .Single(change => change.Size == MeasuredSize.LigamentArea);

    // docs/methods.md: at cv 7 % one comparison needs × 1.2138 for a rise and × 0.8238 for a fall (log SD of a cv; the working scale
    // takes the cv itself, which differs in the third digit).
    [Theory]
    [InlineData(1.50, 1.81, false)]
    [InlineData(1.50, 1.83, true)]
    [InlineData(1.50, 1.25, false)]
    [InlineData(1.50, 1.22, true)]
    public void A_ligament_area_must_change_by_a_fifth_to_be_sure(double before, double now, bool detectable) =>
        Assert.Equal(detectable, Ligament(At(before), At(now)).IsDetectable);

    [Fact]
    public void The_smallest_detectable_change_is_the_published_one()
    {
        SizeChange change = Ligament(At(1.5), At(1.5));

        Assert.Equal(1.2138, change.DetectableAbove / 1.5, 0.003);
        Assert.Equal(0.8238, change.DetectableBelow / 1.5, 0.003);
        Assert.Equal(100 * ((change.DetectableAbove / 1.5) - 1), change.DetectablePercent!.Value, 1e-9);
    }

    [Fact]
    public void The_gain_of_both_examinations_widens_an_area_and_cancels_in_a_share()
    {
        MeasurementErrorSettings gain = OnlyCv with { SharedGainLog = 0.03 };
        Place before = At(1.5, 0.5);

        Assert.True(Ligament(before, before, gain).DetectableAbove > Ligament(before, before).DetectableAbove);
        Assert.Equal(Share(OnlyCv), Share(gain));

        SizeChange Share(MeasurementErrorSettings settings) =>
            PlaceComparison.Between(before, before, settings, Limb.LeftFore, 2).Single(change => change.Size == MeasuredSize.LesionPercent);
    }

    [Fact]
    public void Another_measurer_and_the_origin_of_a_hind_limb_widen_it()
    {
        double same = Ligament(At(1.5, measurer: "A"), At(1.5, measurer: "A")).DetectableAbove;

        Assert.True(Ligament(At(1.5, measurer: "A"), At(1.5, measurer: "B")).DetectableAbove > same);
        Assert.Equal(same, Ligament(At(1.5, measurer: "A"), At(1.5)).DetectableAbove);
        Assert.True(Ligament(At(1.5, part: Part.Origin), At(1.5, part: Part.Origin), limb: Limb.LeftHind).DetectableAbove > same);
    }

    [Fact]
    public void A_lesion_that_was_not_there_has_no_percent_and_can_still_be_told()
    {
        SizeChange change = PlaceComparison
            .Between(At(1.5, 0), At(1.5, 0.4), new MeasurementErrorSettings(), Limb.LeftFore, 1.96)
            .Single(change => change.Size == MeasuredSize.LesionArea);

        Assert.Null(change.ChangePercent);
        Assert.Null(change.DetectablePercent);
        Assert.Equal(0, change.DetectableBelow);
        Assert.True(change.IsDetectable);
    }

    [Theory]
    [InlineData(0.0)]
    [InlineData(-1.0)]
    public void A_factor_that_is_none_is_refused(double factor) =>
        Assert.Throws<ArgumentOutOfRangeException>(
            "factor",
            () => PlaceComparison.Between(At(1.5), At(1.4), new MeasurementErrorSettings(), Limb.LeftFore, factor)
        );

    // From 2: a fall counts below 1.6, a rise above 2.5.
    [Theory]
    [InlineData(1.5, ChangeClaim.RealFall, -20)]
    [InlineData(1.6, ChangeClaim.CannotTell, -20)]
    [InlineData(2.0, ChangeClaim.CannotTell, 25)]
    [InlineData(2.5, ChangeClaim.CannotTell, 25)]
    [InlineData(2.6, ChangeClaim.RealRise, 25)]
    public void What_could_be_told_is_said_in_the_direction_of_the_change(double now, ChangeClaim claim, double percent)
    {
        SizeChange change = new()
        {
            Size = MeasuredSize.LesionArea,
            Before = 2,
            Now = now,
            DetectableBelow = 1.6,
            DetectableAbove = 2.5,
        };

        Assert.Equal(claim, change.Claim);
        Assert.Equal(percent, change.DetectablePercent!.Value, 10);
    }

    [Fact]
    public void Only_what_both_dates_have_is_compared() =>
        Assert.Equal(
            [MeasuredSize.Thickness],
            PlaceComparison
                .Between(At(1.5, thickness: 0.8), At(thickness: 0.7), new MeasurementErrorSettings(), Limb.LeftFore, 1.96)
                .Select(change => change.Size)
        );
}
