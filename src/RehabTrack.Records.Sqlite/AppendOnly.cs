namespace RehabTrack.Records.Sqlite;

/// <summary>
/// Triggers that keep history from being rewritten, whoever writes. They are made anew at every start, since a migration that rebuilds
/// a table drops them.
/// </summary>
internal static class AppendOnly
{
    private static readonly string[] Tables = ["Change", "ExaminationVersion", "SignedFigures", "ExerciseEntry", "Acknowledgement"];

    public static IEnumerable<string> Statements =>
        Tables.SelectMany(table =>
            (string[])
                [
                    $"""
                        CREATE TRIGGER IF NOT EXISTS "{table}_is_not_updated" BEFORE UPDATE ON "{table}"
                        BEGIN SELECT RAISE(ABORT, '{table} is append-only'); END
                        """,
                    $"""
                        CREATE TRIGGER IF NOT EXISTS "{table}_is_not_deleted" BEFORE DELETE ON "{table}"
                        BEGIN SELECT RAISE(ABORT, '{table} is append-only'); END
                        """,
                ]
        );
}
