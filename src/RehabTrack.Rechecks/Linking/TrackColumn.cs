namespace RehabTrack.Rechecks.Linking;

/// <summary>A track under construction: at most one place an examination.</summary>
internal sealed class TrackColumn(int path, int examinations)
{
    private readonly PlaceNode?[] _members = new PlaceNode?[examinations];

    public int Path { get; } = path;

    public int Count { get; private set; }

    /// <summary>By index of the examination.</summary>
    public ReadOnlySpan<PlaceNode?> Members => _members;

    /// <summary>The first place by date and id.</summary>
    public PlaceNode First => Array.Find(_members, member => member is not null)!;

    public void Add(PlaceNode place)
    {
        _members[place.Examination] = place;
        place.Column = this;
        Count++;
    }

    public void Remove(PlaceNode place)
    {
        _members[place.Examination] = null;
        place.Column = null;
        Count--;
    }

    /// <summary>Whether some examination has a place on both.</summary>
    public bool Meets(TrackColumn other)
    {
        for (int e = 0; e < _members.Length; e++)
        {
            if (_members[e] is not null && other._members[e] is not null)
            {
                return true;
            }
        }

        return false;
    }
}
