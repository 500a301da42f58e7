namespace RehabTrack.Records.Imports;

/// <summary>What an import wrote.</summary>
/// <param name="NewHorses">Horses made.</param>
/// <param name="NewCases">Cases made.</param>
/// <param name="NewExaminations">Examinations made, as history.</param>
/// <param name="NewReadings">Readings made with them.</param>
/// <param name="Amended">Examinations amended.</param>
/// <param name="Cases">The cases of the file as they are here, those left out excepted.</param>
public sealed record ImportResult(
    int NewHorses,
    int NewCases,
    int NewExaminations,
    int NewReadings,
    int Amended,
    IReadOnlyList<ImportedCase> Cases
);
