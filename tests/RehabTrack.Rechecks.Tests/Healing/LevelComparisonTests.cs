using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Simulation.Studies;

namespace RehabTrack.Rechecks.Tests.Healing;

public sealed class LevelComparisonTests
{
    // No gain and hardly a floor: on the working scale a ligament area has an SD of its cv, to first order.
    private static readonly MeasurementErrorSettings OnlyCv = new()
    {
        LigamentAreaCv = 0.07,
        AreaFloorCm2 = 1e-6,
        SharedGainLog = 0,
    };

    private static Place At(double level, double ligament, double? thickness = null) =>
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
                            Part = Part.Body,
                            Level = new Centimetres(level),
                            LigamentArea = new SquareCentimetres(ligament),
                            Thickness = thickness is { } length ? new Centimetres(length) : null,
                        },
                    ],
                }
            )
        );

    private static SizeChange[] Ligaments(Looks looks, params double[] factors) =>
        [
            .. LevelComparison
                .Between(
                    [.. factors.Select((factor, index) => (At(10 + (2 * index), 1.5), At(10 + (2 * index), 1.5 * factor)))],
                    OnlyCv,
                    Limb.LeftFore,
                    looks
                )
                .Select(changes => changes.Single(change => change.Size == MeasuredSize.LigamentArea)),
        ];

    [Fact]
    public void A_worked_examination_of_four_levels()
    {
        // By hand: the SD of a difference is √2·.07·√(1 + 2.5·.07²) = .0996; z = 3.03, −2.58, 2.10, .70 have the two-sided p .002446
        // .009880 .035729 .483927. Holm: 4·.002446, 3·.009880, 2·.035729, 1·.483927. The third fails at .05/2, and the fourth is held to it.
        const double Sd = 0.0996;
        double[] factors = [Math.Exp(3.03 * Sd), Math.Exp(-2.58 * Sd), Math.Exp(2.10 * Sd), Math.Exp(0.70 * Sd)];

        SizeChange[] judged = Ligaments(Looks.Once, factors);

        Assert.Equal(
            [ChangeClaim.RealRise, ChangeClaim.RealFall, ChangeClaim.CannotTell, ChangeClaim.CannotTell],
            judged.Select(one => one.Claim)
        );
        Assert.Equal([0.00978, 0.02964, 0.07146, 0.48393], judged.Select(one => one.AdjustedProbability!.Value), new Within(0.0001));
        // Normal quantiles of .0125/2, .05/3/2 and .025/2: 2.4977, 2.3940, 2.2414.
        Assert.Equal(
            [2.4977, 2.3940, 2.2414, 2.2414],
            judged.Select(one => Math.Log(one.DetectableAbove / one.Before) / Sd),
            new Within(0.001)
        );
        // Alone, the third would be called a rise: 2.10 lies beyond 1.96.
        Assert.Equal(ChangeClaim.RealRise, Ligaments(Looks.Once, factors[2])[0].Claim);
    }

    [Fact]
    public void One_level_alone_is_judged_as_a_place_alone()
    {
        SizeChange judged = Ligaments(Looks.Neighbouring(3), 1.3)[0];
        SizeChange alone = PlaceComparison
            .Between(At(10, 1.5), At(10, 1.5 * 1.3), OnlyCv, Limb.LeftFore, ComparisonFactors.Neighbouring(3))
            .Single(change => change.Size == MeasuredSize.LigamentArea);

        Assert.Equal(alone.DetectableAbove, judged.DetectableAbove, 9);
        Assert.Equal(alone.DetectableBelow, judged.DetectableBelow, 9);
        Assert.Null(alone.AdjustedProbability);
    }

    [Fact]
    public void A_claim_is_exactly_an_adjusted_probability_of_at_most_five_percent()
    {
        Random random = new(20261125);
        for (int examination = 0; examination < 200; examination++)
        {
            double[] factors = [.. Enumerable.Range(0, 1 + random.Next(8)).Select(_ => Math.Exp((random.NextDouble() - 0.5) * 0.9))];

            foreach (SizeChange judged in Ligaments(Looks.AnyTwo(3), factors))
            {
                Assert.Equal(judged.AdjustedProbability <= LevelComparison.ErrorRate, judged.IsDetectable);
            }
        }
    }

    [Fact]
    public void More_levels_and_more_looks_ask_for_a_larger_change()
    {
        double one = Ligaments(Looks.Once, 1.1)[0].DetectableAbove;
        double six = Ligaments(Looks.Once, 1.1, 1, 1, 1, 1, 1)[0].DetectableAbove;
        double later = Ligaments(Looks.Neighbouring(4), 1.1, 1, 1, 1, 1, 1)[0].DetectableAbove;

        Assert.True(one < six && six < later);
    }

    [Fact]
    public void A_level_that_certainly_changed_makes_room_for_the_next()
    {
        // z = 2.5: not enough for the first of six (2.638), enough for the second (2.576 needs .05/5: 2.576), so a sixth sure change is not.
        double second = Math.Exp(2.6 * 0.07 * Math.Sqrt(2));

        Assert.Equal(ChangeClaim.CannotTell, Ligaments(Looks.Once, second, 1, 1, 1, 1, 1)[0].Claim);
        Assert.Equal(ChangeClaim.RealRise, Ligaments(Looks.Once, second, 3, 1, 1, 1, 1)[0].Claim);
    }

    [Fact]
    public void Each_size_is_judged_over_the_levels_that_have_it()
    {
        IReadOnlyList<IReadOnlyList<SizeChange>> judged = LevelComparison.Between(
            [(At(10, 1.5, 0.8), At(10, 1.5, 1.0)), (At(12, 1.5), At(12, 1.5)), (At(14, 1.5, 0.8), At(14, 1.5))],
            OnlyCv,
            Limb.LeftFore,
            Looks.Once
        );

        Assert.Equal([MeasuredSize.LigamentArea, MeasuredSize.Thickness], judged[0].Select(change => change.Size));
        Assert.Equal([MeasuredSize.LigamentArea], judged[1].Select(change => change.Size));
        Assert.Equal([MeasuredSize.LigamentArea], judged[2].Select(change => change.Size));
        // Thickness stands at one level only, and is judged alone.
        Assert.Equal(
            PlaceComparison.Between(At(10, 1.5, 0.8), At(10, 1.5, 1.0), OnlyCv, Limb.LeftFore, 1.959963984540054)[1].DetectableAbove,
            judged[0][1].DetectableAbove,
            9
        );
    }

    [Fact]
    public void Nothing_read_twice_is_nothing_to_compare() => Assert.Empty(LevelComparison.Between([], OnlyCv, Limb.LeftFore, Looks.Once));

    [Fact]
    public void Without_any_error_every_change_is_real_and_none_is_not_a_number()
    {
        MeasurementErrorSettings exact = new()
        {
            LigamentAreaCv = 0,
            AreaFloorCm2 = 0,
            SharedGainLog = 0,
        };

        IReadOnlyList<SizeChange>[] judged =
        [
            .. LevelComparison.Between(
                [(At(10, 1.5), At(10, 1.6)), (At(12, 1.5), At(12, 1.5))],
                exact,
                Limb.LeftFore,
                Looks.Neighbouring(2)
            ),
        ];

        Assert.Equal([ChangeClaim.RealRise, ChangeClaim.CannotTell], judged.Select(changes => changes[0].Claim));
        Assert.Equal([0, 1], judged.Select(changes => changes[0].AdjustedProbability!.Value));
    }

    [Fact]
    public void Where_no_level_changed_any_of_six_is_called_changed_in_at_most_one_examination_of_twenty() =>
        Assert.All(LevelClaimStudy.Run(600), row => Assert.True(row.KeepsWithinChance, row.ToString()));

    [Fact]
    public void Without_the_rule_six_levels_find_a_change_far_more_often()
    {
        StudyRow[] rows = [.. LevelClaimStudy.Run(600)];

        Assert.True(rows.Single(row => row.Bar is null).Reached > 0.15);
        Assert.Contains(rows, row => row.Bar is not null);
    }

    private sealed class Within(double tolerance) : IEqualityComparer<double>
    {
        public bool Equals(double x, double y) => Math.Abs(x - y) <= tolerance;

        public int GetHashCode(double value) => 0;
    }
}
