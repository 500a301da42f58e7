using RehabTrack.Rechecks.Linking;
using RehabTrack.Simulation.Cases;

namespace RehabTrack.Simulation.Scores;

/// <summary>Links found against true links, over many simulated ligaments.</summary>
public sealed class LinkScore
{
    private int _true;
    private int _found;
    private int _right;
    private int _farTrue;
    private int _farFound;
    private int _farRight;
    private int _sure;
    private int _struckTrue;
    private int _struckRight;
    private int _struckAsked;
    private int _sureRight;

    /// <summary>F1 over neighbouring examinations.</summary>
    public double F1 => 2.0 * _right / (_true + _found);

    public double Recall => (double)_right / _true;

    public double Precision => (double)_right / _found;

    /// <summary>Recall of the links from the last examination to the first.</summary>
    public double FarRecall => (double)_farRight / _farTrue;

    /// <summary>Precision of the links from the last examination to the first.</summary>
    public double FarPrecision => (double)_farRight / _farFound;

    /// <summary>Share of links said at least .9 that are right.</summary>
    public double SureRight => (double)_sureRight / _sure;

    /// <summary>Recall of the link of the struck place, from the second to the third examination.</summary>
    public double StruckRecall => (double)_struckRight / _struckTrue;

    /// <summary>The same, counting those too that the page asks about.</summary>
    public double StruckLinkedOrAsked => (double)(_struckRight + _struckAsked) / _struckTrue;

    /// <summary>Share of the links found that are said at least .9.</summary>
    public double SureShare => (double)_sure / _found;

    public void Add(SimulatedLigament ligament, LinkedCourse course)
    {
        Dictionary<(int Examination, int Place), int> tracks = [];
        int last = ligament.Examinations.Count - 1;
        Dictionary<string, int> index = ligament
            .Examinations.Select((exam, e) => (exam.Id, e))
            .ToDictionary(pair => pair.Id, pair => pair.e, StringComparer.Ordinal);
        HashSet<(int, int)> seen = [];
        foreach (var (exam, e) in ligament.Examinations.Select((exam, e) => (exam, e)))
        {
            foreach (var reading in exam.Readings)
            {
                int place = ligament.PlaceOf(reading.Id);
                seen.Add((e, place));
            }
        }

        _true += seen.Count(at => at.Item1 > 0 && seen.Contains((at.Item1 - 1, at.Item2)));
        _farTrue += seen.Count(at => at.Item1 == last && seen.Contains((0, at.Item2)));
        CountStruck(ligament, course);
        foreach (Track track in course.Tracks)
        {
            var steps = track
                .Steps.Select(step =>
                    (Examination: index[step.ExaminationId], Place: ligament.PlaceOf(step.Place.Readings[0].Id), step.LinkProbability)
                )
                .ToList();
            foreach (var step in steps)
            {
                foreach (var other in steps)
                {
                    if (other.Examination == step.Examination - 1)
                    {
                        _found++;
                        _right += other.Place == step.Place ? 1 : 0;
                    }

                    if (step.Examination == last && other.Examination == 0)
                    {
                        _farFound++;
                        _farRight += other.Place == step.Place ? 1 : 0;
                    }
                }

                if (step.LinkProbability >= 0.9)
                {
                    _sure++;
                    int majority = steps
                        .Where(other => other.Examination != step.Examination)
                        .GroupBy(other => other.Place)
                        .OrderByDescending(group => group.Count())
                        .ThenBy(group => group.Key)
                        .First()
                        .Key;
                    _sureRight += majority == step.Place ? 1 : 0;
                }
            }
        }
    }

    /// <summary>Whether the struck place of the third examination is linked to the second's, or else one of the two is uncertain.</summary>
    private void CountStruck(SimulatedLigament ligament, LinkedCourse course)
    {
        (Track Track, TrackStep Step)? Find(int examination)
        {
            foreach (Track track in course.Tracks)
            {
                foreach (TrackStep step in track.Steps)
                {
                    if (
                        step.ExaminationId == ligament.Examinations[examination].Id
                        && ligament.PlaceOf(step.Place.Readings[0].Id) == ligament.StruckPlace
                    )
                    {
                        return (track, step);
                    }
                }
            }

            return null;
        }

        if (Find(1) is { } before && Find(2) is { } struck)
        {
            _struckTrue++;
            _struckRight += before.Track == struck.Track ? 1 : 0;
            _struckAsked += before.Track != struck.Track && (before.Step.Uncertain || struck.Step.Uncertain) ? 1 : 0;
        }
    }
}
