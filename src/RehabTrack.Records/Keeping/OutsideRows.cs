using Microsoft.EntityFrameworkCore;

namespace RehabTrack.Records.Keeping;

/// <summary>
/// What the database gives out for readers from outside the practice: words that are said inside are taken out there, and never come into the
/// program for them.
/// </summary>
internal static class OutsideRows
{
    /// <summary>
    /// Without what was said beside a line and for whom, without a vet's reasons, and without the words beside a step of a plan and at its gate.
    /// json_set, json_remove and json_each are functions of SQLite.
    /// </summary>
    private const string Lines = """
        SELECT "Id", "PracticeId", "Version", "ArchivedAt", "HorseId", "Number", "Kind", "Date", "RecordedAt", "RecordedOn", "EnteredById",
            NULL AS "OnBehalfOf", NULL AS "MoreJson",
            CASE json_type("ContentJson", '$.plan.steps')
                WHEN 'array' THEN json_set("ContentJson", '$.plan.steps', (
                    SELECT json_group_array(json_remove("step"."value", '$.note', '$.gate.criteria'))
                    FROM json_each("ContentJson", '$.plan.steps') AS "step"))
                ELSE json_remove("ContentJson", '$.decision.reason')
            END AS "ContentJson"
        FROM "ExerciseEntry"
        """;

    /// <summary>The lines of exercise histories.</summary>
    public static IQueryable<ExerciseEntryRecord> ForOutside(this DbSet<ExerciseEntryRecord> lines) => lines.FromSqlRaw(Lines);
}
