namespace RehabTrack.Records.Imports;

/// <summary>What a file would bring; nothing is written yet.</summary>
public sealed record ImportPreview
{
    /// <summary>Its cases, in the order of the file.</summary>
    public required IReadOnlyList<CasePreview> Cases { get; init; }

    /// <summary>Horses that are new.</summary>
    public required int NewHorses { get; init; }

    /// <summary>Cases that are new.</summary>
    public int NewCases => Cases.Count(file => !file.Skipped && file.CaseId is null);

    /// <summary>Examinations that are new.</summary>
    public int NewExaminations => Count(ExaminationStanding.New);

    /// <summary>Examinations that are here already, the same.</summary>
    public int KnownExaminations => Count(ExaminationStanding.Known);

    /// <summary>Examinations that are here and differ.</summary>
    public int DifferingExaminations => Count(ExaminationStanding.Differs);

    /// <summary>Readings of new examinations: what the progress counts to.</summary>
    public int NewReadings => Examinations.Where(exam => exam.Standing == ExaminationStanding.New).Sum(exam => exam.ReadingCount);

    /// <summary>Readings that are here already, the same.</summary>
    public int KnownReadings => Examinations.Sum(exam => exam.KnownReadings);

    /// <summary>Whether it can be imported as chosen.</summary>
    public bool Ready => Cases.All(file => file.Skipped || (!file.MustChooseHorse && file.Problems.Count == 0));

    private IEnumerable<ExaminationPreview> Examinations => Cases.Where(file => !file.Skipped).SelectMany(file => file.Examinations);

    private int Count(ExaminationStanding standing) => Examinations.Count(examination => examination.Standing == standing);
}
