using RehabTrack.Exchange.Rows;
using RehabTrack.Rechecks.Exams;

namespace RehabTrack.Exchange.Cases;

/// <summary>What became of the rows of one case.</summary>
/// <param name="Case">The case; null when none of its rows could be taken.</param>
/// <param name="Rejected">Rows that do not fit the others, in the order of the file.</param>
/// <param name="Cautions">What is worth a second look.</param>
public sealed record CaseAssembly(CaseFile? Case, IReadOnlyList<RejectedRow> Rejected, IReadOnlyList<SheetCaution> Cautions);
