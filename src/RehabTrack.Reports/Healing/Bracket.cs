using System.Xml.Linq;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Reports.Pictures;
using RehabTrack.Wording;

namespace RehabTrack.Reports.Healing;

/// <summary>The bracket over the examinations that decide, with the verdict and its rate.</summary>
internal static class Bracket
{
    public static double HeightOf(bool phone) => phone ? 62 : 52;

    public static void Draw(
        XElement scenery,
        Trend trend,
        SlopeFigures window,
        HealingWords words,
        TimeAxis time,
        double plotTop,
        double width,
        bool phone
    )
    {
        double left = time.XOf(window.From);
        double right = time.XOf(window.To);
        double y = plotTop - 10;
        const double speaks = 17;
        double small = phone ? 13 : 12.5;
        string verdict = Names.AsTitle(words.VerdictOf(trend));
        string rate = $"{words.RateOf(window)}  ({words.RateBetween(window)})";
        string colour = ColourOf(trend.Verdict);
        bool marked = trend.Verdict is Verdict.Stalled or Verdict.Worsening or Verdict.HealingSlowly;
        double room = Math.Max(Svg.WidthOf(verdict, speaks) + (marked ? 20 : 0), Svg.WidthOf(rate, small)) / 2;
        double middle = Math.Clamp((left + right) / 2, room + 4, Math.Max(width - room - 4, room + 4));
        double start = middle - ((Svg.WidthOf(verdict, speaks) + (marked ? 18 : 0)) / 2);
        scenery.Add(
            Svg.Of(
                "path",
                ("class", "window"),
                ("d", $"M{N(left)} {N(y + 6)}V{N(y)}H{N(right)}V{N(y + 6)}"),
                ("fill", "none"),
                ("stroke", colour),
                ("stroke-width", 1.6)
            ),
            Svg.Text(middle, y - 8, rate, small, Palette.Ink, "middle", kind: "rate"),
            Svg.Text(start + (marked ? 18 : 0), y - 12 - small, verdict, speaks, colour, "start", 600, "verdict")
                .With(("font-family", Svg.Serif))
        );
        if (marked)
        {
            double bottom = y - 12 - small;
            scenery.Add(
                Svg.Of(
                    "path",
                    ("class", "mark"),
                    ("d", $"M{N(start)} {N(bottom)}H{N(start + 12)}L{N(start + 6)} {N(bottom - 11)}Z"),
                    ("fill", colour)
                )
            );
        }
    }

    private static string ColourOf(Verdict verdict) =>
        verdict switch
        {
            Verdict.Worsening => Palette.Red,
            Verdict.Stalled or Verdict.HealingSlowly => Palette.Amber,
            Verdict.Healing or Verdict.AtTarget => Palette.Accent,
            Verdict.NotYetReadable => Palette.Soft,
        };

    private static string N(double value) => Svg.Written(value);
}
