using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Linking;
using RehabTrack.Reports.Pictures;
using RehabTrack.Wording;

namespace RehabTrack.Reports.Ladder;

/// <summary>
/// Where everything of a ladder stands. One scale of areas and one scale of levels holds for all examinations and paths, shown or not, so
/// that moving the window never changes a length.
/// </summary>
internal sealed class LadderLayout
{
    private const int MostColumnsOnDesktop = 10;
    private const int MostColumnsOnPhone = 3;
    private const double TallestSection = 640;

    private LadderLayout(LadderOptions options) => Options = options;

    public LadderOptions Options { get; }
    public bool Phone => Options.Width == WidthClass.Phone;
    public double Width => Phone ? 380 : 760;
    public double Left => Phone ? 40 : 60;
    public double FigureSize => Phone ? 14 : 12.5;
    public double HeadingSize => Phone ? 16 : 13.5;
    public double SmallSize => Phone ? 13 : 12;
    public double HeaderHeight { get; private set; }
    public double Spacing { get; private set; }
    public double PixelsPerCm { get; private set; }
    public double PixelsPerCm2 { get; private set; }
    public double RungHeight { get; private set; }
    public double Bottom { get; private set; }
    public int FirstShown { get; private set; }
    public IReadOnlyList<LadderColumn> Columns { get; private set; } = [];
    public IReadOnlyList<LadderSection> Sections { get; private set; } = [];
    public IEnumerable<LadderColumn> ShownColumns => Columns.Where(column => column.Shown);

    public static LadderLayout Of(CaseCourse course, CaseAnalysis analysis, LadderOptions options)
    {
        LadderLayout layout = new(options);
        layout.PlaceColumns(course, analysis);
        layout.ChooseScales(analysis);
        layout.PlaceSections(analysis);
        return layout;
    }

    public double YOf(LadderSection section, double levelCm) => section.Top + ((levelCm - section.FromCm) * PixelsPerCm);

    private void PlaceColumns(CaseCourse course, CaseAnalysis analysis)
    {
        Dictionary<string, Examination> byId = course.Examinations.ToDictionary(examination => examination.Id, StringComparer.Ordinal);
        Dictionary<string, DateOnly> dates = analysis.Burdens.ToDictionary(
            burden => burden.ExaminationId,
            burden => burden.Date,
            StringComparer.Ordinal
        );
        IReadOnlyList<ExaminationShift> shifts = analysis.Links.Shifts;
        int most = Phone ? MostColumnsOnPhone : MostColumnsOnDesktop;
        int shown = Math.Min(shifts.Count, most);
        FirstShown = Math.Clamp(Options.FirstShown ?? WithChosen(shifts), 0, shifts.Count - shown);
        Spacing = Math.Min((Width - Left) / Math.Max(shown, 1), 210);
        HeaderHeight = HeadingSize + (SmallSize + 4) * (Options.Straightened ? 2 : 1) + 6;
        DateOnly? first = null;
        List<LadderColumn> columns = [];
        for (int i = 0; i < shifts.Count; i++)
        {
            string id = shifts[i].ExaminationId;
            Examination? examination = byId.GetValueOrDefault(id);
            DateOnly date = examination?.Date ?? dates[id];
            first ??= date;
            columns.Add(
                new LadderColumn(
                    i,
                    id,
                    date,
                    date.DayNumber - first.Value.DayNumber,
                    // Zones have no tape that could be shifted.
                    examination?.Zones
                        is null
                        ? (shifts[i].Shift - shifts[i].LandmarkOffset).Value
                        : 0,
                    examination,
                    Left + (Spacing * (i - FirstShown + 0.5)),
                    i >= FirstShown && i < FirstShown + shown
                )
            );
        }

        Columns = columns;
    }

    /// <summary>The latest examinations that fit, moved back as far as the chosen one asks.</summary>
    private int WithChosen(IReadOnlyList<ExaminationShift> shifts)
    {
        string? chosen = Options.SelectedExaminations.FirstOrDefault();
        int index = shifts.ToList().FindIndex(shift => string.Equals(shift.ExaminationId, chosen, StringComparison.Ordinal));
        return index >= 0 ? index : shifts.Count;
    }

    private void ChooseScales(CaseAnalysis analysis)
    {
        double largest = analysis
            .Links.Tracks.SelectMany(track => track.Steps)
            .SelectMany(step => new[] { step.Place.LigamentArea?.Value ?? 0, step.Place.LesionArea.MeasuredArea?.Value ?? 0 })
            .DefaultIfEmpty(0)
            .Max();
        PixelsPerCm2 = largest > 0 ? Math.Min(Spacing * (Phone ? 0.64 : 0.6), 116) / largest : 0;

        double full = Phone ? 18 : 14;
        double wanted = full + FigureSize + 4;
        double narrowest = NarrowestGap(analysis);
        double widest = analysis
            .Links.Tracks.GroupBy(track => (track.Path, track.ConsensusLevel.Scheme))
            .Select(path => Range(path))
            .Select(range => range.To - range.From)
            .DefaultIfEmpty(1)
            .Max();
        double usual = Phone ? 24 : 20;
        PixelsPerCm = Math.Clamp(wanted / narrowest, usual, Phone ? 56 : 48);
        PixelsPerCm = Math.Min(PixelsPerCm, Math.Max(TallestSection / Math.Max(widest, 1), 9));
        RungHeight = Math.Clamp((narrowest * PixelsPerCm) - 3, 5, full);
    }

