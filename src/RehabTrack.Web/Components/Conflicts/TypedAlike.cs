namespace RehabTrack.Web.Components.Conflicts;

/// <summary>Whether a field holds the same twice: blanks around words, and words that are all blank, are nothing typed.</summary>
public sealed class TypedAlike : IEqualityComparer<object?>
{
    private TypedAlike() { }

    /// <summary>The one there is.</summary>
    public static TypedAlike Instance { get; } = new();

    /// <inheritdoc />
    public new bool Equals(object? x, object? y) => object.Equals(Typed(x), Typed(y));

    /// <inheritdoc />
    public int GetHashCode(object? obj) => Typed(obj)?.GetHashCode() ?? 0;

    private static object? Typed(object? value) =>
        value is not string text ? value
        : string.IsNullOrWhiteSpace(text) ? null
        : text.Trim();
}
