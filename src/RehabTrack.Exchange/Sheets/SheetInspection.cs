using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Exchange.Sheets;

/// <summary>What a look over the bytes of a file says.</summary>
/// <param name="Format">How it is written; null when it cannot be read as a sheet.</param>
/// <param name="Problem">Why it cannot be read; null when it can.</param>
/// <param name="Cautions">What is worth knowing although it can be read.</param>
/// <param name="Bytes">Its size.</param>
public sealed record SheetInspection(SheetFormat? Format, Problem? Problem, IReadOnlyList<Problem> Cautions, long Bytes);
