namespace RehabTrack.Records.Imports;

/// <summary>What a file would bring of one examination.</summary>
/// <param name="Id">Its id in the file: the date, and the name where there is one.</param>
/// <param name="Date">The date.</param>
/// <param name="Name">The name that tells two of one date apart.</param>
/// <param name="Standing">New, known or differing.</param>
/// <param name="ExaminationId">The examination here; null when new.</param>
/// <param name="ReadingCount">Readings in the file.</param>
/// <param name="KnownReadings">Readings that are here already, the same.</param>
/// <param name="Differences">Field by field, what is kept and what the file says; a reading's path is "readings[Body 12.5].lesion_area_cm2".</param>
/// <param name="Amend">Whether it is chosen to be amended.</param>
public sealed record ExaminationPreview(
    string Id,
    DateOnly Date,
    string? Name,
    ExaminationStanding Standing,
    Guid? ExaminationId,
    int ReadingCount,
    int KnownReadings,
    IReadOnlyList<FieldDifference> Differences,
    bool Amend
);
