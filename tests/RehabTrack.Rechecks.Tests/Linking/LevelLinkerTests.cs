using CsCheck;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Linking;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Simulation.Cases;

namespace RehabTrack.Rechecks.Tests.Linking;

public sealed class LevelLinkerTests
{
    private const string Seed = "0N0XIzNsQ0O2";

    /// <summary>Up to six examinations of up to three parts, levels anywhere, areas given, missing, none or diffuse.</summary>
    private static readonly Gen<Examination[]> Courses = Gen.Select(
            Gen.Int[0, 3].Select(part => (Part)part),
            Gen.Int[0, 120],
            Gen.Double[-1, 2.5].Select(area => area < 0.5 ? (double?)null : area),
            Gen.Int[0, 4]
        )
        .Array[0, 12]
        .Array[1, 6]
        .Select(all =>
            all.Select(
                    (rows, e) =>
                        Tapes.Of(
                            e,
                            [
                                .. rows.DistinctBy(row => (row.Item1, row.Item2))
                                    .Select(row =>
                                        Tapes.Row(e, row.Item1, 5 + (row.Item2 / 10.0), row.Item3) with
                                        {
                                            LesionArea = row.Item4 switch
                                            {
                                                0 => LesionArea.Unknown,
                                                1 => LesionArea.None,
                                                2 => LesionArea.Diffuse,
                                                int size => LesionArea.Measured(new SquareCentimetres(0.1 * size)),
                                            },
                                        }
                                    ),
                            ]
                        )
                )
                .ToArray()
        );

    [Fact]
    public void Any_course_gives_one_track_a_place_in_order_and_paths_apart() =>
        Courses.Sample(course => Tapes.Link(course).AssertSound(course), seed: Seed, iter: 300, threads: 1);

    [Fact]
    public void Permuting_examinations_and_readings_changes_nothing() =>
        Gen.Select(Courses, Gen.Int)
            .Sample(
                (course, seed) =>
                {
                    Random random = new(seed);
                    Examination[] permuted =
                    [
                        .. course
                            .Select(exam => exam with { Readings = [.. exam.Readings.OrderBy(_ => random.Next())] })
                            .OrderBy(_ => random.Next()),
                    ];
                    Assert.Equal(Tapes.Link(course).Written(), Tapes.Link(permuted).Written());
                },
                seed: Seed,
                iter: 100,
                threads: 1
            );

    [Fact]
    public void Scaling_all_areas_leaves_links_and_probabilities_as_they_are()
    {
        for (int seed = 0; seed < 30; seed++)
        {
            Examination[] course = [.. SimulatedLigament.Of(seed, new SimulatedRegime(2, 0.1, 0.1)).Examinations];
            foreach (double factor in (double[])[0.01, 3.7, 100])
            {
                LinkedCourse before = Tapes.Link(course);
                LinkedCourse after = Tapes.Link([.. course.Select(exam => Scaled(exam, factor))]);
                Assert.Equal(before.Company(), after.Company());
                foreach ((TrackStep step, TrackStep other) in Steps(before).Zip(Steps(after)))
                {
                    Assert.Equal(step.LinkProbability ?? 0, other.LinkProbability ?? 0, 8);
                }
            }
        }
    }

    [Fact]
    public void A_pinned_pair_always_shares_a_track_and_a_broken_pair_never_does()
    {
        Random random = new(5);
        int kept = 0;
        for (int seed = 0; seed < 200; seed++)
        {
            Examination[] course =
            [
                .. SimulatedLigament.Of(seed, new SimulatedRegime(2, 0.1, 0.15) { Areas = seed % 2 == 0 }).Examinations,
            ];
            Place[][] places = [.. course.Select(exam => Places.Of(exam).ToArray())];
            PlaceKey Any(Place[] read) => read[random.Next(read.Length)].Key;
            LinkConstraint[] words =
            [
                .. Enumerable
                    .Range(0, 6)
                    .Select(_ => new LinkConstraint(
                        random.Next(2) == 0 ? LinkConstraintKind.Pin : LinkConstraintKind.Break,
                        Any(places[random.Next(2)]),
                        Any(places[2 + random.Next(3)])
                    )),
            ];
            LinkedCourse linked = Tapes.Link(course, words);
            linked.AssertSound(course);
            foreach (LinkConstraint word in words.Except(linked.LeftOut.Select(left => left.Constraint)))
            {
                kept++;
                Assert.Equal(word.Kind == LinkConstraintKind.Pin, linked.TrackOf(word.First).Id == linked.TrackOf(word.Second).Id);
                if (word.Kind == LinkConstraintKind.Pin)
                {
                    TrackStep later = linked.StepOf(word.Second);
                    Assert.Equal(LinkBasis.Pinned, later.Basis);
                    Assert.Equal(1, later.LinkProbability);
                    Assert.False(later.Uncertain);
                }
            }
        }

        Assert.True(kept > 600, $"Only {kept} words were put to the test.");
    }

