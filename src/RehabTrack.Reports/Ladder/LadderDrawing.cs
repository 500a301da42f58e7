using System.Xml.Linq;
using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Linking;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Reports.Pictures;
using RehabTrack.Wording;

namespace RehabTrack.Reports.Ladder;

/// <summary>
/// The ladder: limb axis downward in cm or by zones, examinations across, a rung a place. A rung's length is the ligament area and its dark part the
/// lesion, both on one scale; the shape behind the rungs joins them as the volume does, so its dark area is the lesion's volume. Lines join
/// what is held to be one place: the heavier, the surer. Unsure, pinned and missing are told by shape and word before colour.
/// </summary>
public sealed class LadderDrawing
{
    /// <summary>Over a wider gap between two readings the shape would show more than anybody looked at, cm.</summary>
    private const double WidestGapCm = 4;

    private readonly LadderLayout _layout;
    private readonly LadderOptions _options;
    private readonly LadderWords _words;
    private readonly CaseCourse _course;
    private readonly IReadOnlyList<string> _axisWords;

    private LadderDrawing(CaseCourse course, LadderLayout layout)
    {
        _course = course;
        _layout = layout;
        _options = layout.Options;
        _words = new LadderWords(layout.Options.Culture);
        _axisWords = AxisWords();
    }

    /// <summary>Draws a case's ladder.</summary>
    /// <param name="course">The case: its landmark and its examinations.</param>
    /// <param name="analysis">The analysis of the same course: which examinations are drawn and which places are one.</param>
    /// <param name="options">How it is drawn.</param>
    public static LadderPicture Draw(CaseCourse course, CaseAnalysis analysis, LadderOptions options)
    {
        ArgumentNullException.ThrowIfNull(course);
        ArgumentNullException.ThrowIfNull(analysis);
        ArgumentNullException.ThrowIfNull(options);
        return new LadderDrawing(course, LadderLayout.Of(course, analysis, options)).Draw();
    }

    private IEnumerable<LadderItem> Shown => _layout.Sections.SelectMany(section => section.Items).Where(IsShown);

    private LadderPicture Draw()
    {
        string title = _words.TitleOf(_layout);
        string description = _words.DescriptionOf(_layout);
        XElement scenery = Svg.Of("g", ("class", "scenery"), ("aria-hidden", "true"));
        Highlight(scenery);
        foreach (LadderSection section in _layout.Sections)
        {
            Axis(scenery, section);
            Silhouettes(scenery, section);
            Links(scenery, section);
        }

        Headings(scenery);
        (XElement legend, double height) = LadderLegend.Of(_layout, [.. Shown], Hatch, AxisInLegend);
        XElement root = Svg.Root(_layout.Width, height, _options.Interactive, title, description, _options.IdPrefix);
        root.Add(Svg.Of("defs").Containing(LadderMarks.HatchPattern(Hatch)), scenery);
        foreach (LadderItem item in Shown.OrderBy(item => item.Examination).ThenBy(item => item.Track.Path).ThenBy(item => item.Y))
        {
            root.Add(item.Step is null ? Missing(item) : Rung(item, item.Step));
        }

        root.Add(legend);
        return new LadderPicture
        {
            Root = root,
            Width = _layout.Width,
            Height = height,
            Title = title,
            Description = description,
            Table = _words.TableOf(_layout),
            FirstShown = _layout.FirstShown,
            Shown = _layout.ShownColumns.Count(),
            Examinations = _layout.Columns.Count,
        };
    }

    private string Hatch => _options.IdPrefix + "-hatch";

    private bool IsShown(LadderItem item) => _layout.Columns[item.Examination].Shown;

    private bool IsChosen(Track track) => string.Equals(track.Id, _options.SelectedTrack, StringComparison.Ordinal);

    private bool IsChosen(LadderColumn column) => _options.SelectedExaminations.Contains(column.ExaminationId, StringComparer.Ordinal);

    private void Highlight(XElement scenery)
    {
        foreach (LadderColumn column in _layout.ShownColumns.Where(IsChosen))
        {
            double width = Math.Min(_layout.Spacing - 8, 150);
            scenery.Add(
                Svg.Of(
                    "rect",
                    ("class", "chosen-examination"),
                    ("x", column.X - (width / 2)),
                    ("y", 0.5),
                    ("width", width),
                    ("height", _layout.Bottom - 1),
                    ("rx", 3),
                    ("fill", Palette.Tint),
                    ("fill-opacity", 0.6)
                )
            );
        }
    }

