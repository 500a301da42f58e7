using System.Text.Json;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Anatomy;

/// <summary>The codes that files use for the members of an enumeration, from <c>shared/anatomy.json</c>.</summary>
/// <typeparam name="T">The enumeration.</typeparam>
public sealed class CodeTable<T>
    where T : struct, Enum
{
    private readonly Dictionary<string, T> _byCode = new(StringComparer.Ordinal);
    private readonly Dictionary<string, T> _byFolded = new(StringComparer.Ordinal);
    private readonly Dictionary<T, string> _byMember = [];

    private CodeTable() { }

    /// <summary>The codes in the order of the table.</summary>
    public IReadOnlyCollection<string> Codes => _byMember.Values;

    /// <summary>Reads the rows of a name.</summary>
    /// <param name="name">The name, for example <c>limb</c>.</param>
    /// <exception cref="ArgumentException">A row names a member that the enumeration does not have: a broken build.</exception>
    public static CodeTable<T> Load(string name)
    {
        CodeTable<T> table = new();
        using JsonDocument document = ReferenceTable.Parse("anatomy");
        foreach (JsonElement row in document.RootElement.GetProperty("rows").EnumerateArray())
        {
            if (row.GetProperty("name").ValueEquals(name))
            {
                T member = Enum.Parse<T>(row.GetProperty("member").GetString()!);
                string code = row.GetProperty("code").GetString()!;
                table._byMember.Add(member, code);
                table._byCode.Add(code, member);
                table._byFolded.Add(FoldedText.Of(code), member);
            }
        }

        return table;
    }

    /// <summary>The member with this code, read without regard to case, with space, hyphen and underscore alike; null when there is none.</summary>
    /// <param name="text">The text of a cell or field.</param>
    public T? Find(string text) =>
        _byCode.TryGetValue(text, out T member) || _byFolded.TryGetValue(FoldedText.Of(text), out member) ? member : null;

    /// <summary>The code of a member; empty for a member without code, such as <c>Unknown</c> and <c>None</c>.</summary>
    /// <param name="member">The member.</param>
    public string CodeOf(T member) => _byMember.GetValueOrDefault(member, "");
}