    [Fact]
    public void A_broken_pair_lets_the_rest_be_linked_anew()
    {
        Examination[] course = [Tapes.Exam(1, 10, 14, 18), Tapes.Exam(2, 10, 14, 18), Tapes.Exam(3, 10, 14, 18)];
        LinkedCourse linked = Tapes.Link(course, Tapes.Break(Tapes.Key(1, 14), Tapes.Key(2, 14)));
        linked.AssertSound(course);
        Assert.NotEqual(linked.TrackOf(Tapes.Key(1, 14)).Id, linked.TrackOf(Tapes.Key(2, 14)).Id);
        Assert.Equal(3, linked.TrackOf(Tapes.Key(1, 10)).Steps.Count);
        Assert.Equal(3, linked.TrackOf(Tapes.Key(1, 18)).Steps.Count);
    }

    [Fact]
    public void A_pin_takes_its_neighbours_along_so_that_order_is_kept()
    {
        Examination[] course = [Tapes.Exam(1, 10, 12, 14), Tapes.Exam(2, 10, 12, 14)];
        LinkedCourse linked = Tapes.Link(course, Tapes.Pin(Tapes.Key(1, 10), Tapes.Key(2, 14)));
        linked.AssertSound(course);
        Assert.Equal(linked.TrackOf(Tapes.Key(1, 10)).Id, linked.TrackOf(Tapes.Key(2, 14)).Id);
        Assert.Single(linked.TrackOf(Tapes.Key(2, 10)).Steps);
        Assert.Single(linked.TrackOf(Tapes.Key(1, 14)).Steps);
    }

    [Fact]
    public void Pins_that_meet_only_later_join_what_was_apart()
    {
        Examination[] course = [Tapes.Exam(1, 10, 20), Tapes.Exam(2, 15, 20), Tapes.Exam(3, 12, 20)];
        LinkedCourse linked = Tapes.Link(
            course,
            Tapes.Pin(Tapes.Key(1, 10), Tapes.Key(3, 12)),
            Tapes.Pin(Tapes.Key(2, 15), Tapes.Key(3, 12))
        );
        Assert.Equal(3, linked.TrackOf(Tapes.Key(1, 10)).Steps.Count);
        Assert.Equal(LinkBasis.Pinned, linked.StepOf(Tapes.Key(2, 15)).Basis);
    }

    [Fact]
    public void A_pin_between_later_examinations_makes_their_link_to_an_earlier_one_no_surer()
    {
        Examination[] course = [Tapes.Exam(1, 10, 12, 14, 16), Tapes.Exam(2, 10.9, 13.1, 16.8), Tapes.Exam(3, 10.9, 13.1, 16.8)];
        LinkedCourse free = Tapes.Link(course[..2]);
        LinkedCourse pinned = Tapes.Link(course, Tapes.Pin(Tapes.Key(2, 13.1), Tapes.Key(3, 13.1)));
        TrackStep leader = pinned.StepOf(Tapes.Key(2, 13.1));
        Assert.Equal(LinkBasis.Computed, leader.Basis);
        Assert.True(leader.Uncertain);
        Assert.InRange(leader.LinkProbability!.Value, 0.3, 0.8);
        Assert.InRange(free.StepOf(Tapes.Key(2, 13.1)).LinkProbability!.Value, 0.3, 0.8);
        Assert.Equal(LinkBasis.Pinned, pinned.StepOf(Tapes.Key(3, 13.1)).Basis);
    }

