namespace RehabTrack.Web.Components;

/// <summary>
/// What a press of a button asked for, until its answer has been drawn. Pressed again before that, by a double click or because the line is
/// slow, it is the same wish, under the same command id: it is done once.
/// </summary>
public sealed class Presses
{
    private readonly Dictionary<(object Button, Type Part), object> _asked = [];
    private readonly HashSet<object> _answered = [];
    private readonly HashSet<object> _underWay = [];

    /// <summary>A part of what the press of a button asks for; made anew only once the answer to the press before has been drawn.</summary>
    /// <param name="button">The button: what it does, and to which record.</param>
    /// <param name="make">Makes it.</param>
    public T Of<T>(object button, Func<T> make)
        where T : notnull
    {
        ArgumentNullException.ThrowIfNull(make);
        if (!_asked.TryGetValue((button, typeof(T)), out object? asked))
        {
            asked = make();
            _asked.Add((button, typeof(T)), asked);
        }

        return (T)asked;
    }

    /// <summary>There is an answer. What was refused changed nothing: mended, it is another wish at once.</summary>
    /// <param name="button">The button.</param>
    /// <param name="isDone">Whether it was done.</param>
    public void Answer(object button, bool isDone)
    {
        if (isDone)
        {
            _answered.Add(button);
        }
        else
        {
            Forget(button);
        }
    }

    /// <summary>The page is being drawn, with every answer that there is.</summary>
    public void Draw()
    {
        _underWay.UnionWith(_answered);
        _answered.Clear();
    }

    /// <summary>The browser has drawn the page.</summary>
    public void Drawn()
    {
        foreach (object button in _underWay)
        {
            Forget(button);
        }

        _underWay.Clear();
    }

    private void Forget(object button)
    {
        foreach ((object, Type) part in _asked.Keys.Where(asked => asked.Button.Equals(button)).ToList())
        {
            _asked.Remove(part);
        }
    }
}
