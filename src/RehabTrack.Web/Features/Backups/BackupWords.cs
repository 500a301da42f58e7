using RehabTrack.Records.Backups;
using RehabTrack.Web.Components;
using RehabTrack.Wording;

namespace RehabTrack.Web.Features.Backups;

/// <summary>What is said of backups.</summary>
internal static class BackupWords
{
    private const double Kilobyte = 1024;
    private const double Megabyte = Kilobyte * Kilobyte;

    public static string How(BackupSettings settings, string folder) =>
        string.Format(
            TextCulture.Default,
            BackupPage.HowLine,
            settings.At.ToString("HH:mm", TextCulture.Default),
            folder,
            settings.KeepDaily,
            settings.KeepWeekly
        );

    /// <summary>When the last one was made and the next is due.</summary>
    public static string Last(BackupsView view)
    {
        string last = view.Copies is [BackupCopy newest, ..]
            ? string.Format(TextCulture.Default, BackupPage.LastMade, Moments.Of(newest.At, view.TimeZone))
            : BackupPage.LastNone;
        return view.NextDue is { } next
            ? $"{last} {string.Format(TextCulture.Default, BackupPage.NextDue, Moments.Of(next, view.TimeZone))}"
            : last;
    }

    public static string Failed(BackupAttempt attempt, string timeZone) =>
        string.Format(TextCulture.Default, BackupPage.LastFailed, Moments.Of(attempt.At, timeZone));

    public static string Size(BackupCopy copy) =>
        copy.Length < Megabyte
            ? string.Format(TextCulture.Default, BackupPage.Kilobytes, copy.Length / Kilobyte)
            : string.Format(TextCulture.Default, BackupPage.Megabytes, copy.Length / Megabyte);
}