    [Theory]
    [InlineData(LeftOutReason.Crossing, 14.0, 10.0, LinkPath.Axial)]
    [InlineData(LeftOutReason.SameExamination, 14.0, 12.0, LinkPath.Axial)]
    [InlineData(LeftOutReason.DifferentPaths, 10.0, 11.0, LinkPath.MedialBranch)]
    [InlineData(LeftOutReason.PlaceNotFound, 10.0, 11.5, LinkPath.Axial)]
    public void The_later_of_two_pins_that_contradict_is_left_out_and_named(
        LeftOutReason reason,
        double first,
        double second,
        LinkPath path
    )
    {
        Examination[] course =
        [
            Tapes.Exam(1, 10, 12, 14),
            Tapes.Of(2, [.. Tapes.Exam(2, 10, 12, 14).Readings, .. Tapes.Exam(2, Part.MedialBranch, 11).Readings]),
        ];
        LinkConstraint kept = Tapes.Pin(Tapes.Key(1, 12), Tapes.Key(2, 12));
        LinkConstraint later = Tapes.Pin(Tapes.Key(1, first), Tapes.Key(2, second, path));
        LinkedCourse linked = Tapes.Link(course, kept, later);
        linked.AssertSound(course);
        Assert.Equal([new LeftOutConstraint(later, reason)], linked.LeftOut);
        Assert.Equal(linked.TrackOf(kept.First).Id, linked.TrackOf(kept.Second).Id);
    }

    [Fact]
    public void Of_a_pin_and_a_break_of_the_same_pair_the_first_word_holds()
    {
        Examination[] course = [Tapes.Exam(1, 10, 14), Tapes.Exam(2, 10, 14)];
        LinkConstraint pin = Tapes.Pin(Tapes.Key(1, 10), Tapes.Key(2, 10));
        LinkConstraint breaking = Tapes.Break(Tapes.Key(2, 10), Tapes.Key(1, 10));
        LinkedCourse pinnedFirst = Tapes.Link(course, pin, breaking);
        LinkedCourse brokenFirst = Tapes.Link(course, breaking, pin);
        Assert.Equal([new LeftOutConstraint(breaking, LeftOutReason.Contradicted)], pinnedFirst.LeftOut);
        Assert.Equal([new LeftOutConstraint(pin, LeftOutReason.Contradicted)], brokenFirst.LeftOut);
        Assert.Equal(2, pinnedFirst.TrackOf(pin.First).Steps.Count);
        Assert.Single(brokenFirst.TrackOf(pin.First).Steps);
    }

    [Fact]
    public void A_word_said_twice_says_no_more_and_contradicts_nothing()
    {
        Examination[] course = [Tapes.Exam(1, 10, 14), Tapes.Exam(2, 10, 14)];
        LinkConstraint pin = Tapes.Pin(Tapes.Key(1, 10), Tapes.Key(2, 10));
        LinkConstraint breaking = Tapes.Break(Tapes.Key(1, 14), Tapes.Key(2, 14));
        LinkedCourse twice = Tapes.Link(course, pin, breaking, pin, breaking);
        Assert.Empty(twice.LeftOut);
        Assert.Equal(Tapes.Link(course, pin, breaking).Written(), twice.Written());
    }

    [Fact]
    public void Pins_that_cross_in_a_circle_over_three_examinations_are_noticed()
    {
        Examination[] course = [Tapes.Exam(1, 10, 12), Tapes.Exam(2, 10, 12), Tapes.Exam(3, 10, 12)];
        LinkedCourse linked = Tapes.Link(
            course,
            Tapes.Pin(Tapes.Key(1, 12), Tapes.Key(2, 10)),
            Tapes.Pin(Tapes.Key(2, 12), Tapes.Key(3, 10)),
            Tapes.Pin(Tapes.Key(3, 12), Tapes.Key(1, 10))
        );
        linked.AssertSound(course);
        Assert.Equal(LeftOutReason.Crossing, Assert.Single(linked.LeftOut).Reason);
    }

    [Fact]
    public void The_worked_level_13_1_is_shown_as_uncertain_with_the_other_place_as_alternative()
    {
        // docs/methods/linking.md: 13.1 may be 12 or 14.
        LinkedCourse linked = Tapes.Link([Tapes.Exam(1, 10, 12, 14, 16), Tapes.Exam(2, 10.9, 13.1, 16.8)]);
        TrackStep step = linked.StepOf(Tapes.Key(2, 13.1));
        Assert.True(step.Uncertain);
        string other = linked.TrackOf(Tapes.Key(2, 13.1)).Steps.Any(mate => mate.Place.Level.Position.Value == 12)
            ? linked.TrackOf(Tapes.Key(1, 14)).Id
            : linked.TrackOf(Tapes.Key(1, 12)).Id;
        Assert.Contains(step.Alternatives, alternative => alternative.TrackId == other && alternative.Probability > 0.25);
    }

