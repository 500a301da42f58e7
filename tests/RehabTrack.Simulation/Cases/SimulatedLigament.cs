using System.Globalization;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Simulation.Cases;

/// <summary>
/// One ligament with known places, read at several examinations: 5 to 7 places, tape SD 0.7 cm, each examination shifted by up to 1 cm
/// either way, ligament cv 5 % with a shared gain of 3 %, lesion cv 12 % with a floor of 0.02 cm², places changing by 10 % of their own.
/// A vet reads down the limb, so levels never swap.
/// </summary>
public sealed class SimulatedLigament
{
    private readonly Dictionary<string, int> _truth = new(StringComparer.Ordinal);

    private SimulatedLigament(IReadOnlyList<Examination> examinations) => Examinations = examinations;

    public IReadOnlyList<Examination> Examinations { get; private init; }

    /// <summary>The true place of a reading; added levels have a number of their own.</summary>
    public int PlaceOf(string readingId) => _truth[readingId];

    /// <summary>The place that a new lesion or a swelling strikes at the third examination.</summary>
    public int StruckPlace { get; private init; }

    /// <summary>The true shift of each examination, cm.</summary>
    public IReadOnlyList<double> Shifts { get; private init; } = [];

    public static SimulatedLigament Of(int seed, SimulatedRegime regime)
    {
        Random random = new(seed);
        int count = random.Next(5, 8);
        double[] position = new double[count];
        double[] logLigament = new double[count];
        double[] lesion = new double[count];
        position[0] = 8 + (4 * random.NextDouble());
        for (int i = 1; i < count; i++)
        {
            position[i] = position[i - 1] + (regime.SpacingCm * (0.9 + (0.2 * random.NextDouble())));
        }

        double[] waves = [random.Normal(), random.Normal(), 6.28 * random.NextDouble()];
        double Smooth(double x) =>
            Math.Log(1.3) + (0.14 * waves[0] * Math.Sin((x / 3) + waves[2])) + (0.14 * waves[1] * Math.Cos((x / 5) + waves[2]));
        double centre = position[0] + (random.NextDouble() * (position[^1] - position[0]));
        double width = regime.SpacingCm * (0.7 + (0.5 * random.NextDouble()));
        double worst = 0.3 + (0.3 * random.NextDouble());
        double LesionAt(double x)
        {
            double area = worst * Math.Exp(-0.5 * Math.Pow((x - centre) / width, 2));
            return area < 0.03 ? 0 : area;
        }

        for (int i = 0; i < count; i++)
        {
            logLigament[i] = regime.SmoothAreas ? Smooth(position[i]) : Math.Log(1.3) + (0.2 * random.Normal());
            lesion[i] = LesionAt(position[i]);
        }

        List<Examination> examinations = [];
        Dictionary<string, int> truth = new(StringComparer.Ordinal);
        double[] shifts = new double[regime.Examinations];
        double size = 1;
        int strangers = 1000;
        int struck = -1;
        for (int e = 0; e < regime.Examinations; e++)
        {
            if (e > 0)
            {
                size *= regime.GrowthFromThird is { } growth && e >= 2 ? growth : Math.Exp(-0.3 + (0.15 * random.Normal()));
            }

            shifts[e] = (2 * random.NextDouble()) - 1;
            double gain = 0.03 * random.Normal();
            List<(double Position, int Truth, double LogLigament, double Lesion)> read = [];
            if (e == 2)
            {
                struck = Array.FindIndex(lesion, area => area < 0.05);
                struck = struck < 0 ? count - 1 : struck;
                lesion[struck] = regime.NewLesion ? 0.3 / size : lesion[struck];
                logLigament[struck] += Math.Log(regime.Swelling);
            }

            for (int i = 0; i < count; i++)
            {
                lesion[i] *= e > 0 ? Math.Exp(0.1 * random.Normal()) : 1;
                if (random.NextDouble() >= regime.Missed)
                {
                    read.Add((position[i], i, logLigament[i], lesion[i] * size));
                }

                if (random.NextDouble() < regime.Added)
                {
                    double x = position[0] - 1 + (random.NextDouble() * (position[^1] - position[0] + 2));
                    read.Add(
                        (x, strangers++, regime.SmoothAreas ? Smooth(x) : Math.Log(1.3) + (0.2 * random.Normal()), LesionAt(x) * size)
                    );
                }
            }

            read.Sort((a, b) => a.Position.CompareTo(b.Position));
            double[] levels = [.. read.Select(place => Math.Round(place.Position + shifts[e] + (0.7 * random.Normal()), 1)).Order()];
            for (int k = 1; k < levels.Length; k++)
            {
                levels[k] = Math.Round(Math.Max(levels[k], levels[k - 1] + 0.1), 1);
            }

            List<Reading> readings = [];
            for (int k = 0; k < read.Count; k++)
            {
                string id = string.Create(CultureInfo.InvariantCulture, $"{e}-{k}");
                truth[id] = read[k].Truth;
                double ligament = Math.Exp(read[k].LogLigament + gain + (0.05 * random.Normal()));
                double area =
                    read[k].Lesion == 0 ? 0 : Math.Max(0, (read[k].Lesion * (1 + (0.12 * random.Normal()))) + (0.02 * random.Normal()));
                readings.Add(
                    new Reading
                    {
                        Id = id,
                        Part = Part.Body,
                        Level = new Centimetres(levels[k]),
                        LigamentArea = regime.Areas ? new SquareCentimetres(Math.Round(ligament, 2)) : null,
                        LesionArea = regime.Areas
                            ? LesionArea.Measured(new SquareCentimetres(Math.Round(Math.Min(area, ligament), 2)))
                            : LesionArea.Unknown,
                    }
                );
            }

            examinations.Add(
                new Examination
                {
                    Id = string.Create(CultureInfo.InvariantCulture, $"exam-{e + 1}"),
                    Date = new DateOnly(2024, 1, 10).AddDays(60 * e),
                    Readings = readings,
                }
            );
        }

        SimulatedLigament ligamentCourse = new(examinations) { Shifts = shifts, StruckPlace = struck };
        foreach ((string id, int place) in truth)
        {
            ligamentCourse._truth[id] = place;
        }

        return ligamentCourse;
    }
}
