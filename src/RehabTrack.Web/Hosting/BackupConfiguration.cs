using System.Globalization;
using RehabTrack.Records.Backups;
using RehabTrack.Wording;

namespace RehabTrack.Web.Hosting;

/// <summary>The settings of backups from configuration or environment; see docs/operations.md.</summary>
public static class BackupConfiguration
{
    private const int Most = 1000;

    /// <summary>Reads them.</summary>
    /// <param name="configuration">The configuration of the program; its section is Backup.</param>
    /// <exception cref="StartRefusedException">One cannot be read: a backup that silently does not come is worse than no start.</exception>
    public static BackupSettings Read(IConfiguration configuration)
    {
        ArgumentNullException.ThrowIfNull(configuration);
        IConfigurationSection section = configuration.GetSection("Backup");
        BackupSettings usual = new();
        return usual with
        {
            Folder = section["Folder"] is { } folder && !string.IsNullOrWhiteSpace(folder) ? Path.GetFullPath(folder) : null,
            At = section["At"] is { } at ? Time(at) : usual.At,
            KeepDaily = Count(section, "KeepDaily", usual.KeepDaily),
            KeepWeekly = Count(section, "KeepWeekly", usual.KeepWeekly),
        };
    }

    private static TimeOnly Time(string text) =>
        TimeOnly.TryParseExact(text, "HH:mm", CultureInfo.InvariantCulture, DateTimeStyles.None, out TimeOnly at)
            ? at
            : throw Refused(StartUpTexts.BackupAtUnreadable, text);

    private static int Count(IConfiguration section, string name, int usual) =>
        section[name] is not { } text ? usual
        : int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out int count) && count <= Most ? count
        : throw Refused(StartUpTexts.BackupKeepUnreadable, name, text, Most);

    private static StartRefusedException Refused(string text, params object[] arguments) =>
        new(string.Format(CultureInfo.InvariantCulture, text, arguments));
}