    [Fact]
    public void A_level_that_opens_a_track_though_it_may_belong_to_one_is_asked_about()
    {
        LinkedCourse linked = Tapes.Link([Tapes.Exam(1, 8, 14, 20), Tapes.Exam(2, 8, 14, 20), Tapes.Exam(3, 8, 12.6, 15.4, 20)]);
        TrackStep[] doubtful = [linked.StepOf(Tapes.Key(3, 12.6)), linked.StepOf(Tapes.Key(3, 15.4))];
        string middle = linked.TrackOf(Tapes.Key(1, 14)).Id;
        Assert.All(doubtful, step => Assert.True(step.Uncertain));
        Assert.Contains(
            doubtful.Where(step => step.Basis == LinkBasis.First),
            step => step.Alternatives.Any(alternative => alternative.TrackId == middle)
        );
    }

    [Fact]
    public void Alternatives_are_tracks_of_the_case_most_probable_first_and_empty_when_sure()
    {
        for (int seed = 0; seed < 20; seed++)
        {
            LinkedCourse linked = Tapes.Link(SimulatedLigament.Of(seed, new SimulatedRegime(2, 0.1, 0.1) { Areas = false }).Examinations);
            Dictionary<string, Track> tracks = linked.Tracks.ToDictionary(track => track.Id, StringComparer.Ordinal);
            foreach (Track track in linked.Tracks)
            {
                foreach (TrackStep step in track.Steps)
                {
                    Assert.Equal(step.Alternatives.OrderByDescending(alternative => alternative.Probability), step.Alternatives);
                    Assert.All(
                        step.Alternatives,
                        alternative =>
                        {
                            Assert.NotEqual(track.Id, alternative.TrackId);
                            Assert.Equal(tracks[alternative.TrackId].ConsensusLevel, alternative.ConsensusLevel);
                        }
                    );
                    Assert.True(step.Alternatives.Sum(alternative => alternative.Probability) + (step.LinkProbability ?? 0) < 1 + 1e-9);
                    Assert.Equal(
                        step.Basis == LinkBasis.Computed ? step.LinkProbability < 0.9 : step.Alternatives.Count > 0,
                        step.Uncertain
                    );
                }
            }
        }
    }

    [Theory]
    [InlineData(2)]
    [InlineData(3)]
    public void A_lesion_that_grows_keeps_its_links(double growth)
    {
        double[] levels = [10, 12, 14, 16, 18];
        double[] lesions = [0, 0.1, 0.2, 0.1, 0];
        Examination[] course =
        [
            .. Enumerable
                .Range(0, 4)
                .Select(e =>
                    Tapes.Of(
                        e,
                        [
                            .. levels.Select(
                                (level, i) => Tapes.Row(e, Part.Body, level, 1.6, Math.Min(1.5, lesions[i] * Math.Pow(growth, e)))
                            ),
                        ]
                    )
                ),
        ];
        LinkedCourse linked = Tapes.Link(course);
        Assert.Equal(5, linked.Tracks.Count);
        Assert.All(linked.Tracks, track => Assert.Equal(4, track.Steps.Count));
        Assert.All(linked.Tracks, track => Assert.DoesNotContain(track.Steps, step => step.Uncertain));
    }

    [Fact]
    public void A_shift_of_the_whole_tape_is_recovered_and_moves_no_link()
    {
        double[] levels = [10, 13, 16, 19, 22, 25, 28];
        Examination[] course =
        [
            Tapes.Exam(1, levels),
            Tapes.Exam(2, [.. levels.Select(level => level + 1)]),
            Tapes.Exam(3, [.. levels.Select(level => level - 0.8)]),
        ];
        LinkedCourse linked = Tapes.Link(course);
        Assert.Equal(7, linked.Tracks.Count);
        Assert.All(linked.Tracks, track => Assert.Equal(3, track.Steps.Count));
        Assert.Equal(["e1", "e2", "e3"], linked.Shifts.Select(shift => shift.ExaminationId));
        Assert.Equal(new ExaminationShift("e1", default, default), linked.Shifts[0]);

        // Seven readings each of SD 0.7 against a prior of SD 0.6 an examination: the posterior keeps about five sixths.
        Assert.InRange(linked.Shifts[1].Shift.Value, 0.75, 1);
        Assert.InRange(linked.Shifts[2].Shift.Value, -0.8, -0.55);
        Assert.InRange(linked.Shifts[1].StandardDeviation.Value, 0.25, 0.45);
    }

