using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Linking;

/// <summary>Builds the tracks of one case: aligns, places, refines, and tells how sure it is.</summary>
internal sealed class CourseLinker(CourseState state, LinkingSettings settings) : IDisposable
{
    private readonly ExaminationAligner _aligner = new(settings, state.PathCount);
    private readonly LinkTerms _terms = new(settings);
    private readonly Consensus _all = new();
    private readonly double[] _shiftVariance = new double[state.Examinations.Count];

    /// <summary>Finds the tracks.</summary>
    public LinkedCourse Run()
    {
        SeedPinnedColumns();
        for (int e = 0; e < state.Examinations.Count; e++)
        {
            Realign(e);
            Refit();
        }

        Untangle();
        Merge();
        bool settled = false;
        for (int pass = 0; !settled && pass < settings.LargestPasses; pass++)
        {
            settled = true;
            for (int e = 0; e < state.Examinations.Count; e++)
            {
                settled &= !Realign(e);
            }

            Refit();
            Untangle();
            settled &= !Merge();
        }

        for (int e = 0; e < state.Examinations.Count; e++)
        {
            if (!settled)
            {
                _aligner.Align(state, e);
                Keep(e);
            }

            JudgePinnedGroups(e);
        }

        return Assemble();
    }

    /// <inheritdoc />
    public void Dispose() => _aligner.Dispose();

    /// <summary>Each group of pinned places is a track from the start.</summary>
    private void SeedPinnedColumns()
    {
        foreach (IReadOnlyList<PlaceNode> group in state.Pins.InOrder())
        {
            TrackColumn column = new(group[0].Path, state.Examinations.Count);
            foreach (PlaceNode place in group)
            {
                column.Add(place);
            }

            state.Columns[column.Path].Add(column);
        }
    }

    /// <summary>Aligns an examination with the tracks of the others and puts its places there.</summary>
    /// <returns>Whether any place changed its company.</returns>
    private bool Realign(int e)
    {
        _aligner.Align(state, e);
        double shift = state.Shift[e];
        state.Shift[e] = state.Places[e].Any(places => places.Length > 0) ? _aligner.Shift : 0;
        state.LigamentSize[e] = _aligner.LigamentSize;
        bool changed = !state.Placed[e];
        state.Placed[e] = true;
        for (int path = 0; path < state.PathCount; path++)
        {
            state.LesionSize[path][e] = _aligner.LesionSize[path];
            changed |= Put(e, path);
        }

        if (!changed)
        {
            state.Shift[e] = shift;
        }

        Keep(e);
        return changed;
    }

    private bool Put(int e, int path)
    {
        PlaceNode[] places = state.Places[e][path];
        Consensus consensus = _aligner.Consensus[path];
        int[] links = _aligner.Links[path];
        bool changed = false;
        for (int j = 0; j < places.Length; j++)
        {
            TrackColumn? target = links[j] >= 0 ? consensus.Columns[links[j]] : null;
            TrackColumn? now = places[j].Column;
            changed |= target is null ? now is null or { Count: > 1 } : target != now;
        }

        if (!changed)
        {
            return false;
        }

        List<TrackColumn> columns = state.Columns[path];
        foreach (PlaceNode place in places)
        {
            place.Column?.Remove(place);
        }

        columns.RemoveAll(column => column.Count == 0);
        for (int j = 0; j < places.Length; j++)
        {
            if (links[j] >= 0)
            {
                consensus.Columns[links[j]].Add(places[j]);
            }
        }

        int from = 0;
        for (int j = 0; j < places.Length; j++)
        {
            if (places[j].Column is { } linked)
            {
                from = columns.IndexOf(linked) + 1;
                continue;
            }

            int to = from;
            double position = places[j].Level - state.Shift[e];
            while (to < columns.Count && columns[to].Members[e] is null && Position(columns[to]) < position)
            {
                to++;
            }

            TrackColumn opened = new(path, state.Examinations.Count);
            opened.Add(places[j]);
            columns.Insert(to, opened);
            from = to + 1;
        }

        return true;
    }

    private double Position(TrackColumn column)
    {
        double sum = 0;
        foreach (PlaceNode? place in column.Members)
        {
            if (place is not null)
            {
                sum += place.Level - state.Shift[place.Examination];
            }
        }

        return sum / column.Count;
    }

    /// <summary>
    /// Positions and shifts that fit all places best, given the links: least squares with the prior on the shifts, positions eliminated.
    /// </summary>
    private void Refit()
    {
        ShiftFit fit = ShiftFit.Of(state, settings);
        for (int e = 0; e < state.Shift.Length; e++)
        {
            state.Shift[e] = fit.Shift(e);
        }
    }