    private void Headings(XElement scenery)
    {
        double size = _layout.SmallSize;
        double first = _layout.HeadingSize + 1;
        for (int i = 0; i < _axisWords.Count; i++)
        {
            scenery.Add(Svg.Text(4, first + ((size + 4) * i), _axisWords[i], size, Palette.Soft, kind: "axis-words"));
        }

        int? year = null;
        foreach (LadderColumn column in _layout.ShownColumns)
        {
            scenery.Add(
                Svg.Text(
                    column.X,
                    first,
                    Figures.ShortDate(column.Date, null, _options.Culture),
                    _layout.HeadingSize,
                    Palette.Ink,
                    "middle",
                    700,
                    "date"
                )
            );
            string below = Below(column, column.Date.Year != year);
            year = column.Date.Year;
            double room = _layout.Spacing - 6;
            scenery.Add(Svg.Text(column.X, first + size + 4, LadderMarks.Fit(below, room, size), size, Palette.Soft, "middle"));
            if (_options.Straightened && Math.Abs(column.ShiftCm) >= 0.05)
            {
                string shift = string.Format(
                    _options.Culture,
                    Drawings.TapeShift,
                    Figures.Shift(new(column.ShiftCm), null, _options.Culture)
                );
                scenery.Add(Svg.Text(column.X, first + ((size + 4) * 2), LadderMarks.Fit(shift, room, size), size, Palette.Soft, "middle"));
            }
        }
    }

    /// <summary>Two lines beside the first heading, where they fit; else the unit alone, and the legend says the rest.</summary>
    private IReadOnlyList<string> AxisWords()
    {
        if (_layout.Phone || !_layout.ShownColumns.Any())
        {
            return [];
        }

        LadderColumn column = _layout.ShownColumns.First();
        double size = _layout.SmallSize;
        string landmark = _words.Landmark(_course, _layout);
        double room = column.X - (Svg.WidthOf(Below(column, true), size) / 2) - 12;
        return Svg.WidthOf(landmark, size) <= room ? [LadderWords.AxisBelow(_layout), landmark] : [LadderWords.AxisUnit(_layout)];
    }

    private string? AxisInLegend => _axisWords.Count < 2 || _options.Straightened ? _words.AxisOf(_course, _layout) : null;

    private string Below(LadderColumn column, bool newYear)
    {
        string year = column.Date.Year.ToString(_options.Culture);
        bool twins = _layout.Columns.Count(other => other.Date == column.Date) > 1;
        string day =
            column.Examination?.State == ExaminationState.Draft ? Drawings.DraftExamination
            : twins && column.Examination?.Name is { Length: > 0 } name ? name
            : column.Index == 0 ? Drawings.Baseline
            : Figures.DayNumber(column.Day, _options.Culture);
        return !newYear ? day
            : _layout.Spacing > Svg.WidthOf(year + " · " + day, _layout.SmallSize) + 6 ? year + " · " + day
            : year;
    }

    private void Axis(XElement scenery, LadderSection section)
    {
        double size = _layout.SmallSize;
        if (section.TitleY > 0)
        {
            scenery.Add(
                Svg.Line(4, section.TitleY - size - 7, _layout.Width, section.TitleY - size - 7, Palette.Line, 1),
                Svg.Text(4, section.TitleY, _words.TitleOf(section), size + 1, Palette.Ink, "start", 600).With(("class", "path-name"))
            );
        }

        double reach = (_layout.RungHeight / 2 + 4) / _layout.PixelsPerCm;
        foreach (Level level in TicksOf(section, section.FromCm - reach, section.ToCm + reach))
        {
            double y = _layout.YOf(section, level.Position.Value);
            string told = Figures.LevelNumber(level, _options.Culture);
            scenery.Add(
                Svg.Line(_layout.Left - 6, y, _layout.Width, y, Palette.Line, 0.8),
                Svg.Text(_layout.Left - 12, y + (size * 0.35), told, size, Palette.Soft, "end")
                    .With(("class", "level"), ("data-level", DataOf(level)))
            );
        }
    }

    // On a tape at even centimetres, in a scheme at each of its zones.
    private IEnumerable<Level> TicksOf(LadderSection section, double from, double to)
    {
        if (section.Zones is { } scheme)
        {
            foreach (int ordinal in Enumerable.Range(0, ZoneSchemes.NamesOf(scheme).Count))
            {
                Level zone = new(new Zone(scheme, ordinal));
                if (zone.Position.Value >= from && zone.Position.Value <= to)
                {
                    yield return zone;
                }
            }

            yield break;
        }

        double step = new[] { 1.0, 2, 5, 10 }.First(step => step >= 10 || step * _layout.PixelsPerCm >= _layout.SmallSize + 14);
        for (double level = Math.Ceiling(from / step) * step; level <= to; level += step)
        {
            yield return new Level(new Centimetres(level));
        }
    }

    private static object DataOf(Level level) => level.Zone is { } zone ? zone.Name : level.Position.Value;

