using RehabTrack.Web.Components.Forms;
using RehabTrack.Wording;

namespace RehabTrack.Web.Components.Conflicts;

/// <summary>A field of a form that two people may have open at once.</summary>
/// <param name="Id">The id of its control.</param>
/// <param name="Name">What the form calls it.</param>
/// <param name="Get">What it holds.</param>
/// <param name="Set">Puts something else into it.</param>
/// <param name="Tell">What it holds, as a person reads it.</param>
public sealed record SharedField(string Id, string Name, Func<object?> Get, Action<object?> Set, Func<object?, string> Tell)
{
    /// <summary>Whether the form asks for it now; a field that is not asked for is not to be chosen about.</summary>
    public Func<bool> IsAsked { get; init; } = () => true;

    /// <summary>A field with a way of its own to be told.</summary>
    public static SharedField Of<T>(string id, string name, Func<T> get, Action<T> set, Func<T, string> tell) =>
        new(id, name, () => get(), value => set((T)value!), value => tell((T)value!));

    /// <summary>Words, or a number as it is typed.</summary>
    public static SharedField Words(string id, string name, Func<string?> get, Action<string?> set) =>
        Of(id, name, get, set, text => text ?? "");

    /// <summary>A day.</summary>
    public static SharedField Day(string id, string name, Func<DateOnly?> get, Action<DateOnly?> set) =>
        Of(id, name, get, set, day => day is { } date ? Figures.Date(date) : "");

    /// <summary>A tick.</summary>
    public static SharedField Tick(string id, string name, Func<bool> get, Action<bool> set) =>
        Of(id, name, get, set, on => on ? SuggestionTexts.Yes : SuggestionTexts.No);

    /// <summary>One line of a list; a blank choice is told as blank.</summary>
    public static SharedField OneOf<T>(string id, string name, Func<T?> get, Action<T?> set, Func<IReadOnlyList<Choice<T>>> choices) =>
        Of(
            id,
            name,
            get,
            set,
            value => choices().FirstOrDefault(choice => EqualityComparer<T?>.Default.Equals(choice.Value, value))?.Text ?? ""
        );
}
