using RehabTrack.Records.Keeping;

namespace RehabTrack.Records.Sqlite;

/// <summary>
/// Triggers that keep history from being rewritten, whoever writes. They are made anew at every start, since a migration that rebuilds
/// a table drops them, and since an older version may have made another one of the same name.
/// </summary>
internal static class AppendOnly
{
    private static readonly string[] Tables = ["ExaminationVersion", "SignedFigures", "ExerciseEntry", "Acknowledgement", "Report"];

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

    /// <summary>What of a line of the trail is never changed: what the chain is made of.</summary>
    private static readonly string[] ChainedOfChange =
    [
        "Id",
        "PracticeId",
        "Number",
        "At",
        "PersonId",
        "CommandId",
        "UseCase",
        "Kind",
        "RecordId",
        "CaseId",
        "BodyHash",
        "PreviousHash",
        "Hash",
    ];

    /// <summary>Every table whose rows are never deleted.</summary>
    public static IEnumerable<string> AllTables => [.. Tables, "Decision", "Change"];

    /// <summary>What makes them, older ones taken away first; all of it belongs into one transaction.</summary>
    public static IEnumerable<string> Statements =>
        [
            .. Tables.SelectMany(table => Without(table).Append(NoUpdate(table, "")).Append(NoDelete(table))),
            .. Without("Decision"),
            NoUpdate("Decision", $"WHEN {Differs(SignedOfDecision)}"),
            NoDelete("Decision"),
            .. Without("Change"),
            NoUpdate("Change", $"WHEN {Differs(ChainedOfChange)} OR {OtherThanErased}"),
            NoDelete("Change"),
        ];

    private static string OtherThanErased =>
        $"""
            NEW."BeforeJson" IS NOT NULL OR NEW."AfterJson" IS NOT '' OR NEW."Salt" IS NOT NULL
            OR OLD."Kind" NOT IN ({string.Join(", ", Erasable.Kinds.Select(kind => $"'{kind}'"))})
            """;

    /// <summary>What takes the triggers of a table away, for as long as a transaction makes it anew.</summary>
    public static IEnumerable<string> Without(string table) =>
        [$"DROP TRIGGER IF EXISTS \"{table}_is_not_updated\"", $"DROP TRIGGER IF EXISTS \"{table}_is_not_deleted\""];

    private static string Differs(IEnumerable<string> columns) =>
        string.Join(" OR ", columns.Select(column => $"OLD.\"{column}\" IS NOT NEW.\"{column}\""));

    private static string NoUpdate(string table, string when) =>
        $"""
            CREATE TRIGGER "{table}_is_not_updated" BEFORE UPDATE ON "{table}" {when}
            BEGIN SELECT RAISE(ABORT, '{table} is append-only'); END
            """;

    private static string NoDelete(string table) =>
        $"""
            CREATE TRIGGER "{table}_is_not_deleted" BEFORE DELETE ON "{table}"
            BEGIN SELECT RAISE(ABORT, '{table} is append-only'); END
            """;
}
