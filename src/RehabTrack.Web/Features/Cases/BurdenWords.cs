using RehabTrack.Rechecks.Healing;
using RehabTrack.Wording;

namespace RehabTrack.Web.Features.Cases;

/// <summary>The figures of an examination's burden in words; an en dash where there is none.</summary>
public static class BurdenWords
{
    /// <summary>The volume with its error, "at least" where an end still shows lesion.</summary>
    public static string VolumeOf(ExaminationBurden? burden) =>
        burden switch
        {
            { Volume: { } volume, VolumeStandardError: { } error } => string.Format(
                TextCulture.Default,
                burden.VolumeIsLowerBound ? CasePage.VolumeAtLeast : CasePage.VolumeWithError,
                Figures.Number(volume.Value, "0.00"),
                Figures.Volume(error)
            ),
            { Volume: { } volume } => Figures.Volume(volume),
            _ => Figures.Volume(null),
        };

    /// <summary>The largest share and its level.</summary>
    public static string WorstOf(ExaminationBurden? burden) =>
        burden is { WorstPercent: { } worst, WorstLevel: { } level }
            ? string.Format(TextCulture.Default, CasePage.WorstAt, Figures.Percent(worst), Figures.Level(level))
            : Figures.Percent(burden?.WorstPercent);

    /// <summary>The total share, "incomplete" where levels are missing.</summary>
    public static string TotalOf(ExaminationBurden? burden) =>
        burden is { TotalPercent: { } total, LevelsComplete: false }
            ? string.Format(TextCulture.Default, CasePage.TotalIncomplete, Figures.ExactPercent(total))
            : Figures.ExactPercent(burden?.TotalPercent);

    /// <summary>The class with the scale it stands on; null where there is none.</summary>
    public static string? SeverityOf(SeverityGrade? severity) =>
        severity switch
        {
            null => null,
            { ScaleId: SeverityScales.BranchSection } => string.Format(TextCulture.Default, CasePage.SeveritySection, severity.Class),
            { Class: 1 } => CasePage.SeverityTotal_1,
            { Class: 2 } => CasePage.SeverityTotal_2,
            _ => CasePage.SeverityTotal_3,
        };
}
