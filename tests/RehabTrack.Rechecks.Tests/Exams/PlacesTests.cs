using CsCheck;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Tests.Exams;

public sealed class PlacesTests
{
    private static Reading At(double level, string id = "1") =>
        new()
        {
            Id = id,
            Part = Part.Body,
            Level = new Centimetres(level),
        };

    private static Examination Of(params Reading[] readings) =>
        new()
        {
            Id = "e",
            Date = new DateOnly(2026, 3, 1),
            Readings = readings,
        };

    private static LesionArea Area(double cm2) => LesionArea.Measured(new SquareCentimetres(cm2));

    [Fact]
    public void Two_lesions_at_one_level_share_one_ligament_area_and_add_up()
    {
        Place place = Assert.Single(
            Places.Of(
                Of(
                    At(20, "1") with
                    {
                        Lesion = "A",
                        LigamentArea = new SquareCentimetres(1.5),
                        LesionArea = Area(0.3),
                    },
                    At(20, "2") with
                    {
                        Lesion = "B",
                        LigamentArea = new SquareCentimetres(1.5),
                        LesionArea = Area(0.15),
                    }
                )
            )
        );

        Assert.Equal(1.5, place.LigamentArea!.Value.Value, 12);
        Assert.Equal(0.45, place.LesionArea.Area.Value, 12);
        Assert.Equal(30.0, place.LesionPercent!.Value.Value, 9);
    }

    [Fact]
    public void A_row_that_only_carries_the_ligament_hides_no_lesion()
    {
        Place place = Assert.Single(
            Places.Of(
                Of(
                    At(20, "1") with
                    {
                        LigamentArea = new SquareCentimetres(1.5),
                    },
                    At(20, "2") with
                    {
                        Lesion = "A",
                        LesionArea = Area(0.3),
                    }
                )
            )
        );

        Assert.Equal(20.0, place.LesionPercent!.Value.Value, 9);
    }

    [Fact]
    public void Repeats_of_one_lesion_are_averaged_and_counted()
    {
        Place place = Assert.Single(
            Places.Of(
                Of(
                    At(20, "1") with
                    {
                        Repeat = "1",
                        LigamentArea = new SquareCentimetres(1.4),
                        LesionArea = Area(0.2),
                    },
                    At(20, "2") with
                    {
                        Repeat = "2",
                        LigamentArea = new SquareCentimetres(1.6),
                        LesionArea = Area(0.4),
                    }
                )
            )
        );

        Assert.Equal(1.5, place.LigamentArea!.Value.Value, 12);
        Assert.Equal(0.3, place.LesionArea.Area.Value, 12);
        Assert.Equal(2, place.Tracings);
    }

    /// <summary>ECM 330: "diffuse, cannot be outlined" is an answer and is not 0.</summary>
    [Fact]
    public void A_diffuse_lesion_makes_the_whole_place_diffuse_and_never_zero()
    {
        Place place = Assert.Single(
            Places.Of(
                Of(
                    At(20, "1") with
                    {
                        Lesion = "A",
                        LesionArea = Area(0.3),
                    },
                    At(20, "2") with
                    {
                        Lesion = "B",
                        LesionArea = LesionArea.Diffuse,
                    }
                )
            )
        );

        Assert.Equal(LesionAreaKind.Diffuse, place.LesionArea.Kind);
        Assert.Null(place.LesionArea.MeasuredArea);
        Assert.True(place.IsAbnormal);
    }

    [Theory]
    [InlineData(ReadingRole.NormalAbove, LesionAreaKind.Measured, false)]
    [InlineData(ReadingRole.NormalBelow, LesionAreaKind.Measured, false)]
    [InlineData(ReadingRole.Worst, LesionAreaKind.Unknown, true)]
    [InlineData(ReadingRole.None, LesionAreaKind.Unknown, false)]
    public void An_empty_lesion_area_is_zero_at_a_normal_level_of_a_triplet_only(ReadingRole role, LesionAreaKind expected, bool abnormal)
    {
        Place place = Assert.Single(Places.Of(Of(At(20) with { Role = role, LigamentArea = new SquareCentimetres(1.2) })));

        Assert.Equal(expected, place.LesionArea.Kind);
        Assert.Equal(abnormal, place.IsAbnormal);
        Assert.Equal(expected == LesionAreaKind.Measured ? 0.0 : null, place.LesionArea.MeasuredArea?.Value);
    }

