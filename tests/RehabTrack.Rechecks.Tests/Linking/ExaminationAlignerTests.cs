using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Linking;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Tests.Linking;

/// <summary>The whole model, between two examinations, against every alignment at every shift and every common change, written out.</summary>
public sealed class ExaminationAlignerTests
{
    private static readonly LinkingSettings Settings = new();

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Probabilities_and_reported_links_are_those_of_all_alignments_written_out(bool pinned)
    {
        Random random = new(pinned ? 91 : 90);
        for (int trial = 0; trial < 8; trial++)
        {
            Examination first = Read(random, "a", random.Next(1, 7));
            Examination second = Read(random, "b", random.Next(1, 7));
            LinkConstraint[] words = pinned ? [Pin(first, second, random)] : [];
            CourseState state = CourseReader.Read([first, second], CommonTape.None, words, Settings);
            PlaceNode[] a = state.Places[0][0];
            PlaceNode[] b = state.Places[1][0];
            foreach (PlaceNode place in a)
            {
                TrackColumn column = new(0, 2);
                column.Add(place);
                state.Columns[0].Add(column);
            }

            PlaceNode? pinnedA = Array.Find(a, place => place.Group >= 0);
            PlaceNode? pinnedB = Array.Find(b, place => place.Group >= 0);
            pinnedA?.Column!.Add(pinnedB!);
            state.Placed[0] = true;
            ExaminationAligner aligner = new(Settings, 1);
            aligner.Align(state, 1);

            int[][] alignments =
            [
                .. Alignments
                    .All(a.Length, b.Length)
                    .Where(partners => pinnedA is null || partners[Array.IndexOf(a, pinnedA)] == Array.IndexOf(b, pinnedB)),
            ];
            double[] expected = Expected(a, b, state.Spacing[0], alignments, pinnedA, pinnedB);
            for (int cell = 0; cell < expected.Length; cell++)
            {
                Assert.Equal(expected[cell], aligner.Probabilities[0][cell], 8);
            }

            double Score(int[] partners) => partners.Select((j, i) => j < 0 ? 0 : expected[(i * b.Length) + j] - Settings.LinkFrom).Sum();
            int[] reported = [.. a.Select((_, i) => Array.IndexOf(aligner.Links[0], i, 0, b.Length))];
            Assert.Equal(alignments.Max(Score), Score(reported), 8);
        }
    }

    /// <summary>The measure is asked first whether it sees what a fresh aligner takes.</summary>
    [Fact]
    public void Aligning_again_takes_no_memory()
    {
        Random random = new(92);
        Examination[] examinations = [.. "abcde".Select(name => Read(random, name.ToString(), 6))];
        LinkConstraint[] words = [Pin(examinations[0], examinations[1], random)];
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

    private static double[] Expected(
        PlaceNode[] a,
        PlaceNode[] b,
        double spacing,
        int[][] alignments,
        PlaceNode? pinnedA,
        PlaceNode? pinnedB
    )
    {
        double[] expected = new double[a.Length * b.Length];
        double total = 0;
        bool lesion = a.Any(place => place.Lesion > 0) && b.Any(place => place.Lesion > 0);
        for (int s = -10; s <= 10; s++)
        {
            double shift = 0.2 * s;
            for (int c = lesion ? -6 : 0; c <= (lesion ? 6 : 0); c++)
            {
                double change = 0.2 * c;
                double prior = Math.Exp((-0.5 * shift * shift / (2 * 0.36)) - (0.5 * Math.Pow(change / 0.8, 2)));
                double[] odds = new double[a.Length * b.Length];
                for (int i = 0; i < a.Length; i++)
                {
                    for (int j = 0; j < b.Length; j++)
                    {
                        bool pinned = a[i] == pinnedA && b[j] == pinnedB;
                        odds[(i * b.Length) + j] = Odds(a[i], b[j], shift, change, spacing, pinned);
                    }
                }

                foreach (int[] partners in alignments)
                {
                    double weight = prior;
                    for (int i = 0; i < a.Length; i++)
                    {
                        weight *= partners[i] < 0 ? 1 : odds[(i * b.Length) + partners[i]];
                    }

                    total += weight;
                    for (int i = 0; i < a.Length; i++)
                    {
                        if (partners[i] >= 0)
                        {
                            expected[(i * b.Length) + partners[i]] += weight;
                        }
                    }
                }
            }
        }

        return [.. expected.Select(weight => weight / total)];
    }

    /// <summary>The equations of docs/methods/linking.md for one reading on either side, written a second time.</summary>
    private static double Odds(PlaceNode a, PlaceNode b, double shift, double change, double spacing, bool pinned)
    {
        double missed = Settings.MissedShare;
        double lasting = 1 - missed;
        double again = ((lasting * lasting) + (Settings.AddedShare * Settings.AddedAgainShare)) / (lasting + Settings.AddedShare);
        double newcomers = (Settings.AddedShare + (lasting * missed)) / spacing;
        double variance = 2 * 0.49;
        double position = Math.Exp(-0.5 * Math.Pow(b.Level - a.Level - shift, 2) / variance);
        double lesion =
            double.IsNaN(a.Lesion) || double.IsNaN(b.Lesion) ? 0
            : a.Lesion == 0 && b.Lesion == 0 ? Settings.NoLesionAgreement
            : Agreement(
                Math.Asinh(b.Lesion) - Math.Asinh(a.Lesion * Math.Exp(change)),
                Settings.LogLesionAreaStandardDeviation,
                Settings.LogLesionAreaBackground,
                Settings.LesionPenaltyCap
            );
        double thickness =
            double.IsNaN(a.LogThickness) || double.IsNaN(b.LogThickness)
                ? 0
                : Agreement(
                    b.LogThickness - a.LogThickness,
                    Settings.LogThicknessStandardDeviation,
                    Settings.LogThicknessBackground,
                    Settings.LigamentPenaltyCap
                );
        return pinned
            ? (position + 1e-3) * Math.Exp(lesion)
            : again / (1 - again) / newcomers * position / Math.Sqrt(2 * Math.PI * variance) * Math.Exp(lesion + thickness);
    }

    private static double Agreement(double difference, double deviation, double background, double cap) =>
        Math.Max(
            -cap,
            Math.Log(background / deviation) - (0.5 * Math.Pow(difference / deviation, 2)) + (0.5 * Math.Pow(difference / background, 2))
        );

    private static Examination Read(Random random, string id, int count) =>
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
                        Part = Part.Body,
                        Level = new Centimetres(10 + (1.7 * i) + random.NextDouble()),
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

    private static LinkConstraint Pin(Examination first, Examination second, Random random) =>
        new(
            LinkConstraintKind.Pin,
            new PlaceKey(first.Id, LinkPath.Axial, first.Readings[random.Next(first.Readings.Count)].Level),
            new PlaceKey(second.Id, LinkPath.Axial, second.Readings[random.Next(second.Readings.Count)].Level)
        );
}
