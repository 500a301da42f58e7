using System.Globalization;
using System.Text;
using System.Xml;
using System.Xml.Linq;

namespace RehabTrack.Reports.Pictures;

/// <summary>Elements of a drawing. Numbers are written the same way in every culture; text is escaped by the writer.</summary>
internal static class Svg
{
    public const string Figures = "'Atkinson Hyperlegible Next', system-ui, sans-serif";

    public const string Serif = "'Source Serif 4', Georgia, serif";

    private static readonly XNamespace Space = "http://www.w3.org/2000/svg";

    public static XElement Of(string name, params ReadOnlySpan<(string Name, object? Value)> attributes)
    {
        XElement element = new(Space + name);
        foreach ((string attribute, object? value) in attributes)
        {
            if (value is not null)
            {
                element.SetAttributeValue(attribute, Written(value));
            }
        }

        return element;
    }

    public static XElement Root(double width, double height, bool interactive, string title, string description, string idPrefix)
    {
        XElement root = Of(
            "svg",
            ("viewBox", $"0 0 {Written(width)} {Written(height)}"),
            ("width", width),
            ("height", height),
            // Parts that can be pressed may not stand inside an image: assistive technology hides what an image contains.
            ("role", interactive ? "group" : "img"),
            ("aria-label", title),
            ("aria-describedby", idPrefix + "-desc"),
            ("class", "drawing"),
            ("font-family", Figures),
            ("style", "font-variant-numeric:tabular-nums")
        );
        root.Add(Of("title").Saying(title), Of("desc", ("id", idPrefix + "-desc")).Saying(description));
        return root;
    }

    public static XElement Text(
        double x,
        double y,
        string text,
        double size,
        string fill,
        string anchor = "start",
        int? weight = null,
        string? kind = null,
        bool halo = false
    ) =>
        Of(
                "text",
                ("x", x),
                ("y", y),
                ("font-size", size),
                ("fill", fill),
                ("text-anchor", anchor == "start" ? null : anchor),
                ("font-weight", weight),
                ("class", kind),
                ("stroke", halo ? Palette.Sheet : null),
                ("stroke-width", halo ? 3.5 : null),
                ("stroke-linejoin", halo ? "round" : null),
                ("paint-order", halo ? "stroke" : null)
            )
            .Saying(text);

    public static XElement Line(double x1, double y1, double x2, double y2, string stroke, double weight, string? dash = null) =>
        Of(
            "line",
            ("x1", x1),
            ("y1", y1),
            ("x2", x2),
            ("y2", y2),
            ("stroke", stroke),
            ("stroke-width", weight),
            ("stroke-dasharray", dash)
        );

    public static XElement With(this XElement element, params ReadOnlySpan<(string Name, object? Value)> attributes)
    {
        foreach ((string name, object? value) in attributes)
        {
            element.SetAttributeValue(name, value is null ? null : Written(value));
        }

        return element;
    }

    public static XElement Saying(this XElement element, string text)
    {
        element.Add(new XText(Clean(text)));
        return element;
    }

    public static string Written(object value) =>
        value switch
        {
            double number => Math.Round(number, 2, MidpointRounding.AwayFromZero).ToString("0.##", CultureInfo.InvariantCulture),
            IFormattable formattable => formattable.ToString(null, CultureInfo.InvariantCulture),
            _ => Clean(value.ToString() ?? ""),
        };

    /// <summary>The width of a text, near enough to keep labels apart.</summary>
    public static double WidthOf(string text, double size) => size * text.Sum(WidthOf);

    /// <summary>Broken into lines at spaces; a word that is too long stands alone.</summary>
    public static IReadOnlyList<string> Wrapped(string text, double room, double size)
    {
        List<string> lines = [];
        foreach (string word in text.Split(' '))
        {
            if (lines.Count > 0 && WidthOf(lines[^1] + " " + word, size) <= room)
            {
                lines[^1] += " " + word;
            }
            else
            {
                lines.Add(word);
            }
        }

        return lines;
    }

    public static XElement Containing(this XElement element, params ReadOnlySpan<object?> parts)
    {
        foreach (object? part in parts)
        {
            element.Add(part);
        }

        return element;
    }

    private static double WidthOf(char character) =>
        character switch
        {
            'i' or 'l' or 'j' or '.' or ',' or '·' or ':' or '|' => 0.29,
            ' ' or '\u00a0' or 't' or 'f' or 'r' => 0.38,
            'm' or 'w' or 'M' or 'W' or '%' => 0.86,
            >= '0' and <= '9' => 0.6,
            >= 'A' and <= 'Z' => 0.68,
            _ => 0.57,
        };

    /// <summary>Characters that no XML document may hold are left out: a name typed by hand may carry one.</summary>
    private static string Clean(string text)
    {
        StringBuilder clean = new(text.Length);
        for (int i = 0; i < text.Length; i++)
        {
            if (XmlConvert.IsXmlChar(text[i]))
            {
                clean.Append(text[i]);
            }
            else if (i + 1 < text.Length && XmlConvert.IsXmlSurrogatePair(text[i + 1], text[i]))
            {
                clean.Append(text[i]).Append(text[++i]);
            }
        }

        return clean.ToString();
    }
}
