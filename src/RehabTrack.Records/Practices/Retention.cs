using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Keeping;

namespace RehabTrack.Records.Practices;

/// <summary>How long a practice keeps words that are about people and not about horses, in days. Source: <c>shared/retention.json</c>.</summary>
/// <param name="AccessDays">Notes of who came in and who was refused.</param>
/// <param name="ContactDays">Addresses of letters and words of calls.</param>
public sealed record Retention(int AccessDays, int ContactDays)
{
    private static readonly ReferenceTable Table = ReferenceTable.Load("retention");

    /// <summary>As long as is usual.</summary>
    public static Retention Usual { get; } = new((int)Table["accessDays"], (int)Table["contactDays"]);

    /// <summary>The fewest and the most days that a practice may choose.</summary>
    public static (int Fewest, int Most) Range { get; } = ((int)Table["fewestDays"], (int)Table["mostDays"]);

    /// <summary>How long a file waits to be imported.</summary>
    internal static int ImportFileDays { get; } = (int)Table["importFileDays"];

    /// <summary>How long the answers to forms that save themselves are kept.</summary>
    internal static int AutosaveAnswerDays { get; } = (int)Table["autosaveAnswerDays"];

    /// <summary>What a practice chose; the usual where it chose nothing, and for what belongs to none.</summary>
    internal static Retention Of(PracticeRecord? practice) =>
        new(practice?.AccessKeptDays ?? Usual.AccessDays, practice?.ContactKeptDays ?? Usual.ContactDays);
}