    [Fact]
    public void The_shift_is_shared_by_all_paths()
    {
        double[] levels = [10, 13, 16, 19, 22];
        Examination first = Tapes.Of(1, [.. Tapes.Exam(1, levels).Readings, .. Tapes.Exam(1, Part.MedialBranch, 24, 26).Readings]);
        Examination second = Tapes.Of(
            2,
            [.. Tapes.Exam(2, [.. levels.Select(level => level + 1.2)]).Readings, .. Tapes.Exam(2, Part.MedialBranch, 25.2, 27.2).Readings]
        );
        LinkedCourse linked = Tapes.Link([first, second]);
        TrackStep shared = linked.StepOf(Tapes.Key(2, 25.2, LinkPath.MedialBranch));
        Assert.Equal("medial-branch-1", linked.TrackOf(Tapes.Key(2, 25.2, LinkPath.MedialBranch)).Id);
        Assert.Equal(2, linked.TrackOf(Tapes.Key(2, 25.2, LinkPath.MedialBranch)).Steps.Count);

        LinkedCourse alone = Tapes.Link([Tapes.Exam(1, Part.MedialBranch, 24, 26), Tapes.Exam(2, Part.MedialBranch, 25.2, 27.2)]);
        Assert.True(
            shared.LinkProbability > alone.Tracks.SelectMany(track => track.Steps).Max(step => step.LinkProbability),
            "What the body tells of the tape must help the branch."
        );
    }

    [Fact]
    public void Origin_and_body_are_one_path_and_branches_are_their_own()
    {
        Examination first = Tapes.Of(1, Tapes.Row(1, Part.Origin, 10), Tapes.Row(1, Part.Body, 20), Tapes.Row(1, Part.MedialBranch, 20));
        Examination second = Tapes.Of(2, Tapes.Row(2, Part.Body, 10), Tapes.Row(2, Part.LateralBranch, 20));
        LinkedCourse linked = Tapes.Link([first, second]);
        Assert.Equal(["e1@10/Origin e2@10/Body", "e1@20/Body", "e1@20/MedialBranch", "e2@20/LateralBranch"], linked.Company());
        Assert.Equal(["axial-1", "axial-2", "medial-branch-1", "lateral-branch-1"], linked.Tracks.Select(track => track.Id));
        Assert.Equal(Part.Origin, linked.Tracks[0].Part);
    }

    [Fact]
    public void Readings_of_the_whole_structure_are_a_path_of_their_own()
    {
        LinkedCourse linked = Tapes.Link([Tapes.Of(1, Tapes.Row(1, Part.Body, 10), Tapes.Row(1, Part.Whole, 10))]);

        Assert.Equal([("axial-1", LinkPath.Axial), ("whole-1", LinkPath.Whole)], linked.Tracks.Select(track => (track.Id, track.Path)));
    }

    [Fact]
    public void A_track_is_of_the_part_that_most_of_its_places_were_named()
    {
        LinkedCourse linked = Tapes.Link([
            Tapes.Of(1, Tapes.Row(1, Part.Origin, 10)),
            Tapes.Of(2, Tapes.Row(2, Part.Body, 10)),
            Tapes.Of(3, Tapes.Row(3, Part.Body, 10)),
        ]);

        Assert.Equal(Part.Body, Assert.Single(linked.Tracks).Part);
    }

    [Fact]
    public void Thickness_serves_where_no_area_was_recorded()
    {
        double[] thickness = [0.8, 1.1, 0.9];
        Examination Exam(int number, double shift) =>
            Tapes.Of(
                number,
                [
                    .. thickness.Select(
                        (cm, i) => Tapes.Row(number, Part.Body, 10 + (2 * i) + shift) with { Thickness = new Centimetres(cm) }
                    ),
                ]
            );
        Examination[] with = [Exam(1, 0), Exam(2, 1)];
        Examination[] without =
        [
            .. with.Select(exam => exam with { Readings = [.. exam.Readings.Select(reading => reading with { Thickness = null })] }),
        ];
        double Least(Examination[] course) => Steps(Tapes.Link(course)).Min(step => step.LinkProbability ?? 1);
        Assert.Equal(3, Tapes.Link(with).Tracks.Count);
        Assert.True(Least(with) > 0.95);
        Assert.True(Least(without) < 0.9);
    }

    [Fact]
    public void A_share_stands_in_for_the_lesion_area_that_was_not_traced()
    {
        Examination first = Tapes.Of(1, Tapes.Row(1, Part.Body, 10, 1.2, 0.36), Tapes.Row(1, Part.Body, 12, 1.2, 0));
        Examination traced = Tapes.Of(2, Tapes.Row(2, Part.Body, 11, 1.2, 0.36));
        Examination shared = Tapes.Of(2, Tapes.Row(2, Part.Body, 11, 1.2) with { LesionPercent = new Percent(30) });
        Assert.Equal(Tapes.Link([first, traced]).Written(), Tapes.Link([first, shared]).Written());
        Assert.Equal(10, Tapes.Link([first, shared]).TrackOf(Tapes.Key(2, 11)).Steps[0].Place.Level.Position.Value);
    }

