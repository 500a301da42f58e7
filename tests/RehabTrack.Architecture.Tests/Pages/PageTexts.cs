using System.Net;
using System.Text.RegularExpressions;
using Mono.Cecil;
using Mono.Cecil.Cil;

namespace RehabTrack.Architecture.Tests.Pages;

/// <summary>
/// Finds text for persons that is written literally in a component. It reads what the Razor compiler made of the page: every literal
/// that becomes content or an attribute that a person reads, and sentences in its code.
/// </summary>
internal static partial class PageTexts
{
    private static readonly HashSet<string> ReadByPersons = new(StringComparer.OrdinalIgnoreCase)
    {
        "title",
        "alt",
        "placeholder",
        "label",
        "aria-label",
        "aria-description",
        "aria-roledescription",
        "aria-valuetext",
        "AriaLabel",
        "AdornmentAriaLabel",
        "AdornmentText",
        "CloseIconAriaLabel",
        "HelperText",
        "Text",
        "ErrorText",
        "RequiredError",
        "ToolTip",
    };

    /// <summary>The literals of a component, each with the component's name before it.</summary>
    public static IEnumerable<string> LiteralsOf(TypeDefinition type) =>
        WithNested(type)
            .SelectMany(one => one.Methods)
            .Where(method => method.HasBody)
            .SelectMany(method => LiteralsOf(method.Body.Instructions))
            .Distinct(StringComparer.Ordinal)
            .Select(text => $"{type.Name}: {text}");

    private static IEnumerable<string> LiteralsOf(IList<Instruction> code)
    {
        for (int at = 0; at < code.Count; at++)
        {
            if (code[at].OpCode != OpCodes.Ldstr)
            {
                continue;
            }

            string text = (string)code[at].Operand;
            MethodReference? taker = TakerOf(code, at);
            foreach (string literal in Read(text, taker, code, at))
            {
                yield return literal;
            }
        }
    }

    private static IEnumerable<string> Read(string text, MethodReference? taker, IList<Instruction> code, int at) =>
        (taker?.DeclaringType.Name, taker?.Name) switch
        {
            ("RenderTreeBuilder", "AddMarkupContent") => InMarkup(text),
            ("RenderTreeBuilder", "AddContent") => Words(text),
            ("RenderTreeBuilder", "AddAttribute" or "AddComponentParameter") => IsName(code, at) ? []
            : code.Take(at).LastOrDefault(IsString) is { Operand: string name } && ReadByPersons.Contains(name) ? Words(text)
            : [],
            ("RenderTreeBuilder", _) => [],
            (_, ".ctor") when taker!.DeclaringType.Name.EndsWith("Exception", StringComparison.Ordinal) => [],
            _ => Sentence().IsMatch(text) ? [text.Trim()] : [],
        };

    /// <summary>The call that takes this literal, looking through conversions.</summary>
    private static MethodReference? TakerOf(IList<Instruction> code, int at)
    {
        for (int next = at + 1; next < code.Count; next++)
        {
            if (code[next].Operand is MethodReference method)
            {
                if (method.Name is "TypeCheck" or "get_CurrentCulture")
                {
                    continue;
                }

                return method;
            }

            // The name of an attribute stands before its value: what follows it is loaded first.
            if (code[next].OpCode.FlowControl is FlowControl.Branch or FlowControl.Cond_Branch or FlowControl.Return)
            {
                return null;
            }

            if (code[next].OpCode == OpCodes.Stfld || code[next].OpCode == OpCodes.Stsfld)
            {
                return null;
            }
        }

        return null;
    }

    /// <summary>Whether this literal is an attribute's name: it follows the sequence number.</summary>
    private static bool IsName(IList<Instruction> code, int at) =>
        at > 0 && code[at - 1].OpCode.Name.StartsWith("ldc.i4", StringComparison.Ordinal);

    private static bool IsString(Instruction instruction) => instruction.OpCode == OpCodes.Ldstr;

    private static IEnumerable<string> InMarkup(string markup) =>
        Unseen()
            .Replace(markup, string.Empty)
            .Split('<')
            .SelectMany(
                (piece, index) =>
                    index == 0 || !piece.Contains('>', StringComparison.Ordinal)
                        ? Words(piece)
                        : AttributesOf(piece[..piece.IndexOf('>', StringComparison.Ordinal)])
                            .Concat(Words(piece[(piece.IndexOf('>', StringComparison.Ordinal) + 1)..]))
            );

    private static IEnumerable<string> AttributesOf(string tag) =>
        Attribute()
            .Matches(tag)
            .Where(match => ReadByPersons.Contains(match.Groups[1].Value))
            .SelectMany(match => Words(match.Groups[2].Value));

    private static IEnumerable<string> Words(string text)
    {
        string plain = WebUtility.HtmlDecode(text).Trim();
        return plain.Any(char.IsLetter) ? [plain] : [];
    }

    private static IEnumerable<TypeDefinition> WithNested(TypeDefinition type) => type.NestedTypes.SelectMany(WithNested).Prepend(type);

    [GeneratedRegex("<(script|style)[^>]*>.*?</\\1>|<!--.*?-->", RegexOptions.Singleline)]
    private static partial Regex Unseen();

    [GeneratedRegex("([A-Za-z-]+)=\"([^\"]*)\"")]
    private static partial Regex Attribute();

    [GeneratedRegex(@"^\s*\p{Lu}\p{Ll}+[ ,]")]
    private static partial Regex Sentence();
}
