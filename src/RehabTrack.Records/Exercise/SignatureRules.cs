using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Exercise;

/// <summary>What must hold before a vet's signature counts.</summary>
internal static class SignatureRules
{
    /// <summary>
    /// What was written since the person looked and may change a vet's mind: another signature, a concern, a sign in a log, a hold. A
    /// log without a sign does not.
    /// </summary>
    public static IEnumerable<Problem> Unseen(IReadOnlyList<ExerciseEntryRecord> lines, int seenNumber) =>
        lines
            .Where(line => line.Number > seenNumber && !IsHarmless(line))
            .Take(1)
            .Select(line => new Problem("exercise", "exercise-changed-since-seen", line.Kind.ToString(), RecordText.Of(line.Date)));

    public static void Dates(Checks checks, DateOnly from, DateOnly? recheck, DateOnly today)
    {
        if (from < today)
        {
            checks.Add(new Problem("from", "signature-in-past", RecordText.Of(from), RecordText.Of(today)));
        }

        if (recheck is null)
        {
            checks.Add(new Problem("recheckDate", "recheck-date-missing"));
        }
        else if (recheck <= from)
        {
            checks.Add(new Problem("recheckDate", "recheck-before-start", RecordText.Of(recheck.Value), RecordText.Of(from)));
        }
    }

    public static void Place(Checks checks, PlanVersion plan, PlanPlace? place)
    {
        if (place is not { } placed)
        {
            checks.Add(new Problem("place", "place-missing"));
        }
        else
        {
            checks.AddRange(PlanRules.CheckPlace(plan, placed));
        }
    }

    /// <summary>Whether a line lowers nothing: a log without a sign, or the end of a hold.</summary>
    public static bool IsHarmless(ExerciseEntryRecord line) =>
        line.Kind == ExerciseEntryKind.HoldEnded
        || line.Kind == ExerciseEntryKind.DayLogged
            && ExerciseRows.Read(line, line.Number) is Rechecks.Permits.DayLogged { Log.HasSign: false };
}
