using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Linking;

/// <summary>Turns examinations into the plain numbers that the linker works on.</summary>
internal static class CourseReader
{
    private const double NarrowestSpacingCm = 0.5;
    private const double WidestSpacingCm = 6;

    public static CourseState Read(
        IReadOnlyList<Examination> examinations,
        IReadOnlyDictionary<string, Centimetres?> offsets,
        IReadOnlyList<LinkConstraint> constraints,
        LinkingSettings settings
    )
    {
        Examination[] ordered =
        [
            .. examinations.OrderBy(examination => examination.Date).ThenBy(examination => examination.Id, StringComparer.Ordinal),
        ];
        IReadOnlyList<Place>[] places = [.. ordered.Select(Places.Of)];
        LinkPath[] paths = [.. places.SelectMany(all => all).Select(place => place.Key.Path).Distinct().Order()];
        double floor = LesionFloor(places, settings);
        PlaceNode[][][] nodes = new PlaceNode[ordered.Length][][];
        Dictionary<PlaceKey, PlaceNode> byKey = [];
        for (int e = 0; e < ordered.Length; e++)
        {
            double offset = OffsetOf(ordered[e], offsets);
            nodes[e] = new PlaceNode[paths.Length][];
            for (int path = 0; path < paths.Length; path++)
            {
                nodes[e][path] =
                [
                    .. places[e].Where(place => place.Key.Path == paths[path]).Select(place => Node(place, e, path, floor, offset)),
                ];
                foreach (PlaceNode node in nodes[e][path])
                {
                    byKey[node.Place.Key] = node;
                }
            }
        }

        return new CourseState
        {
            Examinations = ordered,
            Places = nodes,
            Columns = [.. paths.Select(_ => new List<TrackColumn>())],
            Pins = PinGroups.Of(byKey, constraints),
            Spacing = [.. Enumerable.Range(0, paths.Length).Select(path => Spacing(nodes, path, settings))],
            Shift = new double[ordered.Length],
            LesionSize = [.. paths.Select(_ => new double[ordered.Length])],
            LigamentSize = new double[ordered.Length],
            Placed = new bool[ordered.Length],
            Zones = ordered.Length > 0 ? ordered[0].Zones : null,
            Offsets = [.. ordered.Select(examination => OffsetOf(examination, offsets))],
            FixedPoints = [.. Enum.GetValues<FixedPointKind>().Select(kind => FixedPointsOf(kind, ordered, offsets))],
        };
    }

    private static double OffsetOf(Examination examination, IReadOnlyDictionary<string, Centimetres?> offsets) =>
        offsets.GetValueOrDefault(examination.Id)?.Value ?? 0;

    private static double[] FixedPointsOf(
        FixedPointKind kind,
        Examination[] examinations,
        IReadOnlyDictionary<string, Centimetres?> offsets
    ) =>
        [
            .. examinations.Select(examination =>
                FixedPoint.LevelOf(examination.FixedPoints, kind) is { } level ? level + OffsetOf(examination, offsets) : double.NaN
            ),
        ];

    private static PlaceNode Node(Place place, int examination, int path, double floor, double offset) =>
        new()
        {
            Place = place,
            Examination = examination,
            Path = path,
            Level = place.Level.Position.Value + offset,
            LogLigamentArea = LogOf(place.LigamentArea?.Value),
            LogThickness = LogOf(place.Thickness?.Value),
            Lesion = LesionOf(place) is { } area ? area / floor : double.NaN,
        };

    /// <summary>The traced lesion area, or the recorded share of the ligament area; null when neither is known.</summary>
    private static double? LesionOf(Place place) =>
        place.LesionArea.MeasuredArea?.Value
        ?? (
            place.LesionArea.Kind == LesionAreaKind.Unknown
            && place.LigamentArea is { Value: > 0 } ligament
            && place.LesionPercent is { } percent
                ? ligament.Value * percent.Value / 100
                : null
        );

    private static double LogOf(double? value) => value is > 0 ? Math.Log(value.Value) : double.NaN;

    /// <summary>
    /// The lesion area below which logarithms no longer serve: a share of the case's usual ligament area, else of its usual lesion area,
    /// so that scaling all areas changes no link.
    /// </summary>
    private static double LesionFloor(IReadOnlyList<Place>[] places, LinkingSettings settings)
    {
        double[] ligaments = [.. places.SelectMany(all => all).Select(place => LogOf(place.LigamentArea?.Value)).Where(double.IsFinite)];
        if (ligaments.Length > 0)
        {
            return settings.LesionFloorShare * Math.Exp(ligaments.Average());
        }

        double[] lesions = [.. places.SelectMany(all => all).Select(place => LogOf(LesionOf(place))).Where(double.IsFinite)];
        return lesions.Length > 0 ? settings.LesionFloorOfLesions * Math.Exp(lesions.Average()) : 1;
    }

    /// <summary>The mean distance between neighbouring levels of an examination.</summary>
    private static double Spacing(PlaceNode[][][] nodes, int path, LinkingSettings settings)
    {
        double length = 0;
        int gaps = 0;
        foreach (PlaceNode[][] examination in nodes)
        {
            PlaceNode[] places = examination[path];
            if (places.Length > 1)
            {
                length += places[^1].Level - places[0].Level;
                gaps += places.Length - 1;
            }
        }

        return gaps == 0 ? settings.UsualSpacingCm : Math.Clamp(length / gaps, NarrowestSpacingCm, WidestSpacingCm);
    }
}