    /// <summary>Sorts neighbouring tracks by position where no examination saw both, so that nothing forbids it.</summary>
    private void Untangle()
    {
        foreach (List<TrackColumn> columns in state.Columns)
        {
            bool swapped = true;
            for (int round = 0; swapped && round < columns.Count; round++)
            {
                swapped = false;
                for (int i = 0; i + 1 < columns.Count; i++)
                {
                    if (Position(columns[i]) > Position(columns[i + 1]) && !columns[i].Meets(columns[i + 1]))
                    {
                        (columns[i], columns[i + 1]) = (columns[i + 1], columns[i]);
                        swapped = true;
                    }
                }
            }
        }
    }

    /// <summary>Joins neighbouring tracks that no examination saw both of, when one place explains them better than two.</summary>
    private bool Merge()
    {
        bool merged = false;
        for (int path = 0; path < state.PathCount; path++)
        {
            while (MergeBest(path))
            {
                merged = true;
            }
        }

        return merged;
    }

    private bool MergeBest(int path)
    {
        List<TrackColumn> columns = state.Columns[path];
        _all.Gather(state, path, -1);
        int best = -1;
        double bestOdds = 0;
        for (int i = 0; i + 1 < columns.Count; i++)
        {
            if (!columns[i].Meets(columns[i + 1]) && !AreBroken(columns[i], columns[i + 1]))
            {
                double odds = _terms.LogOddsOfOne(_all, i, i + 1, state.Spacing[path]);
                if (odds > bestOdds)
                {
                    (best, bestOdds) = (i, odds);
                }
            }
        }

        if (best < 0)
        {
            return false;
        }

        foreach (PlaceNode? place in columns[best + 1].Members)
        {
            if (place is not null)
            {
                columns[best].Add(place);
            }
        }

        columns.RemoveAt(best + 1);
        return true;
    }

