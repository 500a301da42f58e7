using RehabTrack.Records.Keeping;

namespace RehabTrack.Records.Imports;

/// <summary>A case that is here, with what a file is compared with: its examinations that count, and their readings.</summary>
internal sealed record KeptCase(CaseRecord Case, IReadOnlyList<ExaminationRecord> Examinations, ILookup<Guid, ReadingRecord> Readings);
