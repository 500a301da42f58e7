using MudBlazor;

namespace RehabTrack.Web.Shell;

/// <summary>What the component library is told; its colours come from the variables in app.css, so that one place defines them.</summary>
public static class PaperTheme
{
    private static readonly string[] Shows = ["Atkinson Hyperlegible Next", "Segoe UI", "system-ui", "sans-serif"];

    private static readonly string[] Says = ["Source Serif 4", "Georgia", "serif"];

    /// <summary>Small radii, no capitals on buttons, our two voices.</summary>
    public static MudTheme Theme { get; } =
        new()
        {
            LayoutProperties = new LayoutProperties { DefaultBorderRadius = "3px" },
            Typography = new Typography
            {
                Default = new DefaultTypography
                {
                    FontFamily = Shows,
                    FontSize = "1rem",
                    LineHeight = "1.45",
                    LetterSpacing = "normal",
                },
                Body1 = new Body1Typography
                {
                    FontFamily = Shows,
                    FontSize = "1rem",
                    LetterSpacing = "normal",
                },
                Body2 = new Body2Typography
                {
                    FontFamily = Shows,
                    FontSize = "0.9rem",
                    LetterSpacing = "normal",
                },
                Button = new ButtonTypography
                {
                    FontFamily = Shows,
                    FontSize = "1rem",
                    FontWeight = "600",
                    LetterSpacing = "normal",
                    TextTransform = "none",
                },
                H6 = new H6Typography
                {
                    FontFamily = Says,
                    FontSize = "1.1875rem",
                    FontWeight = "600",
                    LetterSpacing = "normal",
                },
            },
        };
}
