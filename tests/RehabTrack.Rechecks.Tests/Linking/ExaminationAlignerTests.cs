using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Linking;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Tests.Linking;

/// <summary>
/// The whole model against every alignment at every shift and every common change, written out: one examination against tracks of one or
/// two readings, up to 7 × 7 levels, one path or two that share the shift.
/// </summary>
public sealed class ExaminationAlignerTests
{
    private static readonly LinkingSettings Settings = new();

    /// <summary>How a trial is made.</summary>
    /// <param name="Seed">Of the random levels and sizes.</param>
    /// <param name="Others">The number of examinations behind the tracks, 1 or 2.</param>
    /// <param name="Most">The largest number of levels of an examination on the first path.</param>
    /// <param name="Branch">Whether a branch is read too.</param>
    /// <param name="Pin">Whether a pair is pinned.</param>
    /// <param name="Break">Whether a pair is broken.</param>
    /// <param name="Points">Whether fixed points were seen.</param>
    /// <param name="Again">Whether the examination was aligned before, so that something is held of it.</param>
    public sealed record Trial(
        int Seed,
        int Others,
        int Most,
        bool Branch = false,
        bool Pin = false,
        bool Break = false,
        bool Points = false,
        bool Again = false
    );

    public static TheoryData<Trial> Trials =>
        [
            // 7 × 7, the largest: 3432 alignments at 21 shifts and 13 changes.
            new Trial(77, 1, -7),
            new Trial(78, 2, -7),
            .. Enumerable.Range(0, 6).Select(seed => new Trial(seed, 1, 7)),
            .. Enumerable.Range(10, 6).Select(seed => new Trial(seed, 2, 7)),
            .. Enumerable.Range(20, 4).Select(seed => new Trial(seed, 1 + (seed % 2), 6, Pin: true)),
            .. Enumerable.Range(30, 4).Select(seed => new Trial(seed, 1 + (seed % 2), 6, Break: true)),
            .. Enumerable.Range(40, 4).Select(seed => new Trial(seed, 1 + (seed % 2), 5, Branch: true)),
            .. Enumerable.Range(50, 3).Select(seed => new Trial(seed, 2, 5, Branch: true, Pin: true, Break: true)),
            .. Enumerable.Range(60, 6).Select(seed => new Trial(seed, 1 + (seed % 3), 4, Points: true)),
            .. Enumerable.Range(70, 6).Select(seed => new Trial(seed, 1 + (seed % 4), 4, Points: seed % 2 == 0, Again: true)),
            // Nothing to be linked with: what is held beforehand stays.
            new Trial(80, 0, 3),
            new Trial(81, 0, 3, Points: true),
            // Two tracks of one level each leave one alignment more than none.
            .. Enumerable.Range(82, 4).Select(seed => new Trial(seed, 1, -1)),
        ];

    [Theory]
    [MemberData(nameof(Trials))]
    public void Probabilities_and_reported_links_are_those_of_all_alignments_written_out(Trial trial)
    {
        Random random = new(trial.Seed);
        int count = trial.Others + 1;
        int aligned = random.Next(count);
        Examination[] examinations = [.. Enumerable.Range(0, count).Select(e => Read(random, e, trial))];
        if (trial.Points)
        {
            examinations = [.. examinations.Select(examination => examination with { FixedPoints = PointsOf(random) })];
        }

        LinkConstraint[] words =
        [
            .. trial.Pin ? [Word(LinkConstraintKind.Pin, examinations, aligned, random)] : Array.Empty<LinkConstraint>(),
            .. trial.Break ? [Word(LinkConstraintKind.Break, examinations, aligned, random)] : Array.Empty<LinkConstraint>(),
        ];
        CourseState state = CourseReader.Read(examinations, CommonTape.None, words, Settings);
        PlaceTracks(state, aligned, random);
        if (trial.Again)
        {
            state.Placed[aligned] = true;
            state.Shift[aligned] = random.NextDouble() - 0.5;
            state.LigamentSize[aligned] = 0.2 * (random.NextDouble() - 0.5);
        }

        using ExaminationAligner aligner = new(Settings, state.PathCount);

        aligner.Align(state, aligned);

        (WrittenOutModel.Posterior whole, double size) = new WrittenOutModel(state, aligned, Settings).Read();
        double[][] expected = whole.Probabilities;
        Assert.Equal(size, aligner.LigamentSize, 8);
        Assert.Equal(whole.Shift, aligner.Shift, 8);
        Assert.Equal(whole.ShiftVariance, aligner.ShiftVariance, 8);
        for (int path = 0; path < state.PathCount; path++)
        {
            int places = state.Places[aligned][path].Length;
            int rows = state.Columns[path].Count;
            Assert.Equal(whole.LesionSize[path], aligner.LesionSize[path], 8);
            for (int cell = 0; cell < expected[path].Length; cell++)
            {
                Assert.Equal(expected[path][cell], aligner.Probabilities[path][cell], 8);
            }

            double Gain(int i, int j) => expected[path][(i * places) + j] is var p && p > 1 - 1e-12 ? 1e6 : p - Settings.LinkFrom;
            double Score(int[] partners) => partners.Select((j, i) => j < 0 ? 0 : Gain(i, j)).Sum();
            int[] reported = [.. Enumerable.Range(0, rows).Select(i => Array.IndexOf(aligner.Links[path], i, 0, places))];
            Assert.Equal(Alignments.All(rows, places).Max(Score), Score(reported), 6);
        }
    }

