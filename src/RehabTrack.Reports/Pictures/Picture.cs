using System.Text;
using System.Xml;
using System.Xml.Linq;

namespace RehabTrack.Reports.Pictures;

/// <summary>A drawing with the words and the table that say the same.</summary>
public record Picture
{
    /// <summary>The root element of the drawing. Pages may render it part by part; nobody changes it.</summary>
    public required XElement Root { get; init; }

    /// <summary>The drawing's width in its own units, which are pixels at full size.</summary>
    public required double Width { get; init; }

    /// <summary>The drawing's height in its own units.</summary>
    public required double Height { get; init; }

    /// <summary>What the picture is, in one line: also its accessible name.</summary>
    public required string Title { get; init; }

    /// <summary>What it shows, in a sentence or two.</summary>
    public required string Description { get; init; }

    /// <summary>The table behind it.</summary>
    public required DrawingTable Table { get; init; }

    /// <summary>The drawing as SVG text, to be set inline so that the colours follow the page.</summary>
    public string Svg
    {
        get
        {
            StringBuilder text = new();
            using (XmlWriter writer = XmlWriter.Create(text, new XmlWriterSettings { OmitXmlDeclaration = true }))
            {
                Root.WriteTo(writer);
            }

            return text.ToString();
        }
    }
}
