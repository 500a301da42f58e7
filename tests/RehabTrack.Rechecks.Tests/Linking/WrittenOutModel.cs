using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Linking;

namespace RehabTrack.Rechecks.Tests.Linking;

/// <summary>
/// The equations of docs/methods/linking.md written a second time, summed over every order-preserving alignment one by one: no recursion, no
/// scaling, no tables.
/// </summary>
internal sealed class WrittenOutModel
{
    private const double Tau = 0.6;
    private const double Sigma = 0.7;
    private readonly CourseState _state;
    private readonly int _aligned;
    private readonly LinkingSettings _settings;
    private readonly int[][][] _alignments;

    public WrittenOutModel(CourseState state, int aligned, LinkingSettings settings)
    {
        _state = state;
        _aligned = aligned;
        _settings = settings;
        _alignments =
        [
            .. Enumerable
                .Range(0, state.PathCount)
                .Select(path =>
                    Alignments
                        .All(state.Columns[path].Count, state.Places[aligned][path].Length)
                        .Where(partners => KeepsPins(path, partners))
                        .ToArray()
                ),
        ];
    }

    /// <summary>What all alignments together say, and the common size of the ligament.</summary>
    public (Posterior Posterior, double LigamentSize) Read()
    {
        double usual = Neighbour(_state.LigamentSize);
        // An examination that was aligned before begins with what was found then.
        double before = _state.Placed[_aligned] ? _state.LigamentSize[_aligned] : usual;
        Posterior posterior = PosteriorAt(before);
        double size = LigamentSize(posterior.Probabilities, usual);
        // Only a size that moved by more than a quarter of its error is worth a second look.
        return (Math.Abs(size - before) > 0.076 / 4 ? PosteriorAt(size) : posterior, size);
    }

    private Posterior PosteriorAt(double ligamentSize)
    {
        (double centre, double variance) = PriorShift();
        double[][] sums =
        [
            .. Enumerable.Range(0, _state.PathCount).Select(path => new double[_state.Columns[path].Count * PlacesOf(path).Length]),
        ];
        double total = 0;
        double shifts = 0;
        double squares = 0;
        double[] changes = new double[_state.PathCount];
        for (int s = -10; s <= 10; s++)
        {
            double prior = Math.Exp(-0.5 * Math.Pow(0.2 * s, 2) / variance);
            (double Sum, double[] Links, double Change)[] paths =
            [
                .. Enumerable.Range(0, _state.PathCount).Select(path => SumOver(path, centre + (0.2 * s), ligamentSize)),
            ];
            double whole = paths.Aggregate(prior, (product, path) => product * path.Sum);
            total += whole;
            shifts += whole * 0.2 * s;
            squares += whole * Math.Pow(0.2 * s, 2);
            for (int path = 0; path < paths.Length; path++)
            {
                double rest = prior;
                for (int other = 0; other < paths.Length; other++)
                {
                    rest *= other == path ? 1 : paths[other].Sum;
                }

                changes[path] += rest * paths[path].Change;
                for (int cell = 0; cell < sums[path].Length; cell++)
                {
                    sums[path][cell] += rest * paths[path].Links[cell];
                }
            }
        }

        return new Posterior(
            [.. sums.Select(path => path.Select(weight => weight / total).ToArray())],
            centre + (shifts / total),
            (squares / total) - Math.Pow(shifts / total, 2),
            [.. changes.Select((change, path) => Neighbour(_state.LesionSize[path]) + (change / total))]
        );
    }

    /// <summary>
    /// Around the mean shift of the others; each fixed point that others saw too tells the shift with the tape's error and theirs, and
    /// normal densities are joined by the inverse of their variances.
    /// </summary>
    private (double Centre, double Variance) PriorShift()
    {
        int[] others = [.. Enumerable.Range(0, _state.Examinations.Count).Where(e => e != _aligned)];
        List<(double Value, double Variance)> told =
        [
            others.Length == 0 ? (0, Tau * Tau) : (others.Average(e => _state.Shift[e]), Tau * Tau * (1 + (1.0 / others.Length))),
        ];
        foreach (FixedPointKind kind in Enum.GetValues<FixedPointKind>())
        {
            double?[] seen = [.. _state.Examinations.Select(examination => FixedPoint.LevelOf(examination.FixedPoints, kind))];
            double[] elsewhere = [.. others.Where(e => seen[e] is not null).Select(e => seen[e]!.Value - _state.Shift[e])];
            if (seen[_aligned] is { } own && elsewhere.Length > 0)
            {
                told.Add((own - elsewhere.Average(), Sigma * Sigma * (1 + (1.0 / elsewhere.Length))));
            }
        }

        double precision = told.Sum(one => 1 / one.Variance);
        return (told.Sum(one => one.Value / one.Variance) / precision, 1 / precision);
    }

