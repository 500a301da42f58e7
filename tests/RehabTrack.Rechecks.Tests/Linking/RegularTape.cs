using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;

namespace RehabTrack.Rechecks.Tests.Linking;

/// <summary>
/// Six levels named every 2 cm at each of five examinations, while the place truly read wanders: by the tape (SD 0.7 cm) and by the shift
/// of the examination (up to 1 cm either way). Ligament and lesion run smoothly along the limb.
/// </summary>
public sealed class RegularTape
{
    private readonly Dictionary<string, double> _positions = new(StringComparer.Ordinal);

    public required IReadOnlyList<Examination> Examinations { get; init; }

    /// <summary>Where a reading was truly taken, cm.</summary>
    public double PositionOf(string readingId) => _positions[readingId];

    public static RegularTape Of(int seed)
    {
        Random random = new(seed);
        double[] waves = [Normal(random), Normal(random), 6.28 * random.NextDouble()];
        double centre = 12 + (6 * random.NextDouble());
        Dictionary<string, double> positions = new(StringComparer.Ordinal);
        List<Examination> examinations = [];
        double size = 0.45;
        for (int e = 0; e < 5; e++)
        {
            double shift = (2 * random.NextDouble()) - 1;
            double[] places = [.. Enumerable.Range(0, 6).Select(i => 10 + (2 * i) - shift + (0.7 * Normal(random))).Order()];
            examinations.Add(
                Tapes.Of(
                    e,
                    [
                        .. places.Select(
                            (x, i) =>
                            {
                                double ligament =
                                    1.3
                                    * Math.Exp(
                                        (0.14 * waves[0] * Math.Sin((x / 3) + waves[2]))
                                            + (0.14 * waves[1] * Math.Cos((x / 5) + waves[2]))
                                            + (0.05 * Normal(random))
                                    );
                                double lesion = size * Math.Exp(-0.5 * Math.Pow((x - centre) / 2, 2)) * (1 + (0.12 * Normal(random)));
                                Reading reading = Tapes.Row(e, Part.Body, 10 + (2 * i), ligament, lesion < 0.03 ? 0 : lesion);
                                positions[reading.Id] = x;
                                return reading;
                            }
                        ),
                    ]
                )
            );
            size *= 0.75;
        }

        RegularTape tape = new() { Examinations = examinations };
        foreach ((string id, double position) in positions)
        {
            tape._positions[id] = position;
        }

        return tape;
    }

    private static double Normal(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