    /// <summary>The shape between neighbouring rungs. It stops where a place was not read or has no area: nothing is drawn over the unknown.</summary>
    private void Silhouettes(XElement scenery, LadderSection section)
    {
        // Its area is a volume, and zones have none without a length.
        if (section.Zones is not null && _course.ZoneLength is null)
        {
            return;
        }

        foreach (IGrouping<int, LadderItem> column in section.Items.Where(IsShown).GroupBy(item => item.Examination))
        {
            LadderItem[] down = [.. column.OrderBy(item => item.Y)];
            for (int i = 1; i < down.Length; i++)
            {
                (LadderItem above, LadderItem below) = (down[i - 1], down[i]);
                if (above.Mark != LadderMark.Bar || below.Mark != LadderMark.Bar || below.LevelCm - above.LevelCm > WidestGapCm)
                {
                    continue;
                }

                scenery.Add(LadderMarks.Between(above, below, above.HalfWidth, below.HalfWidth, Palette.Limb, 0.4, "limb-shape"));
                if (above.Share is { } shareAbove && below.Share is { } shareBelow && shareAbove + shareBelow > 0)
                {
                    scenery.Add(
                        LadderMarks.Between(
                            above,
                            below,
                            above.HalfWidth * shareAbove,
                            below.HalfWidth * shareBelow,
                            Palette.Ink,
                            0.22,
                            "lesion-shape"
                        )
                    );
                }
            }
        }
    }

    private void Links(XElement scenery, LadderSection section)
    {
        bool someChosen = _layout.Sections.SelectMany(each => each.Items).Any(item => IsChosen(item.Track));
        foreach (IGrouping<string, LadderItem> track in section.Items.GroupBy(item => item.Track.Id, StringComparer.Ordinal))
        {
            LadderItem[] across = [.. track.OrderBy(item => item.Examination)];
            bool chosen = IsChosen(across[0].Track);
            LadderItem? from = null;
            foreach (LadderItem item in across)
            {
                if (item.Step is null)
                {
                    continue;
                }

                if (from is not null)
                {
                    LadderItem[] through = [from, .. across.Where(other => Between(other, from, item)), item];
                    LadderLink link = new(through, item.Step, chosen, someChosen && !chosen);
                    scenery.Add(LadderMarks.Link(link, _layout, IsShown));
                }

                from = item;
            }
        }

        static bool Between(LadderItem item, LadderItem from, LadderItem to) =>
            item.Examination > from.Examination && item.Examination < to.Examination;
    }

    private XElement Rung(LadderItem item, TrackStep step)
    {
        LadderColumn column = _layout.Columns[item.Examination];
        bool chosenTrack = IsChosen(item.Track);
        bool chosen = chosenTrack && (_options.SelectedExaminations.Count == 0 || IsChosen(column));
        IReadOnlyList<string> lines = _words.LinesOf(step);
        XElement rung = Svg.Of(
            "g",
            ("class", chosen ? "rung chosen" : "rung"),
            ("role", _options.Interactive ? "button" : "img"),
            ("tabindex", _options.Interactive ? "0" : null),
            ("aria-pressed", _options.Interactive && chosen ? "true" : null),
            ("aria-label", string.Join(", ", lines)),
            ("data-track", item.Track.Id),
            ("data-examination", step.ExaminationId),
            ("data-level", DataOf(step.Place.Level)),
            ("data-readings", string.Join(' ', step.Place.Readings.Select(reading => reading.Id)))
        );
        rung.Add(Svg.Of("title").Saying(string.Join('\n', lines)));
        rung.Add(LadderMarks.HitArea(item, _layout));
        rung.Add(LadderMarks.Ring(item, _layout, chosen));
        rung.Add(LadderMarks.Of(item, _layout.RungHeight, Hatch));
        if (item.Label is { } label)
        {
            rung.Add(
                item.LabelBeside
                    ? Svg.Text(
                        item.X + item.HalfWidth + 3,
                        item.Y + (_layout.FigureSize * 0.35),
                        label,
                        _layout.FigureSize,
                        Palette.Ink,
                        kind: "share",
                        halo: true
                    )
                    : Svg.Text(
                        item.X,
                        item.Y - (_layout.RungHeight / 2) - 3.5,
                        label,
                        _layout.FigureSize,
                        Palette.Ink,
                        "middle",
                        kind: "share",
                        halo: true
                    )
            );
        }

        return rung;
    }

    private XElement Missing(LadderItem item)
    {
        LadderColumn column = _layout.Columns[item.Examination];
        string words = _words.MissingOf(item, column);
        string colour = item.NeedsLook ? Palette.Amber : Palette.Soft;
        XElement missing = Svg.Of(
            "g",
            ("class", item.NeedsLook ? "missing lesion-missing" : "missing"),
            ("role", "img"),
            ("aria-label", words),
            ("data-track", item.Track.Id),
            ("data-examination", column.ExaminationId)
        );
        missing.Add(Svg.Of("title").Saying(words));
        missing.Add(LadderMarks.NotReadBox(item.X, item.Y, item.HalfWidth, _layout.RungHeight, colour));
        if (_layout.RungHeight >= 10)
        {
            double size = Math.Min(_layout.FigureSize - 1, _layout.RungHeight);
            missing.Add(Svg.Text(item.X, item.Y + (size * 0.34), Drawings.NotRead, size, colour, "middle"));
        }

        return missing;
    }
}
