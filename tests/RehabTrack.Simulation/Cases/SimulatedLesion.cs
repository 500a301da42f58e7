using System.Globalization;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Linking;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Simulation.Cases;

/// <summary>
/// A lesion on six places 2 cm apart, examined every 60 days; its true size over time is given. Measured with the error that the engine
/// assumes (docs/methods/healing.md), or with a multiple of it.
/// </summary>
public sealed class SimulatedLesion
{
    private static readonly double[] Profile = [0.10, 0.35, 0.60, 0.50, 0.25, 0.08];
    private const double FirstLevelCm = 10;
    private const double SpacingCm = 2;
    private readonly Random _random;
    private readonly ReadingHabit _habit;

    /// <param name="seed">One seed makes one case.</param>
    /// <param name="habit">How the levels are read.</param>
    public SimulatedLesion(int seed, ReadingHabit habit)
    {
        _random = new Random(seed);
        _habit = habit;
    }

    /// <summary>The true volume at the first examination of the last course made, cm³, by trapezoids over the six places.</summary>
    public double TrueVolume { get; private set; }

    /// <summary>A half-life of healing in days: lognormal, log SD .35, at most <paramref name="longest"/>.</summary>
    public double HalfLife(double longest, double median = 90)
    {
        double days;
        do
        {
            days = median * Math.Exp(0.35 * _random.Normal());
        } while (days > longest);

        return days;
    }

    /// <summary>The share of the start that stays: uniform 0 to .08.</summary>
    public double Floor() => 0.08 * _random.NextDouble();

    /// <summary>Examinations every 60 days, the lesion scaled by <paramref name="size"/> of the day.</summary>
    public CaseCourse Course(int looks, Func<double, double> size)
    {
        ArgumentNullException.ThrowIfNull(size);
        double spread = Math.Exp(0.2 * _random.Normal());
        double[] lesion = [.. Profile.Select(area => area * spread * Math.Exp(0.15 * _random.Normal()))];
        TrueVolume = SpacingCm * (lesion.Sum() - ((lesion[0] + lesion[^1]) / 2)) * size(0);
        double[] ligament = [.. Profile.Select(_ => 1.5 * Math.Exp(_habit.PlaceLogSpread * _random.Normal()))];
        return new CaseCourse
        {
            Id = "case",
            Limb = Limb.LeftFore,
            Structure = Structure.SuspensoryLigament,
            Landmark = Landmark.AccessoryCarpalBone,
            Onset = Start.AddDays(-60),
            Examinations = [.. Enumerable.Range(0, looks).Select(look => Examination(look, lesion, ligament, size(60 * look)))],
        };
    }

    /// <summary>The day of the first examination.</summary>
    public static DateOnly Start { get; } = new(2026, 1, 12);

    /// <summary>The true place of a reading, 0 to 5.</summary>
    public static int PlaceOf(Reading reading)
    {
        ArgumentNullException.ThrowIfNull(reading);
        return int.Parse(
            reading.Id.AsSpan(reading.Id.IndexOf('/', StringComparison.Ordinal) + 1),
            NumberStyles.None,
            CultureInfo.InvariantCulture
        );
    }

    /// <summary>The links as they truly are.</summary>
    public static LinkedCourse TrueLinks(CaseCourse course) =>
        Cases.TrueLinks.Of(course, place => PlaceOf(place.Readings[0]), place => new Centimetres(FirstLevelCm + (SpacingCm * place)));

    /// <summary>The links as they truly are, but for one examination, each of whose levels is taken for the next one below.</summary>
    public static LinkedCourse LinksOneOff(CaseCourse course, int look)
    {
        ArgumentNullException.ThrowIfNull(course);
        string off = course.Examinations[look].Id;
        return Cases.TrueLinks.Of(
            course,
            place => PlaceOf(place.Readings[0]) + (string.Equals(place.Key.ExaminationId, off, StringComparison.Ordinal) ? 1 : 0),
            place => new Centimetres(FirstLevelCm + (SpacingCm * place))
        );
    }

    private Examination Examination(int look, double[] lesion, double[] ligament, double scale)
    {
        string id = string.Create(CultureInfo.InvariantCulture, $"look-{look}");
        double error = _habit.ErrorFactor;
        double gain = Math.Exp(error * 0.03 * _random.Normal());
        double shift = _habit.ShiftCm * ((2 * _random.NextDouble()) - 1);
        double[] levels =
        [
            .. lesion.Select((_, place) => FirstLevelCm + (SpacingCm * place) + shift + (_habit.TapeCm * _random.Normal())).Order(),
        ];
        List<Reading> readings = [];
        double above = 0;
        for (int place = 0; place < lesion.Length; place++)
        {
            double area = lesion[place] * scale;
            double sd = error * Math.Sqrt((0.12 * area * 0.12 * area) + (0.02 * 0.02));
            double measured = Math.Max(0, area + (sd * _random.Normal()));
            double around = ligament[place] * (1 + (error * 0.07 * _random.Normal()));
            if (_random.NextDouble() < _habit.Missed)
            {
                continue;
            }

            // A tape is read to the millimetre, and no two levels share one.
            above = Math.Max(Math.Round(levels[place], 1), Math.Round(above + 0.1, 1));
            readings.Add(
                new Reading
                {
                    Id = string.Create(CultureInfo.InvariantCulture, $"{id}/{place}"),
                    Part = Part.Body,
                    Level = new Centimetres(above),
                    LigamentArea = new SquareCentimetres(gain * around),
                    LesionArea = LesionArea.Measured(new SquareCentimetres(gain * Math.Min(measured, around))),
                    Measurer = "Ada",
                }
            );
        }

        return new Examination
        {
            Id = id,
            Date = Start.AddDays(60 * look),
            Readings = readings,
        };
    }
}