    /// <summary>
    /// All alignments of a path at one shift, over the common changes: their weight, that of those that hold each link, and the changes
    /// as often as each weighs.
    /// </summary>
    private (double Sum, double[] Links, double Change) SumOver(int path, double shift, double ligamentSize)
    {
        PlaceNode[] places = PlacesOf(path);
        Row[] rows = [.. _state.Columns[path].Select((column, row) => RowOf(path, column))];
        bool lesion = places.Any(place => place.Lesion > 0) && rows.Any(row => row.Lesion > 0);
        double[] links = new double[rows.Length * places.Length];
        double sum = 0;
        double change = 0;
        for (int c = lesion ? -6 : 0; c <= (lesion ? 6 : 0); c++)
        {
            double prior = Math.Exp(-0.5 * Math.Pow(0.2 * c / 0.8, 2));
            double growth = Math.Exp(Neighbour(_state.LesionSize[path]) + (0.2 * c));
            double[] odds = [.. rows.SelectMany(row => places.Select(place => Odds(path, row, place, shift, growth, ligamentSize)))];
            foreach (int[] partners in _alignments[path])
            {
                double weight = prior;
                for (int i = 0; i < partners.Length; i++)
                {
                    weight *= partners[i] < 0 ? 1 : odds[(i * places.Length) + partners[i]];
                }

                sum += weight;
                change += weight * 0.2 * c;
                for (int i = 0; i < partners.Length; i++)
                {
                    if (partners[i] >= 0)
                    {
                        links[(i * places.Length) + partners[i]] += weight;
                    }
                }
            }
        }

        return (sum, links, change);
    }

    private double Odds(int path, Row row, PlaceNode place, double shift, double growth, double ligamentSize)
    {
        double variance = Sigma * Sigma * (1 + (1.0 / row.Members.Length));
        double position = Math.Exp(-0.5 * Math.Pow(place.Level - row.Position - shift, 2) / variance);
        double lesion =
            double.IsNaN(row.Lesion) || double.IsNaN(place.Lesion) ? 0
            : row.Lesion == 0 && place.Lesion == 0 ? _settings.NoLesionAgreement
            : Agreement(Math.Asinh(place.Lesion) - Math.Asinh(row.Lesion * growth), 0.26, row.Lesions, 0.8, 2.5);
        if (ArePinned(row, place))
        {
            return (position + 1e-3) * Math.Exp(lesion);
        }

        if (row.Members.Any(member => _state.Pins.AreBroken(member, place)))
        {
            return 0;
        }

        int readings = row.Members.Length;
        double lasting = Math.Pow(0.92, readings) * Math.Pow(0.08, row.Looks - readings);
        double added = 0.1 * Math.Pow(0.1, readings - 1);
        double again = ((lasting * 0.92) + (added * 0.1)) / (lasting + added);
        double newcomers = (0.1 + (0.92 * Math.Pow(0.08, row.Looks))) / _state.Spacing[path];
        double size = 0;
        if (row.Ligaments > 0 && !double.IsNaN(place.LogLigamentArea))
        {
            double difference = place.LogLigamentArea - ligamentSize - row.LogLigament;
            // The later side is the larger one: a swelling.
            double cap = difference * row.Members.Sum(member => member.Examination < _aligned ? 1 : -1) >= 0 ? 4 : 6;
            size = Agreement(difference, 0.076, row.Ligaments, 0.25, cap);
        }
        else if (row.Thicknesses > 0 && !double.IsNaN(place.LogThickness))
        {
            size = Agreement(place.LogThickness - row.LogThickness, 0.075, row.Thicknesses, 0.2, 6);
        }

        return again / (1 - again) / newcomers * position / Math.Sqrt(2 * Math.PI * variance) * Math.Exp(lesion + size);
    }

    /// <summary>Log of the normal density with the SD between one reading and the mean of so many, over that of the background.</summary>
    private static double Agreement(double difference, double deviation, int readings, double background, double cap)
    {
        double own = deviation * Math.Sqrt((1 + (1.0 / readings)) / 2);
        return Math.Max(
            -cap,
            Math.Log(background / own) - (0.5 * Math.Pow(difference / own, 2)) + (0.5 * Math.Pow(difference / background, 2))
        );
    }

