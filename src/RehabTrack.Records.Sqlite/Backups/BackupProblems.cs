using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.History;

namespace RehabTrack.Records.Sqlite.Backups;

/// <summary>What can go wrong with a backup and a person can mend.</summary>
internal static class BackupProblems
{
    public static Problem NoData(string folder) => new("", "backup-no-data", folder);

    public static Problem SameFolder(string folder) => new("", "backup-into-data", folder);

    public static Problem NoFolder { get; } = new("", "backup-no-folder");

    public static Problem Busy(string folder) => new("", "backup-folder-busy", folder);

    public static Problem NotWritten(string place, string why) => new("", "backup-not-written", place, why);

    public static Problem NotRead(string place, string why) => new("", "backup-not-read", place, why);

    public static Problem NotOurs(string file) => new("", "backup-not-ours", file);

    public static Problem Newer(string place, string version) => new("", "backup-newer", place, version);

    public static Problem FileDamaged(string backup, string file) => new("", "backup-file-damaged", backup, file);

    public static Problem FileMissing(string backup, string file) => new("", "backup-file-missing", backup, file);

    public static Problem FileUnknown(string backup, string file) => new("", "backup-file-unknown", backup, file);

    public static Problem FolderNotEmpty(string folder) => new("", "restore-not-empty", folder);

    public static Problem DatabaseDamaged(string database, string what) => new("", "database-damaged", database, what);

    public static Problem HalfWritten(string place) => new("", "database-half-written", place);

    public static Problem RowUnreadable(string table, string id, string why) => new("", "row-unreadable", table, id, why);

    public static Problem FileSpoiled(string table, string id) => new("", "kept-file-spoiled", table, id);

    public static Problem RowUnlikeTold(UnlikeTold row) => new("", "row-unlike-told", row.Kind, row.Id.ToString("D"), row.Field);

    public static Problem RowUnlikeBackup(string table, string id) => new("", "row-unlike-backup", table, id);

    public static Problem CountDiffers(string table, long counted, long read) =>
        new("", "rows-not-all-read", table, Text(counted), Text(read));

    public static Problem HistoryShrank(string table, long kept, long present) =>
        new("", "history-shrank", table, Text(kept), Text(present));

    public static Problem TrailBroken(TrailCheck trail, TrailBreak broken) =>
        new("", "trail-broken", trail.Practice, broken.Number is { } number ? Text(number) : "–", broken.Why.ToString());

    private static string Text(long number) => number.ToString(System.Globalization.CultureInfo.InvariantCulture);
}
