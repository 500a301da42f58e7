using RehabTrack.Records.History;

namespace RehabTrack.Web.Components.Conflicts;

/// <summary>
/// The fields of a form, what they held when the record was read, and what somebody else saved since: what only one of the two changed
/// comes together, what both changed waits until a person has chosen.
/// </summary>
public sealed class SharedFields
{
    private readonly Action _changed;
    private readonly IReadOnlyList<SharedField> _fields;
    private readonly Dictionary<string, Both> _both = new(StringComparer.Ordinal);
    private object?[] _read = [];

    /// <param name="changed">Draws the form anew after a choice.</param>
    /// <param name="fields">The fields in the order of the form.</param>
    public SharedFields(Action changed, params IReadOnlyList<SharedField> fields)
    {
        _changed = changed;
        _fields = fields;
        _read = Held();
    }

    /// <summary>Whether somebody else saved something that the form took over or asks about.</summary>
    public bool HasMet { get; private set; }

    /// <summary>Who saved last, and when; null when nobody knows.</summary>
    public LastWrite? By { get; private set; }

    /// <summary>What only they changed.</summary>
    public IReadOnlyList<FieldTaken> Taken { get; private set; } = [];

    /// <summary>The fields that both changed, by name.</summary>
    public IReadOnlyList<string> Differing => [.. Asked.Select(asked => asked.Name)];

    /// <summary>Whether something that both changed is still to be chosen.</summary>
    public bool IsUndecided => Asked.Any(asked => !_both[asked.Id].IsChosen && !TakesTheirs(asked.Id));

    private IEnumerable<SharedField> Asked => _fields.Where(one => _both.ContainsKey(one.Id) && one.IsAsked());

    /// <summary>The form holds what was read: nothing is typed yet.</summary>
    public void Begin()
    {
        _read = Held();
        _both.Clear();
        (HasMet, By, Taken) = (false, null, []);
    }

    /// <summary>Somebody else saved. The form holds both together afterwards, what was typed here where both changed a field.</summary>
    /// <param name="show">Fills the form with what stands now.</param>
    /// <param name="by">Who saved last, and when.</param>
    /// <returns>Whether there is anything for a person to see: what somebody saved beside this form is none of its fields.</returns>
    public bool Meet(Action show, LastWrite? by)
    {
        ArgumentNullException.ThrowIfNull(show);
        object?[] before = _read;
        object?[] mine = Held();
        show();
        object?[] theirs = Held();
        _read = theirs;
        _both.Clear();
        List<FieldTaken> taken = [];
        foreach ((int index, SharedField field) in _fields.Index())
        {
            object? together = ThreeWay.Choose(
                before[index],
                mine[index],
                theirs[index],
                (typed, saved) => _both.Add(field.Id, new Both(typed, saved)),
                TypedAlike.Instance
            );
            if (!TypedAlike.Instance.Equals(together, mine[index]))
            {
                taken.Add(new FieldTaken(field.Name, field.Tell(together)));
            }

            field.Set(together);
        }

        (By, Taken) = (by, taken);
        HasMet = taken.Count > 0 || _both.Count > 0;
        return HasMet;
    }

    /// <summary>What both wrote into a field; null when they did not both change it.</summary>
    public FieldConflict? ConflictOf(string id) =>
        _both.TryGetValue(id, out Both? both) && Find(id) is var field
            ? new FieldConflict(id, field.Name, field.Tell(TakesTheirs(id) ? both.Mine : field.Get()), field.Tell(both.Theirs))
            : null;

    /// <summary>Whether what was typed here was chosen.</summary>
    public bool KeepsMine(string id) => _both[id].IsChosen && !TakesTheirs(id);

    /// <summary>Whether the field holds what the other person saved.</summary>
    public bool TakesTheirs(string id) => TypedAlike.Instance.Equals(Find(id).Get(), _both[id].Theirs);

    /// <summary>Chooses between the two; what was typed here comes back when it is chosen again.</summary>
    public void Choose(string id, bool theirs)
    {
        Both both = _both[id];
        SharedField field = Find(id);
        if (theirs && !TakesTheirs(id))
        {
            both.Mine = field.Get();
            field.Set(both.Theirs);
        }
        else if (!theirs && TakesTheirs(id))
        {
            field.Set(both.Mine);
        }

        both.IsChosen = true;
        _changed();
    }

    private object?[] Held() => [.. _fields.Select(field => field.Get())];

    private SharedField Find(string id) => _fields.First(field => field.Id == id);

    private sealed class Both(object? mine, object? theirs)
    {
        public object? Mine { get; set; } = mine;

        public object? Theirs { get; } = theirs;

        public bool IsChosen { get; set; }
    }
}
