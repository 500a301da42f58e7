using RehabTrack.Rechecks.Exams;
using RehabTrack.Records.Examinations;
using RehabTrack.Web.Components;
using RehabTrack.Wording;

namespace RehabTrack.Web.Features.Examinations;

/// <summary>The words of an examination's state.</summary>
public static class ExaminationWords
{
    /// <summary>What stands behind an examination, in a sentence.</summary>
    /// <param name="examination">The examination.</param>
    /// <param name="content">The version that is shown.</param>
    /// <param name="timeZone">The practice's time zone.</param>
    public static string StateOf(ExaminationView examination, ExaminationContent content, string timeZone)
    {
        ArgumentNullException.ThrowIfNull(examination);
        ArgumentNullException.ThrowIfNull(content);
        return examination.State switch
        {
            ExaminationState.Signed => Text(
                ExaminationPage.ViewSigned,
                examination.SignedBy ?? string.Empty,
                examination.SignedAt is { } at ? Moments.Of(at, timeZone) : string.Empty
            ),
            ExaminationState.Outside when content.OutsidePractice is { } practice => Text(ExaminationPage.ViewOutsideBy, practice),
            ExaminationState.Outside => ExaminationPage.ViewOutside,
            ExaminationState.History => ExaminationPage.ViewHistory,
            ExaminationState.Draft => ExaminationPage.ViewDraft,
        };
    }

    private static string Text(string pattern, params object[] arguments) => string.Format(TextCulture.Default, pattern, arguments);
}
