using System.Globalization;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Care;

/// <summary>What the kinds of care are, and what must be right before an entry is kept.</summary>
public static class CareRules
{
    private const int MostLame = 5;

    /// <summary>Which group a kind belongs to.</summary>
    public static CareGroup GroupOf(CareKind kind) =>
        kind switch
        {
            CareKind.ShockWave
            or CareKind.PlateletRichPlasma
            or CareKind.MarrowConcentrate
            or CareKind.StemCells
            or CareKind.OtherInjection
            or CareKind.Neurectomy
            or CareKind.OtherSurgery
            or CareKind.Shoeing
            or CareKind.OtherTreatment => CareGroup.Treatment,
            CareKind.AntiInflammatory or CareKind.Corticosteroid or CareKind.PainRelief or CareKind.OtherMedicine => CareGroup.Medicine,
            CareKind.Lameness or CareKind.Heat or CareKind.Swelling or CareKind.Pain or CareKind.OtherSign => CareGroup.Sign,
        };

    /// <summary>Whether something is put into the lesion, which changes its picture for a time.</summary>
    public static bool IsIntoLesion(CareKind kind) =>
        kind is CareKind.PlateletRichPlasma or CareKind.MarrowConcentrate or CareKind.StemCells or CareKind.OtherInjection;

    /// <summary>Whether a sign is graded as none, slight, clear.</summary>
    public static bool IsGraded(CareKind kind) => kind is CareKind.Heat or CareKind.Swelling or CareKind.Pain;

    /// <summary>Whether a medicine can hide lameness, so that "sound" under it does not count (shared/rules.md).</summary>
    public static bool HidesLameness(CareKind kind) => kind is CareKind.AntiInflammatory or CareKind.Corticosteroid or CareKind.PainRelief;

    /// <summary>All that is wrong with an entry.</summary>
    /// <param name="entry">The entry.</param>
    /// <param name="today">The practice's calendar date.</param>
    public static IReadOnlyList<Problem> Check(CareEntry entry, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(entry);
        List<Problem> problems = [];
        if (entry.From > today)
        {
            problems.Add(new("from", "date-in-future", Text(entry.From), Text(today)));
        }

        if (entry.Until < entry.From)
        {
            problems.Add(new("until", "until-before-from", Text(entry.Until.Value), Text(entry.From)));
        }

        if (entry.StandDownUntil < entry.From)
        {
            problems.Add(new("standDownUntil", "until-before-from", Text(entry.StandDownUntil.Value), Text(entry.From)));
        }

        if (IsIntoLesion(entry.Kind) && entry.CaseId is null)
        {
            problems.Add(new("caseId", "injection-without-case"));
        }

        if (entry.LamenessAaep is < 0 or > MostLame)
        {
            problems.Add(new("lameness", "lameness-out-of-range", entry.LamenessAaep.Value.ToString(CultureInfo.InvariantCulture)));
        }

        return problems;
    }

    private static string Text(DateOnly date) => date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