    private static double NarrowestGap(CaseAnalysis analysis)
    {
        double narrowest = double.PositiveInfinity;
        foreach (
            var column in analysis
                .Links.Tracks.SelectMany(track => track.Steps.Select(step => (track.Path, step)))
                .GroupBy(pair => (pair.Path, pair.step.ExaminationId))
        )
        {
            double[] levels = [.. column.Select(pair => pair.step.Place.Level.Position.Value).Order()];
            for (int i = 1; i < levels.Length; i++)
            {
                narrowest = Math.Min(narrowest, levels[i] - levels[i - 1]);
            }
        }

        return double.IsFinite(narrowest) ? Math.Max(narrowest, 0.1) : 2;
    }

    private (double From, double To) Range(IEnumerable<Track> tracks)
    {
        double[] levels =
        [
            .. tracks.SelectMany(track => track.Steps.Select(step => LevelOf(step)).Append(track.ConsensusLevel.Position.Value)),
        ];
        return (levels.Min(), levels.Max());
    }

    private double LevelOf(TrackStep step) => step.Place.Level.Position.Value - (Options.Straightened ? ShiftOf(step.ExaminationId) : 0);

    private double ShiftOf(string examinationId) =>
        Columns.First(column => string.Equals(column.ExaminationId, examinationId, StringComparison.Ordinal)).ShiftCm;

    private void PlaceSections(CaseAnalysis analysis)
    {
        Dictionary<string, ExaminationBurden> burdens = analysis.Burdens.ToDictionary(
            burden => burden.ExaminationId,
            StringComparer.Ordinal
        );
        IGrouping<(LinkPath Path, ZoneScheme? Zones), Track>[] paths =
        [
            .. analysis
                .Links.Tracks.GroupBy(track => (track.Path, Zones: track.ConsensusLevel.Scheme))
                .OrderBy(group => group.Key.Path)
                .ThenBy(group => group.Key.Zones),
        ];
        bool titled = paths.Length > 1 || paths.Any(path => path.Key.Path is LinkPath.MedialBranch or LinkPath.LateralBranch);
        double y = HeaderHeight;
        List<LadderSection> sections = [];
        foreach (IGrouping<(LinkPath Path, ZoneScheme? Zones), Track> path in paths)
        {
            LadderItem[] items = [.. path.SelectMany(track => ItemsOf(track, burdens))];
            double from = items.Min(item => item.LevelCm);
            double to = items.Max(item => item.LevelCm);
            double titleY = y + SmallSize + 10;
            double top = y + (titled ? SmallSize + 18 : 0) + FigureSize + (RungHeight / 2) + 4;
            double bottom = top + ((to - from) * PixelsPerCm);
            LadderSection section = new(path.Key.Path, path.Key.Zones, from, to, titled ? titleY : 0, top, bottom) { Items = items };
            foreach (LadderItem item in items)
            {
                item.X = Columns[item.Examination].X;
                item.Y = YOf(section, item.LevelCm);
            }

            KeepApart(items);
            sections.Add(section);
            y = bottom + (RungHeight / 2) + 14;
        }

        Sections = sections;
        Bottom = y;
    }

    private IEnumerable<LadderItem> ItemsOf(Track track, IReadOnlyDictionary<string, ExaminationBurden> burdens)
    {
        Dictionary<string, TrackStep> steps = track.Steps.ToDictionary(step => step.ExaminationId, StringComparer.Ordinal);
        LadderColumn first = Columns.First(column => steps.ContainsKey(column.ExaminationId));
        LadderColumn last = Columns.Last(column => steps.ContainsKey(column.ExaminationId));
        bool followed = steps.Count > 1 || steps[last.ExaminationId].Place.IsAbnormal;
        foreach (LadderColumn column in Columns)
        {
            bool lesionMissed =
                burdens.TryGetValue(column.ExaminationId, out ExaminationBurden? burden)
                && burden.LesionTracksMissed.Contains(track.Id, StringComparer.Ordinal);
            if (steps.TryGetValue(column.ExaminationId, out TrackStep? step))
            {
                yield return ItemOf(track, column, step);
            }
            // An examination that tells its levels in another way did not leave this one out.
            else if (column.Examination is { } examination && examination.Zones != track.ConsensusLevel.Scheme)
            {
                continue;
            }
            else if (lesionMissed || (column.Index > first.Index && (column.Index < last.Index || followed)))
            {
                yield return new LadderItem
                {
                    Track = track,
                    Examination = column.Index,
                    Step = null,
                    LevelCm = track.ConsensusLevel.Position.Value + (Options.Straightened ? 0 : column.ShiftCm),
                    Mark = LadderMark.NotRead,
                    HalfWidth = (Svg.WidthOf(Drawings.NotRead, FigureSize - 1) / 2) + 5,
                    Share = null,
                    Label = Drawings.NotRead,
                    NeedsLook = lesionMissed,
                };
            }
        }
    }

