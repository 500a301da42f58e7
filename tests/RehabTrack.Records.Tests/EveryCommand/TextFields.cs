using System.Collections;
using System.Reflection;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Records.Tests.EveryCommand;

/// <summary>
/// The text fields of an input, found by reflection, however deep they lie. A field reads <c>Content.Readings[].Values.Note</c>; every
/// element of a list gets the same text; <c>Fields{}</c> are the texts of a dictionary.
/// </summary>
internal static class TextFields
{
    /// <summary>All text fields that the type of an input has.</summary>
    public static IReadOnlyList<string> Of(Type input) => [.. Walk(input, "", []).Distinct(StringComparer.Ordinal)];

    /// <summary>The input with some of its text fields changed; the fields that could be reached are named in <paramref name="reached"/>.</summary>
    public static object With(object input, IReadOnlyDictionary<string, string> texts, ISet<string> reached) =>
        Changed(input, "", texts, reached)!;

    private static IEnumerable<string> Walk(Type type, string path, HashSet<Type> above)
    {
        if (type == typeof(string))
        {
            return [path];
        }

        if (IsNamedTexts(type))
        {
            return [$"{path}{{}}"];
        }

        if (ElementOf(type) is { } element)
        {
            return Walk(element, $"{path}[]", above);
        }

        if (!IsOurs(type) || !above.Add(type))
        {
            return [];
        }

        string[] found = [.. Settable(type).SelectMany(property => Walk(Bare(property.PropertyType), Join(path, property.Name), above))];
        above.Remove(type);
        return found;
    }

    private static object? Changed(object? value, string path, IReadOnlyDictionary<string, string> texts, ISet<string> reached)
    {
        if (value is null || !texts.Keys.Any(wanted => wanted.StartsWith(path, StringComparison.Ordinal)))
        {
            return value;
        }

        if (value is IReadOnlyDictionary<string, string> named)
        {
            reached.Add($"{path}{{}}");
            return named.ToDictionary(one => one.Key, one => texts.GetValueOrDefault($"{path}{{}}") ?? one.Value, StringComparer.Ordinal);
        }

        Type type = value.GetType();
        if (ElementOf(type) is { } element && value is IEnumerable elements)
        {
            object?[] changed = [.. elements.Cast<object?>().Select(one => ChangedOrText(one, element, $"{path}[]", texts, reached))];
            Array array = Array.CreateInstance(element, changed.Length);
            changed.CopyTo(array, 0);
            return array;
        }

        if (!IsOurs(type))
        {
            return value;
        }

        object copy = CloneOf(value, type);
        foreach (PropertyInfo property in Settable(type))
        {
            string at = Join(path, property.Name);
            property.SetValue(copy, ChangedOrText(property.GetValue(copy), property.PropertyType, at, texts, reached));
        }

        return copy;
    }

    private static object? ChangedOrText(
        object? value,
        Type type,
        string at,
        IReadOnlyDictionary<string, string> texts,
        ISet<string> reached
    )
    {
        if (type == typeof(string))
        {
            reached.Add(at);
            return texts.TryGetValue(at, out string? text) ? text : value;
        }

        return Changed(value, at, texts, reached);
    }

    private static object CloneOf(object value, Type type) =>
        typeof(object).GetMethod("MemberwiseClone", BindingFlags.Instance | BindingFlags.NonPublic)!.Invoke(value, null)
        ?? throw new InvalidOperationException($"{type.Name} has no copy.");

    private static IEnumerable<PropertyInfo> Settable(Type type) =>
        type.GetProperties(BindingFlags.Instance | BindingFlags.Public)
            .Where(property => property.CanRead && property.SetMethod is { IsPublic: true } && property.GetIndexParameters().Length == 0);

    private static Type? ElementOf(Type type) =>
        type == typeof(string) || type == typeof(byte[])
            ? null
            : type.GetInterfaces()
                .Append(type)
                .Where(one => one.IsGenericType && one.GetGenericTypeDefinition() == typeof(IReadOnlyList<>))
                .Select(one => one.GetGenericArguments()[0])
                .FirstOrDefault();

    private static bool IsNamedTexts(Type type) => typeof(IReadOnlyDictionary<string, string>).IsAssignableFrom(type);

    private static Type Bare(Type type) => Nullable.GetUnderlyingType(type) ?? type;

    /// <summary>A grading scale is one of a closed set: its id is nobody's text.</summary>
    private static bool IsOurs(Type type) =>
        type != typeof(GradeScale) && type.Namespace?.StartsWith("RehabTrack", StringComparison.Ordinal) == true && !type.IsEnum;

    private static string Join(string path, string name) => path.Length == 0 ? name : $"{path}.{name}";
}