    /// <summary>Grids that end before their limits would leave out shifts and changes that the table names.</summary>
    [Fact]
    public void The_grids_reach_the_limits_of_the_table_and_no_further()
    {
        ShiftGrid grid = new(Settings);
        Assert.Equal(Settings.LargestShiftCm, grid.Shifts[^1], 12);
        Assert.Equal(-Settings.LargestShiftCm, grid.Shifts[0], 12);
        Assert.Equal(Settings.CommonLesionChangeLimit, grid.Changes[^1], 12);
        Assert.Equal(-Settings.CommonLesionChangeLimit, grid.Changes[0], 12);
    }

    /// <summary>The measure is asked first whether it sees what a fresh aligner takes.</summary>
    [Fact]
    public void Aligning_again_takes_no_memory()
    {
        Random random = new(92);
        Examination[] examinations = [.. "abcde".Select(name => Read(random, name.ToString(), 6))];
        LinkConstraint[] words = [Word(LinkConstraintKind.Pin, examinations[..2], 1, random)];
        CourseState state = CourseReader.Read(examinations, CommonTape.None, words, Settings);
        using CourseLinker linker = new(state, Settings);
        linker.Run();
        long before = GC.GetAllocatedBytesForCurrentThread();
        using ExaminationAligner aligner = new(Settings, state.PathCount);
        AlignAll();
        Assert.NotEqual(before, GC.GetAllocatedBytesForCurrentThread());

        before = GC.GetAllocatedBytesForCurrentThread();
        AlignAll();
        Assert.Equal(before, GC.GetAllocatedBytesForCurrentThread());

        void AlignAll()
        {
            for (int e = 0; e < examinations.Length; e++)
            {
                aligner.Align(state, e);
            }
        }
    }

    /// <summary>Puts every place but those of the aligned examination on a track; of two examinations the n-th levels share one.</summary>
    private static void PlaceTracks(CourseState state, int aligned, Random random)
    {
        for (int e = 0; e < state.Examinations.Count; e++)
        {
            if (e == aligned)
            {
                continue;
            }

            state.Placed[e] = true;
            state.Shift[e] = random.NextDouble() - 0.5;
            state.LigamentSize[e] = 0.1 * (random.NextDouble() - 0.5);
            for (int path = 0; path < state.PathCount; path++)
            {
                state.LesionSize[path][e] = random.NextDouble() - 0.5;
                PlaceNode[] places = state.Places[e][path];
                for (int i = 0; i < places.Length; i++)
                {
                    if (i == state.Columns[path].Count)
                    {
                        state.Columns[path].Add(new TrackColumn(path, state.Examinations.Count));
                    }

                    state.Columns[path][i].Add(places[i]);
                }
            }
        }

        foreach (PlaceNode place in state.Places[aligned].SelectMany(places => places).Where(place => place.Group >= 0))
        {
            TrackColumn pinned = state.Columns[place.Path].Find(column => AnyOf(column, place.Group))!;
            pinned.Add(place);
        }
    }

    /// <summary>Points that every tape, most tapes or none of them saw.</summary>
    private static FixedPoint[] PointsOf(Random random) =>
        [
            .. Enum.GetValues<FixedPointKind>()
                .Where(_ => random.Next(4) > 0)
                .Select(kind => new FixedPoint(kind, new Centimetres(8 + (8 * (int)kind) + random.NextDouble()))),
        ];

    private static bool AnyOf(TrackColumn column, int group)
    {
        foreach (PlaceNode? member in column.Members)
        {
            if (member?.Group == group)
            {
                return true;
            }
        }

        return false;
    }

    private static Examination Read(Random random, int index, Trial trial)
    {
        int levels = trial.Most < 0 ? -trial.Most : random.Next(1, trial.Most + 1);
        Examination whole = Read(random, $"e{index}", levels, Part.Body) with { Date = new DateOnly(2024, 1, 1 + index) };
        return trial.Branch
            ? whole with
            {
                Readings = [.. whole.Readings, .. Read(random, $"b{index}", random.Next(1, 5), Part.MedialBranch).Readings],
            }
            : whole;
    }

    private static Examination Read(Random random, string id, int count, Part part = Part.Body) =>
        new()
        {
            Id = id,
            Date = new DateOnly(2024, 1, id == "a" ? 1 : 2),
            Readings =
            [
                .. Enumerable
                    .Range(0, count)
                    .Select(i => new Reading
                    {
                        Id = $"{id}{i}",
                        Part = part,
                        Level = new Centimetres(10 + (1.7 * i) + random.NextDouble()),
                        // Some differ by so much that their penalty is capped.
                        LigamentArea = random.Next(4) switch
                        {
                            0 => null,
                            1 => new SquareCentimetres(0.8 + random.NextDouble()),
                            _ => new SquareCentimetres(1.15 + (0.2 * random.NextDouble())),
                        },
                        LesionArea = random.Next(4) switch
                        {
                            0 => LesionArea.None,
                            1 => LesionArea.Unknown,
                            _ => LesionArea.Measured(new SquareCentimetres(0.05 + (0.4 * random.NextDouble()))),
                        },
                        Thickness = random.Next(3) == 0 ? null : new Centimetres(0.8 + (0.4 * random.NextDouble())),
                    }),
            ],
        };

    private static LinkConstraint Word(LinkConstraintKind kind, Examination[] examinations, int aligned, Random random)
    {
        Examination other = examinations[aligned == 0 ? 1 : 0];
        Examination own = examinations[aligned];
        return new LinkConstraint(kind, KeyOf(other), KeyOf(own));

        PlaceKey KeyOf(Examination examination)
        {
            Reading[] body = [.. examination.Readings.Where(reading => reading.Part == Part.Body)];
            return new PlaceKey(examination.Id, LinkPath.Axial, body[random.Next(body.Length)].Level);
        }
    }
}
