using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Tests.Healing;

public sealed class MeasurementErrorTests
{
    private static readonly MeasurementError Fore = new(new MeasurementErrorSettings(), Limb.LeftFore);
    private static readonly MeasurementError Hind = new(new MeasurementErrorSettings(), Limb.LeftHind);

    // Arithmetic: the log SD of a cv is √ln(1 + cv²). R 4.2.2: exp(c(-1, 1) * 1.96 * sqrt(2) * sqrt(log(1 + cv^2))); gain not included.
    [Theory]
    [InlineData(0.05, 0.8707, 1.1486)]
    [InlineData(0.07, 0.8238, 1.2138)]
    [InlineData(0.10, 0.7584, 1.3185)]
    public void A_cv_gives_the_smallest_detectable_factors(double cv, double fall, double rise)
    {
        double log = ComparisonFactors.Single * Math.Sqrt(2) * MeasurementError.LogStandardDeviation(cv);
        Assert.Equal(rise, Math.Exp(log), 0.00006);
        Assert.Equal(fall, Math.Exp(-log), 0.00006);
    }

    [Fact]
    public void The_error_of_an_area_has_a_part_that_does_not_shrink()
    {
        Assert.Equal(Math.Sqrt((0.07 * 1.5 * 0.07 * 1.5) + (0.02 * 0.02)), Fore.OfLigamentArea(new(1.5), Part.Body, false).Value, 12);
        Assert.Equal(0.02, Fore.OfLesionArea(new(0), Part.Body, false).Value, 12);
    }

    // Zauscher 2013 (EVJ 45:164): suspensory origins repeat worse behind than before; Pickersgill 2001 (EVJ): who traces matters. Both factors of
    // 1.5 are our assumption.
    [Fact]
    public void Hind_origin_areas_wobble_half_as_much_again_and_another_measurer_adds_as_much()
    {
        SquareCentimetres area = new(0.4);
        double plain = Hind.OfLesionArea(area, Part.Body, false).Value;
        Assert.Equal(1.5 * plain, Hind.OfLesionArea(area, Part.Origin, false).Value, 12);
        Assert.Equal(2.25 * plain, Hind.OfLesionArea(area, Part.Origin, true).Value, 12);
        Assert.Equal(plain, Fore.OfLesionArea(area, Part.Origin, false).Value, 12);
    }

    // Zauscher 2013 (EVJ 45:164): thickness repeats better than area.
    [Fact]
    public void Thickness_repeats_better_than_area_and_knows_no_hind_origin_factor()
    {
        Assert.Equal(Math.Sqrt((0.05 * 0.05) + (0.02 * 0.02)), Hind.OfThickness(new(1), false).Value, 12);
        Assert.Equal(Math.Sqrt((0.1 * 0.1) + (0.02 * 0.02)), Hind.OfWidth(new(1), false).Value, 12);
        Assert.Equal(1.5 * Hind.OfThickness(new(1), false).Value, Hind.OfThickness(new(1), true).Value, 12);
    }

    [Fact]
    public void Repeated_tracings_halve_the_error_at_four() =>
        Assert.Equal(
            Fore.OfLesionArea(new(0.4), Part.Body, false).Value / 2,
            Fore.OfLesionArea(new(0.4), Part.Body, false, tracings: 4).Value,
            12
        );

    // R 4.2.2: asinh(.10 * c(.05, .2, .6)/.03)/.10.
    [Theory]
    [InlineData(0.05, 1.659045502693012)]
    [InlineData(0.2, 6.251451172504169)]
    [InlineData(0.6, 14.436354751788102)]
    public void The_working_scale_is_an_inverse_hyperbolic_sine(double area, double dividedByCv)
    {
        WorkingScale scale = new(0.10, 0.03);
        Assert.Equal(dividedByCv, scale.ToScale(area) / 0.10, 12);
        Assert.Equal(area, scale.FromScale(scale.ToScale(area)), 12);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(0.05)]
    [InlineData(0.6)]
    [InlineData(3)]
    public void On_the_working_scale_the_error_is_the_cv_at_every_size(double area)
    {
        double sd = Fore.OfLesionArea(new(area), Part.Body, false).Value;
        Assert.Equal(0.12, Fore.LesionAreaScale.StandardDeviation(area, sd), 12);
    }
}
