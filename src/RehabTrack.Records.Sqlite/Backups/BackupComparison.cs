using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata;
using RehabTrack.Records.Accounts;
using RehabTrack.Records.Keeping;

namespace RehabTrack.Records.Sqlite.Backups;

/// <summary>
/// Which rows of a database say something else than those of a backup, although they cannot have been written since: the version token is
/// the same, or rows of their kind are never written twice.
/// </summary>
internal static class BackupComparison
{
    private static readonly Type[] WrittenOnce = [typeof(ExaminationVersionRecord), typeof(SignedFiguresRecord)];

    /// <summary>The questions to ask a database to which the backup is attached, each with the table it is about.</summary>
    public static IEnumerable<(string Table, string Question)> Questions(IModel model)
    {
        foreach (IEntityType kind in model.GetEntityTypes())
        {
            string table = kind.GetTableName()!;
            if (kind.ClrType.IsSubclassOf(typeof(KeptRecord)) || kind.ClrType == typeof(SignInAccount))
            {
                yield return (table, Differing(kind, """ AND a."Version" = b."Version" """, Differs(kind)));
            }
            else if (WrittenOnce.Contains(kind.ClrType))
            {
                yield return (table, Differing(kind, "", Differs(kind)));
            }
            else if (kind.ClrType == typeof(AppliedCommandRecord))
            {
                // An answer can be erased, and never be another one.
                yield return (table, Differing(kind, "", $"({Differs(kind)}) AND a.\"ResultJson\" <> ''"));
            }
            else if (kind.ClrType == typeof(ReadingRecord))
            {
                yield return (table, Readings(kind));
            }
        }
    }

    private static string Differing(IEntityType kind, string also, string differs)
    {
        string[] key = [.. kind.FindPrimaryKey()!.Properties.Select(Column)];
        string same = string.Join(" AND ", key.Select(column => $"a.{column} = b.{column}"));
        string table = Quoted(kind.GetTableName()!);
        return $"SELECT {string.Join(" || ' ' || ", key.Select(column => $"a.{column}"))} FROM main.{table} a JOIN kept.{table} b ON {same}{also} WHERE {differs}";
    }

    private static string Differs(IEntityType kind) =>
        string.Join(
            " OR ",
            kind.GetProperties()
                .Where(property => !ShareLinkRecord.NotedAtTheDoor.Contains(property.Name))
                .Select(Column)
                .Select(column => $"a.{column} IS NOT b.{column}")
        );

    // Readings are written with their examination, whose token guards them; also one too many or too few is found.
    private static string Readings(IEntityType kind)
    {
        string columns = string.Join(", ", kind.GetProperties().Select(Column));
        return $"""
            SELECT e."Id" FROM main."Examination" e JOIN kept."Examination" k ON e."Id" = k."Id" AND e."Version" = k."Version"
            WHERE EXISTS ({Without("main", "kept")}) OR EXISTS ({Without("kept", "main")})
            """;

        string Without(string these, string those) =>
            $"""SELECT {columns} FROM {these}."Reading" WHERE "ExaminationId" = e."Id" EXCEPT SELECT {columns} FROM {those}."Reading" WHERE "ExaminationId" = e."Id" """;
    }

    private static string Column(IProperty property) => Quoted(property.GetColumnName());

    private static string Quoted(string name) => $"\"{name}\"";
}