    private double LigamentSize(double[][] probabilities, double usual)
    {
        double weight = 0.076 * 0.076 / (0.08 * 0.08);
        double sum = weight * usual;
        for (int path = 0; path < _state.PathCount; path++)
        {
            PlaceNode[] places = PlacesOf(path);
            for (int i = 0; i < _state.Columns[path].Count; i++)
            {
                Row row = RowOf(path, _state.Columns[path][i]);
                for (int j = 0; j < places.Length; j++)
                {
                    if (row.Ligaments > 0 && !double.IsNaN(places[j].LogLigamentArea))
                    {
                        weight += probabilities[path][(i * places.Length) + j];
                        sum += probabilities[path][(i * places.Length) + j] * (places[j].LogLigamentArea - row.LogLigament);
                    }
                }
            }
        }

        return sum / weight;
    }

    private Row RowOf(int path, TrackColumn column)
    {
        PlaceNode[] members = [.. column.Members.ToArray().OfType<PlaceNode>().Where(member => member.Examination != _aligned)];
        double position = members.Average(member => member.Level - _state.Shift[member.Examination]);
        double[] ligaments =
        [
            .. members
                .Where(member => !double.IsNaN(member.LogLigamentArea))
                .Select(member => member.LogLigamentArea - _state.LigamentSize[member.Examination]),
        ];
        double[] thicknesses = [.. members.Select(member => member.LogThickness).Where(log => !double.IsNaN(log))];
        PlaceNode[] lesions = [.. members.Where(member => !double.IsNaN(member.Lesion))];
        double lesion =
            lesions.Length == 0
                ? double.NaN
                : lesions.Sum(member => member.Lesion) / lesions.Sum(member => Math.Exp(_state.LesionSize[path][member.Examination]));
        int looks = Enumerable.Range(0, _state.Examinations.Count).Count(e => e != _aligned && LooksAt(e, path, position));
        return new Row(
            members,
            position,
            ligaments.DefaultIfEmpty(double.NaN).Average(),
            ligaments.Length,
            thicknesses.DefaultIfEmpty(double.NaN).Average(),
            thicknesses.Length,
            lesion,
            lesions.Length,
            Math.Max(looks, members.Length)
        );
    }

    // An examination looked at a place when it read the path from half a spacing above it to half a spacing below.
    private bool LooksAt(int examination, int path, double position)
    {
        PlaceNode[] places = _state.Places[examination][path];
        double level = position + _state.Shift[examination];
        double margin = _state.Spacing[path] / 2;
        return places.Length > 0 && level >= places[0].Level - margin && level <= places[^1].Level + margin;
    }

    private double Neighbour(double[] sizes)
    {
        int[] beside = [.. new[] { _aligned - 1, _aligned + 1 }.Where(e => e >= 0 && e < sizes.Length)];
        return beside.Select(e => sizes[e]).DefaultIfEmpty().Average();
    }

    private bool KeepsPins(int path, int[] partners)
    {
        PlaceNode[] places = PlacesOf(path);
        for (int i = 0; i < partners.Length; i++)
        {
            Row row = RowOf(path, _state.Columns[path][i]);
            int pinned = Array.FindIndex(places, place => ArePinned(row, place));
            if (pinned >= 0 && partners[i] != pinned)
            {
                return false;
            }
        }

        return true;
    }

    private static bool ArePinned(Row row, PlaceNode place) => place.Group >= 0 && row.Members.Any(member => member.Group == place.Group);

    private PlaceNode[] PlacesOf(int path) => _state.Places[_aligned][path];

    /// <summary>What all alignments together say of one examination.</summary>
    /// <param name="Probabilities">By path: of each link, track·places + place.</param>
    /// <param name="Shift">Mean shift, cm.</param>
    /// <param name="ShiftVariance">Its variance, cm².</param>
    /// <param name="LesionSize">By path: mean log of the lesion's common size.</param>
    internal sealed record Posterior(double[][] Probabilities, double Shift, double ShiftVariance, double[] LesionSize);

    /// <summary>What a track holds without the examination that is aligned.</summary>
    private sealed record Row(
        PlaceNode[] Members,
        double Position,
        double LogLigament,
        int Ligaments,
        double LogThickness,
        int Thicknesses,
        double Lesion,
        int Lesions,
        int Looks
    );
}
