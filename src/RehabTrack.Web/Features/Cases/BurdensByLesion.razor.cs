using System.Globalization;
using Microsoft.AspNetCore.Components;
using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Web.Components.Cases;
using RehabTrack.Wording;

namespace RehabTrack.Web.Features.Cases;

/// <summary>The table of burdens by lesion and part.</summary>
public sealed partial class BurdensByLesion
{
    private static IReadOnlyList<BurdenColumn> AllColumns =>
        [
            new(CasePage.ColumnVolume, "num", burden => burden.Volume is not null, BurdenWords.VolumeOf),
            new(CasePage.ColumnLength, "num", burden => burden.LesionLength is not null, burden => Figures.Length(burden.LesionLength)),
            new(CasePage.ColumnWorst, "num", burden => burden.WorstPercent is not null, BurdenWords.WorstOf),
            new(CasePage.ColumnTotal, "num", burden => burden.TotalPercent is not null, BurdenWords.TotalOf),
            new(
                CasePage.ColumnSeverity,
                null,
                burden => burden.Severity is not null,
                burden => BurdenWords.SeverityOf(burden.Severity) ?? Figures.Percent(null)
            ),
            new(
                CasePage.ColumnMissed,
                "num",
                burden => burden.LesionTracksMissed.Count > 0,
                burden => burden.LesionTracksMissed.Count.ToString(CultureInfo.InvariantCulture)
            ),
        ];

    /// <summary>The analysis of a case that has several lesions.</summary>
    [Parameter, EditorRequired]
    public CaseAnalysis Analysis { get; set; } = default!;

    // A part stands beside its lesions where it has several, and the case has other parts: else one of them says the same.
    private IEnumerable<(string Name, ExaminationBurden Burden)> Rows =>
        Analysis
            .Parts.Where(_ => Analysis.Parts.Count > 1)
            .Where(part => Analysis.Lesions.Count(lesion => AnatomyRules.PathOf(lesion.Part) == part.Path) > 1)
            .Select(part => (string.Format(TextCulture.Default, CasePage.PartWhole, Names.Of(part.Path)), part.Burdens))
            .Concat(Analysis.Lesions.Select(lesion => (LesionNames.Of(lesion.Lesion, lesion.Part), lesion.Burdens)))
            .SelectMany(one => one.Burdens.Reverse().Select(burden => (one.Item1, burden)));

    // A figure that no row has takes no column.
    private IReadOnlyList<BurdenColumn> Columns => [.. AllColumns.Where(column => Rows.Any(row => column.Has(row.Burden)))];
}
