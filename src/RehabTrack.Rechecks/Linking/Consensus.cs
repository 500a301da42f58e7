namespace RehabTrack.Rechecks.Linking;

/// <summary>What the tracks of one path hold without one examination: the rows of its alignment.</summary>
internal sealed class Consensus
{
    public int Count { get; private set; }

    public List<TrackColumn> Columns { get; } = [];

    /// <summary>Mean position in the common tape, cm.</summary>
    public double[] Position { get; private set; } = [];

    /// <summary>Number of places behind the position.</summary>
    public int[] Readings { get; private set; } = [];

    public double[] LogLigamentArea { get; private set; } = [];

    public int[] LigamentReadings { get; private set; } = [];

    public double[] LogThickness { get; private set; } = [];

    public int[] ThicknessReadings { get; private set; } = [];

    /// <summary>Lesion area at the size of the first examination, in units of the case's floor.</summary>
    public double[] Lesion { get; private set; } = [];

    public int[] LesionReadings { get; private set; } = [];

    /// <summary>How many more of the readings were taken before the examination left out than after it.</summary>
    public int[] Earlier { get; private set; } = [];

    /// <summary>The number of other examinations that read this path where the track lies; at least the readings.</summary>
    public int[] Looks { get; private set; } = [];

    /// <summary>Gathers the columns of a path without one examination, or of all for −1; columns that only it stands on are left out.</summary>
    public void Gather(CourseState state, int path, int without)
    {
        Columns.Clear();
        Resize(state.Columns[path].Count);
        foreach (TrackColumn column in state.Columns[path])
        {
            if (column.Count > (without < 0 || column.Members[without] is null ? 0 : 1))
            {
                Add(state, path, without, column);
            }
        }

        Count = Columns.Count;
        CountLooks(state, path, without);
    }

    private void Resize(int count)
    {
        if (Position.Length >= count)
        {
            return;
        }

        count += 8;
        Position = new double[count];
        Readings = new int[count];
        LogLigamentArea = new double[count];
        LigamentReadings = new int[count];
        LogThickness = new double[count];
        ThicknessReadings = new int[count];
        Lesion = new double[count];
        LesionReadings = new int[count];
        Looks = new int[count];
        Earlier = new int[count];
    }

    private void Add(CourseState state, int path, int without, TrackColumn column)
    {
        int row = Columns.Count;
        Columns.Add(column);
        double position = 0;
        double ligament = 0;
        double thickness = 0;
        double lesion = 0;
        double lesionSize = 0;
        int readings = 0;
        int earlier = 0;
        int ligaments = 0;
        int thicknesses = 0;
        int lesions = 0;
        foreach (PlaceNode? place in column.Members)
        {
            if (place is null || place.Examination == without)
            {
                continue;
            }

            int e = place.Examination;
            readings++;
            earlier += e < without ? 1 : -1;
            position += place.Level - state.Shift[e];
            if (!double.IsNaN(place.LogLigamentArea))
            {
                ligaments++;
                ligament += place.LogLigamentArea - state.LigamentSize[e];
            }

            if (!double.IsNaN(place.LogThickness))
            {
                thicknesses++;
                thickness += place.LogThickness;
            }

            if (!double.IsNaN(place.Lesion))
            {
                lesions++;
                lesion += place.Lesion;
                lesionSize += Math.Exp(state.LesionSize[path][e]);
            }
        }

        Position[row] = position / readings;
        Readings[row] = readings;
        Earlier[row] = earlier;
        LogLigamentArea[row] = ligaments > 0 ? ligament / ligaments : double.NaN;
        LigamentReadings[row] = ligaments;
        LogThickness[row] = thicknesses > 0 ? thickness / thicknesses : double.NaN;
        ThicknessReadings[row] = thicknesses;
        Lesion[row] = lesions > 0 ? lesion / lesionSize : double.NaN;
        LesionReadings[row] = lesions;
    }

    private void CountLooks(CourseState state, int path, int without)
    {
        Looks.AsSpan(0, Count).Clear();
        double margin = state.Spacing[path] / 2;
        for (int e = 0; e < state.Examinations.Count; e++)
        {
            PlaceNode[] places = state.Places[e][path];
            if (e == without || !state.Placed[e] || places.Length == 0)
            {
                continue;
            }

            double first = places[0].Level - state.Shift[e] - margin;
            double last = places[^1].Level - state.Shift[e] + margin;
            for (int row = 0; row < Count; row++)
            {
                if (Position[row] >= first && Position[row] <= last)
                {
                    Looks[row]++;
                }
            }
        }

        for (int row = 0; row < Count; row++)
        {
            Looks[row] = Math.Max(Looks[row], Readings[row]);
        }
    }
}