    private LadderItem ItemOf(Track track, LadderColumn column, TrackStep step)
    {
        Place place = step.Place;
        double? ligament = place.LigamentArea?.Value;
        double? lesion = place.LesionArea.MeasuredArea?.Value;
        double? percent = place.LesionPercent?.Value;
        LadderMark mark =
            ligament > 0 ? LadderMark.Bar
            : lesion > 0 ? LadderMark.LesionBar
            : percent is not null || place.LesionArea.Kind == LesionAreaKind.Diffuse ? LadderMark.ShareDisc
            : place.Thickness is not null || place.Width is not null ? LadderMark.Calliper
            : place.Echogenicity is not null || place.FibreAlignment is not null ? LadderMark.Grades
            : LadderMark.Nothing;
        double? share =
            mark is LadderMark.LesionBar ? 1
            : percent is { } known ? Math.Clamp(known / 100, 0, 1)
            : lesion is { } area && ligament is { } whole and > 0 ? Math.Clamp(area / whole, 0, 1)
            : null;
        string? label = LabelOf(place, mark);
        return new LadderItem
        {
            Track = track,
            Examination = column.Index,
            Step = step,
            LevelCm = LevelOf(step),
            Mark = mark,
            HalfWidth = mark switch
            {
                LadderMark.Bar => ligament!.Value * PixelsPerCm2 / 2,
                LadderMark.LesionBar => Math.Max(lesion!.Value * PixelsPerCm2 / 2, 1),
                LadderMark.Nothing => 4,
                _ => Math.Min((RungHeight / 2) + 1, 9),
            },
            Share = share,
            Label = label,
            NeedsLook = step.Uncertain,
        };
    }

    private string? LabelOf(Place place, LadderMark mark) =>
        place.LesionArea.Kind == LesionAreaKind.Diffuse
            ? Drawings.Diffuse
            : mark switch
            {
                LadderMark.LesionBar => Figures.Area(place.LesionArea.MeasuredArea, null, Options.Culture),
                LadderMark.Calliper => Figures.Length(place.Thickness ?? place.Width, null, Options.Culture),
                LadderMark.Grades => place.Echogenicity is not null
                    ? string.Format(Options.Culture, Drawings.GradeEchogenicity, place.Echogenicity.Value)
                    : string.Format(Options.Culture, Drawings.GradeFibre, place.FibreAlignment!.Value),
                LadderMark.Bar or LadderMark.ShareDisc => place.LesionPercent switch
                {
                    null => Drawings.LesionUnknownMark,
                    { Value: 0 } => mark == LadderMark.ShareDisc ? Figures.Percent(place.LesionPercent, null, Options.Culture) : null,
                    { Value: < 0.5 } => Drawings.UnderOnePercent,
                    { } percent => Figures.Percent(percent, null, Options.Culture),
                },
                LadderMark.Nothing or LadderMark.NotRead => null,
            };

    /// <summary>A missing place gives way to the places that were read; a label that has no room above its bar stands beside it.</summary>
    private void KeepApart(LadderItem[] items)
    {
        foreach (IGrouping<int, LadderItem> column in items.GroupBy(item => item.Examination))
        {
            LadderItem[] down = [.. column.OrderBy(item => item.Y).ThenBy(item => item.Track.ConsensusLevel).ThenBy(item => item.Track.Id)];
            double apart = RungHeight + 3;
            for (int i = 0; i < down.Length; i++)
            {
                if (down[i].Step is not null)
                {
                    continue;
                }

                double above = i > 0 ? down[i - 1].Y + apart : double.NegativeInfinity;
                LadderItem? next = down.Skip(i + 1).FirstOrDefault(item => item.Step is not null);
                double below = next is not null ? next.Y - apart : double.PositiveInfinity;
                down[i].Y = above <= below ? Math.Clamp(down[i].Y, above, below) : (above + below) / 2;
            }

            for (int i = 0; i < down.Length; i++)
            {
                double above = i > 0 ? down[i].Y - down[i - 1].Y : double.PositiveInfinity;
                double below = i + 1 < down.Length ? down[i + 1].Y - down[i].Y : double.PositiveInfinity;
                down[i].Room = Math.Min(above, below);
                if (down[i].Label is { } label && down[i].Mark != LadderMark.NotRead)
                {
                    down[i].LabelWidth = Svg.WidthOf(label, FigureSize);
                    down[i].LabelBeside = above < RungHeight + FigureSize;
                }
            }
        }
    }
}