    [Fact]
    public void Nothing_to_link_gives_tracks_of_one_place()
    {
        Assert.Empty(Tapes.Link([]).Tracks);
        LinkedCourse one = Tapes.Link([Tapes.Exam(1, 10, 12)]);
        Assert.Equal(["e1@10/Body", "e1@12/Body"], one.Company());
        Assert.Equal([10.0, 12.0], one.Tracks.Select(track => track.ConsensusLevel.Position.Value));
        Assert.All(Steps(one), step => Assert.False(step.Uncertain));

        LinkedCourse far = Tapes.Link([Tapes.Exam(1, 2), Tapes.Exam(2, 55)]);
        Assert.Equal(["e1@2/Body", "e2@55/Body"], far.Company());
        Assert.All(Steps(far), step => Assert.False(step.Uncertain));
    }

    [Fact]
    public void An_examination_without_readings_has_no_shift_and_disturbs_nothing()
    {
        Examination[] course = [Tapes.Exam(1, 10, 14, 18), Tapes.Exam(3, 10.3, 14.4, 18.2)];
        LinkedCourse without = Tapes.Link(course);
        LinkedCourse with = Tapes.Link([Tapes.Exam(0), .. course, Tapes.Exam(2)]);
        Assert.Equal(without.Company(), with.Company());
        Assert.Equal(["e0", "e1", "e2", "e3"], with.Shifts.Select(shift => shift.ExaminationId));
        Assert.Equal([0.0, 0.0, 0.0], with.Shifts.Take(3).Select(shift => shift.Shift.Value));
        Assert.Equal(without.Shifts[^1].Shift.Value, with.Shifts[^1].Shift.Value, 10);
        Assert.Equal(without.Tracks.Select(track => track.ConsensusLevel), with.Tracks.Select(track => track.ConsensusLevel));
    }

    [Fact]
    public void Sixty_levels_and_thirty_examinations_are_linked_throughout()
    {
        double[] levels = [.. Enumerable.Range(0, 60).Select(i => 1 + (0.9 * i))];
        Examination[] crowded =
        [
            .. Enumerable
                .Range(0, 3)
                .Select(e => Tapes.Of(e, [.. levels.Select((level, i) => Tapes.Row(e, Part.Body, level, 1 + (0.37 * i % 1.1), 0))])),
        ];
        LinkedCourse dense = Tapes.Link(crowded);
        dense.AssertSound(crowded);
        Assert.Equal(60, dense.Tracks.Count);

        Examination[] many = [.. Enumerable.Range(0, 30).Select(e => Tapes.Exam(e, 10 + (0.1 * (e % 5)), 14, 18 - (0.1 * (e % 3))))];
        LinkedCourse longCourse = Tapes.Link(many);
        longCourse.AssertSound(many);
        Assert.Equal(3, longCourse.Tracks.Count);
        Assert.All(longCourse.Tracks, track => Assert.Equal(30, track.Steps.Count));
    }

    [Fact]
    public void Two_examinations_of_one_day_are_told_apart_by_their_id()
    {
        Examination morning = Tapes.Exam(1, 10, 14) with { Id = "a" };
        Examination evening = Tapes.Exam(1, 10, 14) with { Id = "b" };
        evening = evening with { Readings = [.. evening.Readings.Select(reading => reading with { Id = $"{reading.Id}b" })] };
        LinkedCourse linked = Tapes.Link([evening, morning]);
        Assert.Equal(2, linked.Tracks.Count);
        Assert.All(linked.Tracks, track => Assert.Equal(["a", "b"], track.Steps.Select(step => step.ExaminationId)));
    }

    private static IEnumerable<TrackStep> Steps(LinkedCourse course) => course.Tracks.SelectMany(track => track.Steps);

    private static Examination Scaled(Examination examination, double factor) =>
        examination with
        {
            Readings =
            [
                .. examination.Readings.Select(reading =>
                    reading with
                    {
                        LigamentArea = factor * reading.LigamentArea!.Value,
                        LesionArea = LesionArea.Measured(factor * reading.LesionArea.Area),
                    }
                ),
            ],
        };
}