    private bool AreBroken(TrackColumn first, TrackColumn second)
    {
        foreach (PlaceNode? place in second.Members)
        {
            if (place is not null && state.Pins.Forbids(first, place))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Keeps what the last alignment says of an examination's places, where they stand now.</summary>
    private void Keep(int e)
    {
        _shiftVariance[e] = _aligner.ShiftVariance;
        foreach (PlaceNode[] places in state.Places[e])
        {
            for (int j = 0; j < places.Length; j++)
            {
                Keep(places, j);
            }
        }
    }

    private void Keep(PlaceNode[] places, int j)
    {
        PlaceNode place = places[j];
        Consensus consensus = _aligner.Consensus[place.Path];
        place.Others.Clear();
        place.Probability = 0;
        for (int row = 0; row < consensus.Count; row++)
        {
            double probability = Math.Clamp(_aligner.Probabilities[place.Path][(row * places.Length) + j], 0, 1);
            if (consensus.Columns[row] == place.Column)
            {
                place.Probability = probability;
            }
            else if (probability >= settings.AlternativeFrom)
            {
                place.Others.Add((consensus.Columns[row], probability));
            }
        }
    }

    /// <summary>
    /// The first place of a pinned group on a track is held there by the pins to later ones. How sure the group's link to the earlier
    /// places is comes out when that place is aligned on its own, without the rest of its group.
    /// </summary>
    private void JudgePinnedGroups(int e)
    {
        List<(PlaceNode Place, int Index, int Group)> leaders = [];
        List<(PlaceNode Place, TrackColumn Column)> away = [];
        foreach (PlaceNode[] places in state.Places[e])
        {
            for (int j = 0; j < places.Length; j++)
            {
                if (places[j].Group >= 0 && IsLeader(places[j]))
                {
                    leaders.Add((places[j], j, places[j].Group));
                }
            }
        }

        foreach ((PlaceNode leader, _, int group) in leaders)
        {
            TrackColumn column = leader.Column!;
            foreach (PlaceNode other in state.Pins.Groups[group].Where(other => other != leader))
            {
                column.Remove(other);
                away.Add((other, column));
            }

            leader.Group = -1;
        }

        if (leaders.Count == 0)
        {
            return;
        }

        _aligner.Align(state, e);
        foreach ((PlaceNode leader, int index, int group) in leaders)
        {
            Keep(state.Places[e][leader.Path], index);
            leader.Group = group;
        }

        away.ForEach(entry => entry.Column.Add(entry.Place));
    }

    /// <summary>Whether a place is the first of its group on its track, with places before it that no pin ties to it.</summary>
    private static bool IsLeader(PlaceNode place)
    {
        foreach (PlaceNode? member in place.Column!.Members)
        {
            if (member is not null && (member == place || member.Group == place.Group))
            {
                return member == place && place.Column.First != place;
            }
        }

        return false;
    }

    private LinkedCourse Assemble()
    {
        ShiftFit fit = ShiftFit.Of(state, settings);
        int reference = Math.Max(0, Array.FindIndex(state.Places, paths => paths.Any(places => places.Length > 0)));
        Dictionary<TrackColumn, (string Id, double Level)> named = [];
        List<(TrackColumn Column, LinkPath Path)> ordered = [];
        foreach (List<TrackColumn> columns in state.Columns)
        {
            double[] levels = ConsensusLevels(columns, fit, reference);
            for (int i = 0; i < columns.Count; i++)
            {
                LinkPath path = columns[i].First.Place.Key.Path;
                named[columns[i]] = ($"{PathWord(path)}-{i + 1}", levels[i]);
                ordered.Add((columns[i], path));
            }
        }

        return new LinkedCourse(
            [
                .. ordered.Select(entry => new Track(
                    named[entry.Column].Id,
                    entry.Path,
                    PartOf(entry.Column),
                    Level.At(new Centimetres(named[entry.Column].Level), state.Zones),
                    StepsOf(entry.Column, named)
                )),
            ],
            [
                .. state.Examinations.Select(
                    (examination, e) =>
                        new ExaminationShift(
                            examination.Id,
                            new Centimetres(fit.Difference(e, reference)),
                            new Centimetres(Math.Sqrt(fit.DifferenceVariance(e, reference, _shiftVariance[e])))
                        )
                        {
                            LandmarkOffset = new Centimetres(state.Offsets[e]),
                        }
                ),
            ]
        )
        {
            LeftOut = state.Pins.LeftOut,
        };
    }

    /// <summary>
    /// Positions in the first examination's tape. Where they would contradict the order along the path, neighbours share their mean.
    /// </summary>
    private double[] ConsensusLevels(List<TrackColumn> columns, ShiftFit fit, int reference)
    {
        List<(double Sum, int Weight, int Count)> pools = [];
        foreach (TrackColumn column in columns)
        {
            double sum = 0;
            foreach (PlaceNode? place in column.Members)
            {
                sum += place is null ? 0 : place.Level - fit.Difference(place.Examination, reference);
            }

            (double Sum, int Weight, int Count) pool = (sum, column.Count, 1);
            while (pools.Count > 0 && pools[^1].Sum / pools[^1].Weight > pool.Sum / pool.Weight)
            {
                pool = (pool.Sum + pools[^1].Sum, pool.Weight + pools[^1].Weight, pool.Count + pools[^1].Count);
                pools.RemoveAt(pools.Count - 1);
            }

            pools.Add(pool);
        }

        return [.. pools.SelectMany(pool => Enumerable.Repeat(pool.Sum / pool.Weight, pool.Count))];
    }

    private List<TrackStep> StepsOf(TrackColumn column, Dictionary<TrackColumn, (string Id, double Level)> named)
    {
        List<TrackStep> steps = [];
        HashSet<int> pinned = [];
        PlaceNode first = column.First;
        foreach (PlaceNode? place in column.Members)
        {
            if (place is null)
            {
                continue;
            }

            LinkBasis basis =
                place == first ? LinkBasis.First
                : place.Group >= 0 && pinned.Contains(place.Group) ? LinkBasis.Pinned
                : LinkBasis.Computed;
            pinned.Add(place.Group);
            steps.Add(StepOf(place, basis, named));
        }

        return steps;
    }

    private TrackStep StepOf(PlaceNode place, LinkBasis basis, Dictionary<TrackColumn, (string Id, double Level)> named)
    {
        double elsewhere = place.Others.Where(other => other.Column.First.Examination < place.Examination).Sum(other => other.Probability);
        bool uncertain =
            basis == LinkBasis.Computed && place.Probability < settings.UncertainBelow
            || basis == LinkBasis.First && elsewhere > 1 - settings.UncertainBelow;
        return new TrackStep
        {
            ExaminationId = state.Examinations[place.Examination].Id,
            Date = state.Examinations[place.Examination].Date,
            Place = place.Place,
            LinkProbability = basis switch
            {
                LinkBasis.First => null,
                LinkBasis.Pinned => 1,
                LinkBasis.Computed => place.Probability,
            },
            Basis = basis,
            Uncertain = uncertain,
            Alternatives = uncertain
                ?
                [
                    .. place
                        .Others.OrderByDescending(other => other.Probability)
                        .ThenBy(other => named[other.Column].Level)
                        .Select(other => new LinkAlternative(
                            named[other.Column].Id,
                            Level.At(new Centimetres(named[other.Column].Level), state.Zones),
                            other.Probability
                        )),
                ]
                : [],
        };
    }

    private static Part PartOf(TrackColumn column)
    {
        Span<int> counts = stackalloc int[Enum.GetValues<Part>().Length];
        foreach (PlaceNode? place in column.Members)
        {
            if (place is not null)
            {
                counts[(int)place.Place.Part]++;
            }
        }

        int best = 0;
        for (int part = 1; part < counts.Length; part++)
        {
            if (counts[part] > counts[best])
            {
                best = part;
            }
        }

        return (Part)best;
    }

    private static string PathWord(LinkPath path) =>
        path switch
        {
            LinkPath.Axial => "axial",
            LinkPath.MedialBranch => "medial-branch",
            LinkPath.LateralBranch => "lateral-branch",
            LinkPath.Whole => "whole",
        };
}
