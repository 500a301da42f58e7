using System.Globalization;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Linking;
using RehabTrack.Reports.Pictures;
using RehabTrack.Wording;

namespace RehabTrack.Reports.Ladder;

/// <summary>What a ladder says in words: the same figures that its marks show.</summary>
internal sealed class LadderWords(CultureInfo culture)
{
    public string TitleOf(LadderLayout layout) =>
        layout.Columns.Count switch
        {
            0 => Drawings.LadderTitleEmpty,
            1 => Drawings.LadderTitleOne,
            int count => Say(Drawings.LadderTitle, count),
        };

    public string DescriptionOf(LadderLayout layout)
    {
        if (layout.Columns.Count == 0)
        {
            return Drawings.LadderTitleEmpty;
        }

        List<string> sentences =
        [
            Say(
                ZonesOf(layout) is null ? Drawings.LadderDescription : Drawings.LadderDescriptionZones,
                Figures.Dates(layout.Columns[0].Date, layout.Columns[^1].Date, culture)
            ),
        ];
        LadderItem[] items =
        [
            .. layout.Sections.SelectMany(section => section.Items).Where(item => layout.Columns[item.Examination].Shown),
        ];
        if (layout.Columns.Count > layout.ShownColumns.Count())
        {
            sentences.Add(
                Say(Drawings.LadderWindow, layout.FirstShown + 1, layout.FirstShown + layout.ShownColumns.Count(), layout.Columns.Count)
            );
        }

        if (items.Count(item => item.Step is { Uncertain: true }) is > 0 and int unsure)
        {
            sentences.Add(Say(Drawings.LadderUnsure, unsure));
        }

        if (items.Count(item => item.Step is null) is > 0 and int missing)
        {
            sentences.Add(Say(Drawings.LadderNotRead, missing));
        }

        if (layout.Options.Straightened)
        {
            sentences.Add(Drawings.LadderStraightened);
        }

        return string.Join(' ', sentences);
    }

    public string Landmark(CaseCourse course, LadderLayout layout) =>
        (ZonesOf(layout) is { } scheme ? ZoneSchemes.LandmarkOf(scheme) : course.Landmark) is { } known
            ? Names.Of(known, culture)
            : Drawings.AxisLandmarkUnknown;

    /// <summary>What the figures of the axis are, above the landmark.</summary>
    public static string AxisBelow(LadderLayout layout) => ZonesOf(layout) is null ? Drawings.AxisBelow : Drawings.AxisZonesBelow;

    /// <summary>What the figures of the axis are, in one word.</summary>
    public static string AxisUnit(LadderLayout layout) => ZonesOf(layout) is null ? Drawings.AxisUnit : Drawings.AxisZones;

    /// <summary>The axis in one line, for a drawing whose margin has no room for it.</summary>
    public string AxisOf(CaseCourse course, LadderLayout layout) =>
        ZonesOf(layout) is { } scheme
            ? Say(Drawings.AxisByZones, Names.Of(scheme, culture))
            : Say(layout.Options.Straightened ? Drawings.AxisStraightened : Drawings.AxisPlain, Landmark(course, layout));

    /// <summary>The heading of a section: the path, and the scheme where levels are zones.</summary>
    public string TitleOf(LadderSection section)
    {
        string path = Names.AsTitle(Names.Of(section.Path, culture), culture);
        return section.Zones is { } scheme ? Say(Drawings.SectionByZones, path, Names.Of(scheme, culture)) : path;
    }

    // The scheme that the whole drawing shares; a drawing with a tape in it has none, and its sections say which zones they show.
    private static ZoneScheme? ZonesOf(LadderLayout layout) =>
        layout.Sections.Select(section => section.Zones).Distinct().ToArray() is [var only] ? only : null;

    /// <summary>Everything that is known of a place, a line each.</summary>
    public IReadOnlyList<string> LinesOf(TrackStep step)
    {
        Place place = step.Place;
        List<string> lines =
        [
            Say(
                Drawings.PlaceHeading,
                Figures.Level(place.Level, null, culture),
                Names.Of(place.Part, culture),
                Figures.Date(step.Date, null, culture)
            ),
        ];
        Add(lines, Drawings.PlaceLigament, place.LigamentArea is null ? null : Figures.Area(place.LigamentArea, null, culture));
        lines.Add(
            place.LesionArea.Kind switch
            {
                LesionAreaKind.Diffuse => Drawings.PlaceDiffuse,
                LesionAreaKind.Measured when place.LesionArea.Area.Value == 0 => Drawings.PlaceNoLesion,
                LesionAreaKind.Measured => Say(Drawings.PlaceLesion, Figures.Area(place.LesionArea.Area, null, culture)),
                LesionAreaKind.Unknown => place.LesionPercent is null ? Drawings.PlaceLesionUnknown : "",
            }
        );
        string[] lesions = [.. place.Readings.Select(reading => reading.Lesion).OfType<string>().Distinct(StringComparer.Ordinal)];
        if (lesions.Length > 1)
        {
            lines.AddRange(
                place
                    .Readings.Where(reading => reading.Lesion is not null && reading.LesionArea.MeasuredArea is not null)
                    .Select(reading =>
                        Say(Drawings.PlaceLesionNamed, reading.Lesion!, Figures.Area(reading.LesionArea.MeasuredArea, null, culture))
                    )
            );
        }

        if (place.LesionPercent is { Value: > 0 } percent)
        {
            lines.Add(Say(Drawings.PlacePercent, Figures.Percent(percent, null, culture)));
        }

        Add(lines, Drawings.PlaceThickness, place.Thickness is null ? null : Figures.Length(place.Thickness, null, culture));
        Add(lines, Drawings.PlaceWidth, place.Width is null ? null : Figures.Length(place.Width, null, culture));
        Add(lines, Drawings.PlaceEchogenicity, place.Echogenicity is null ? null : Figures.Grade(place.Echogenicity, null, culture));
        Add(lines, Drawings.PlaceFibre, place.FibreAlignment is null ? null : Figures.Grade(place.FibreAlignment, null, culture));
        lines.AddRange(
            place
                .Readings.Select(reading => reading.Role)
                .Where(role => role != ReadingRole.None)
                .Distinct()
                .Select(role => Names.Of(role, culture))
        );
        string measurers = string.Join(
            ", ",
            place.Readings.Select(reading => reading.Measurer).OfType<string>().Distinct(StringComparer.Ordinal)
        );
        Add(lines, Drawings.PlaceMeasurer, measurers.Length == 0 ? null : measurers);
        lines.Add(LinkOf(step));
        lines.AddRange(
            step.Alternatives.Select(other =>
                Say(Drawings.PlaceAlternative, Figures.Level(other.ConsensusLevel, null, culture), Sure(other.Probability))
            )
        );
        return [.. lines.Where(line => line.Length > 0)];
    }

