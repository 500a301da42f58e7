namespace RehabTrack.Records.Sqlite;

/// <summary>
/// Triggers that keep history from being rewritten, whoever writes. They are made anew at every start, since a migration that rebuilds
/// a table drops them.
/// </summary>
internal static class AppendOnly
{
    private static readonly string[] Tables = ["Change", "ExaminationVersion", "SignedFigures", "ExerciseEntry", "Acknowledgement"];

    /// <summary>What of a decision was signed: its release is written beside it later, and may be written anew.</summary>
    private static readonly string[] SignedOfDecision =
    [
        "Id",
        "PracticeId",
        "HorseId",
        "EntryId",
        "GroundJson",
        "Disagreement",
        "CorrectsId",
        "ArchivedAt",
    ];

    public static IEnumerable<string> Statements =>
        [
            .. Tables.SelectMany(table => (string[])[NoUpdate(table, ""), NoDelete(table)]),
            NoUpdate(
                "Decision",
                $"WHEN {string.Join(" OR ", SignedOfDecision.Select(column => $"""OLD."{column}" IS NOT NEW."{column}" """.TrimEnd()))}"
            ),
            NoDelete("Decision"),
        ];

    private static string NoUpdate(string table, string when) =>
        $"""
            CREATE TRIGGER IF NOT EXISTS "{table}_is_not_updated" BEFORE UPDATE ON "{table}" {when}
            BEGIN SELECT RAISE(ABORT, '{table} is append-only'); END
            """;

    private static string NoDelete(string table) =>
        $"""
            CREATE TRIGGER IF NOT EXISTS "{table}_is_not_deleted" BEFORE DELETE ON "{table}"
            BEGIN SELECT RAISE(ABORT, '{table} is append-only'); END
            """;
}
