namespace RehabTrack.Rechecks.Linking;

/// <summary>
/// What persons said about links, made consistent: pinned places gather into groups that stand on one track, broken pairs are kept
/// apart. Words are taken in the order given; one that contradicts those before it is left out.
/// </summary>
internal sealed class PinGroups
{
    private readonly List<List<PlaceNode>> _groups = [];
    private readonly HashSet<(PlaceNode, PlaceNode)> _broken = [];
    private readonly List<LeftOutConstraint> _leftOut = [];

    /// <summary>Groups of at least two places; a group that was merged into another is empty.</summary>
    public IReadOnlyList<IReadOnlyList<PlaceNode>> Groups => _groups;

    public IReadOnlyList<LeftOutConstraint> LeftOut => _leftOut;

    public bool HasBreaks => _broken.Count > 0;

    public static PinGroups Of(IReadOnlyDictionary<Exams.PlaceKey, PlaceNode> places, IReadOnlyList<LinkConstraint> constraints)
    {
        PinGroups groups = new();
        foreach (LinkConstraint constraint in constraints)
        {
            if (groups.Refuse(places, constraint) is { } reason)
            {
                groups._leftOut.Add(new LeftOutConstraint(constraint, reason));
            }
        }

        return groups;
    }

    public bool AreBroken(PlaceNode first, PlaceNode second) => _broken.Contains((first, second));

    /// <summary>Whether a broken pair keeps a place off a column.</summary>
    public bool Forbids(TrackColumn column, PlaceNode place)
    {
        if (!HasBreaks)
        {
            return false;
        }

        foreach (PlaceNode? member in column.Members)
        {
            if (member is not null && AreBroken(member, place))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>The groups, from proximal to distal as far as the examinations tell, else by their mean level.</summary>
    public IEnumerable<IReadOnlyList<PlaceNode>> InOrder()
    {
        List<List<PlaceNode>> left = [.. _groups.Where(group => group.Count > 0)];
        while (left.Count > 0)
        {
            List<PlaceNode> next = left.Where(group => !left.Exists(other => other != group && IsAbove(other, group)))
                .OrderBy(group => group.Average(place => place.Level))
                .ThenBy(group => group.Min(place => place.Examination))
                .First();
            left.Remove(next);
            yield return next;
        }
    }

    private LeftOutReason? Refuse(IReadOnlyDictionary<Exams.PlaceKey, PlaceNode> places, LinkConstraint constraint)
    {
        if (!places.TryGetValue(constraint.First, out PlaceNode? first) || !places.TryGetValue(constraint.Second, out PlaceNode? second))
        {
            return LeftOutReason.PlaceNotFound;
        }

        if (first.Path != second.Path)
        {
            return LeftOutReason.DifferentPaths;
        }

        if (first.Examination == second.Examination)
        {
            return LeftOutReason.SameExamination;
        }

        bool together = first.Group >= 0 && first.Group == second.Group;
        if (constraint.Kind == LinkConstraintKind.Break)
        {
            if (together)
            {
                return LeftOutReason.Contradicted;
            }

            _broken.Add((first, second));
            _broken.Add((second, first));
            return null;
        }

        return together ? null : Pin(first, second);
    }

    private LeftOutReason? Pin(PlaceNode first, PlaceNode second)
    {
        List<PlaceNode> joined = [.. Members(first), .. Members(second)];
        if (joined.Exists(place => joined.Exists(other => AreBroken(place, other))))
        {
            return LeftOutReason.Contradicted;
        }

        if (joined.DistinctBy(place => place.Examination).Count() < joined.Count)
        {
            return LeftOutReason.SameExamination;
        }

        List<List<PlaceNode>> after = [.. _groups.Where(group => !group.Contains(first) && !group.Contains(second)), joined];
        if (HasCycle(after))
        {
            return LeftOutReason.Crossing;
        }

        foreach (int group in (int[])[first.Group, second.Group])
        {
            if (group >= 0)
            {
                _groups[group] = [];
            }
        }

        joined.ForEach(place => place.Group = _groups.Count);
        _groups.Add(joined);
        return null;
    }

    private IEnumerable<PlaceNode> Members(PlaceNode place) => place.Group >= 0 ? _groups[place.Group] : [place];

    private static bool IsAbove(List<PlaceNode> group, List<PlaceNode> other) =>
        group.Exists(place =>
            other.Exists(second => second.Path == place.Path && second.Examination == place.Examination && place.Level < second.Level)
        );

    private static bool HasCycle(List<List<PlaceNode>> groups)
    {
        List<List<PlaceNode>> left = [.. groups.Where(group => group.Count > 0)];
        while (left.Count > 0)
        {
            int removed = left.RemoveAll(group => !left.Exists(other => other != group && IsAbove(other, group)));
            if (removed == 0)
            {
                return true;
            }
        }

        return false;
    }
}