    public string MissingOf(LadderItem item, LadderColumn column) =>
        Say(
            Drawings.MissingPlace,
            Figures.Level(item.Track.ConsensusLevel, null, culture),
            Names.Of(item.Track.Part, culture),
            Figures.Date(column.Date, null, culture)
        );

    public DrawingTable TableOf(LadderLayout layout) =>
        new(
            Drawings.LadderTableCaption,
            [
                new(Drawings.ColumnDate, false),
                new(Drawings.ColumnPart, false),
                new(Drawings.ColumnPlace, false),
                new(layout.Sections.Any(section => section.Zones is not null) ? Drawings.ColumnLevelOrZone : Drawings.ColumnLevel, true),
                new(Drawings.ColumnLigament, true),
                new(Drawings.ColumnLesion, true),
                new(Drawings.ColumnPercent, true),
                new(Drawings.ColumnThickness, true),
                new(Drawings.ColumnWidth, true),
                new(Drawings.ColumnEchogenicity, true),
                new(Drawings.ColumnFibre, true),
                new(Drawings.ColumnLink, true),
            ],
            [
                .. layout
                    .Sections.SelectMany(section => section.Items)
                    .OrderBy(item => item.Examination)
                    .ThenBy(item => item.Track.Path)
                    .ThenBy(item => item.LevelCm)
                    .Select(item => RowOf(item, layout.Columns[item.Examination])),
            ]
        );

    private string[] RowOf(LadderItem item, LadderColumn column)
    {
        string date = Figures.Date(column.Date, null, culture);
        string track = Figures.Level(item.Track.ConsensusLevel, null, culture);
        if (item.Step is not { } step)
        {
            string none = Figures.Level(null);
            return [date, Names.Of(item.Track.Part, culture), track, Drawings.NotRead, none, none, none, none, none, none, none, none];
        }

        Place place = step.Place;
        return
        [
            date,
            Names.Of(place.Part, culture),
            track,
            Figures.LevelNumber(place.Level, culture),
            Number(place.LigamentArea?.Value, "0.00"),
            place.LesionArea.Kind == LesionAreaKind.Diffuse ? Drawings.Diffuse : Number(place.LesionArea.MeasuredArea?.Value, "0.00"),
            Number(place.LesionPercent?.Value, "0"),
            Number(place.Thickness?.Value, "0.00"),
            Number(place.Width?.Value, "0.00"),
            Figures.GradeNumber(place.Echogenicity, null, culture),
            Figures.GradeNumber(place.FibreAlignment, null, culture),
            step.Basis switch
            {
                LinkBasis.Pinned => Names.Of(LinkBasis.Pinned, culture),
                LinkBasis.First => Names.Of(LinkBasis.First, culture),
                LinkBasis.Computed => Number(100 * step.LinkProbability, "0"),
            },
        ];
    }

    private string LinkOf(TrackStep step) =>
        step.Basis switch
        {
            LinkBasis.First => Drawings.PlaceLinkFirst,
            LinkBasis.Pinned => Drawings.PlaceLinkPinned,
            LinkBasis.Computed => Say(step.Uncertain ? Drawings.PlaceLinkUnsure : Drawings.PlaceLinkSure, Sure(step.LinkProbability ?? 1)),
        };

    // A probability just below one is not certainty: it is never rounded up to 100.
    private string Sure(double probability) => Figures.Percent(new(probability < 1 ? Math.Min(100 * probability, 99) : 100), null, culture);

    private string Number(double? value, string format) =>
        value is { } known ? Figures.Number(known, format, culture) : Figures.Level(null);

    private void Add(List<string> lines, string text, string? figure)
    {
        if (figure is not null)
        {
            lines.Add(Say(text, figure));
        }
    }

    private string Say(string text, params ReadOnlySpan<object?> arguments) => string.Format(culture, text, arguments);
}