    [Fact]
    public void Origin_and_body_at_one_level_are_one_place_and_a_branch_at_that_level_is_another()
    {
        IReadOnlyList<Place> places = Places.Of(
            Of(At(20, "1"), At(20, "2") with { Part = Part.Origin }, At(20, "3") with { Part = Part.MedialBranch })
        );

        Assert.Equal([LinkPath.Axial, LinkPath.MedialBranch], places.Select(place => place.Key.Path));
        Assert.Equal(Part.Origin, places[0].Part);
        Assert.Equal(2, places[0].Readings.Count);
    }

    [Fact]
    public void Areas_come_from_the_short_axis_and_fibre_alignment_from_either_plane()
    {
        Place place = Assert.Single(
            Places.Of(
                Of(
                    At(20, "1") with
                    {
                        LigamentArea = new SquareCentimetres(1.2),
                        LesionArea = Area(0.12),
                    },
                    At(20, "2") with
                    {
                        Plane = ImagePlane.LongAxis,
                        Thickness = new Centimetres(0.9),
                        FibreAlignment = new Grade(GradeScales.FibreAlignment0To3, 2),
                    }
                )
            )
        );

        Assert.Equal(10.0, place.LesionPercent!.Value.Value, 9);
        Assert.Equal(0.9, place.Thickness!.Value.Value, 12);
        Assert.Equal(2, place.FibreAlignment!.Value);
        Assert.Equal(1, place.Tracings);
    }

    [Fact]
    public void A_recorded_share_stands_where_the_areas_are_not_known()
    {
        Place place = Assert.Single(Places.Of(Of(At(20) with { LesionPercent = new Percent(22) })));

        Assert.Equal(22.0, place.LesionPercent!.Value.Value, 12);
        Assert.Equal(LesionAreaKind.Unknown, place.LesionArea.Kind);
        Assert.True(place.IsAbnormal);
    }

    [Fact]
    public void Every_reading_is_in_exactly_one_place_and_their_order_does_not_matter()
    {
        Gen<Reading> reading =
            from level in Gen.Int[0, 6]
            from part in Gen.Enum<Part>()
            from plane in Gen.Enum<ImagePlane>()
            from ligament in Gen.Double[0.5, 2]
            select new Reading
            {
                Id = string.Empty,
                Part = part,
                Plane = plane,
                Level = new Centimetres(level),
                LigamentArea = new SquareCentimetres(ligament),
            };
        Gen.Select(reading.Array[0, 12], Gen.Int)
            .Sample(
                (readings, seed) =>
                {
                    Reading[] named =
                    [
                        .. readings.Select(
                            (item, index) => item with { Id = index.ToString("D3", System.Globalization.CultureInfo.InvariantCulture) }
                        ),
                    ];
                    Reading[] shuffled = [.. named.OrderBy(item => HashCode.Combine(item.Id, seed))];
                    IReadOnlyList<Place> places = Places.Of(Of(named));
                    IReadOnlyList<Place> again = Places.Of(Of(shuffled));

                    Assert.Equal(named.Length, places.Sum(place => place.Readings.Count));
                    Assert.Equal(
                        named.Length,
                        places.SelectMany(place => place.Readings).Select(item => item.Id).Distinct(StringComparer.Ordinal).Count()
                    );
                    Assert.Equal(
                        places.Select(place => (place.Key, string.Join(',', place.Readings.Select(item => item.Id)))),
                        again.Select(place => (place.Key, string.Join(',', place.Readings.Select(item => item.Id))))
                    );
                },
                seed: "0N0XIzNsQ0O2",
                iter: 200
            );
    }
}
