using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Linking;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Practices;

namespace RehabTrack.Records.Cases;

/// <summary>A case with all that its page needs.</summary>
public sealed record CaseView
{
    /// <summary>Identity.</summary>
    public required Guid Id { get; init; }

    /// <summary>Version token.</summary>
    public required Guid Version { get; init; }

    /// <summary>The horse and the people beside it.</summary>
    public required HorseView Horse { get; init; }

    /// <summary>The name an imported file gave the case; null when opened here.</summary>
    public required string? Label { get; init; }

    /// <summary>When it was first diagnosed.</summary>
    public required DateOnly? FirstDiagnosis { get; init; }

    /// <summary>The diagnosis, in the vet's words.</summary>
    public required string? Diagnosis { get; init; }

    /// <summary>The work the horse shall come back to.</summary>
    public required string? TargetWork { get; init; }

    /// <summary>The vet who is responsible.</summary>
    public required Guid? ResponsibleVetId { get; init; }

    /// <summary>That vet's name.</summary>
    public required string? ResponsibleVet { get; init; }

    /// <summary>Whether it is open.</summary>
    public required bool IsOpen { get; init; }

    /// <summary>How it was closed by a vet; null while it is open.</summary>
    public required CaseClosing? Closing { get; init; }

    /// <summary>What the analysis reads: signed, outside and history examinations, no drafts. Ids are <see cref="Guid"/>s as "D" text.</summary>
    public required CaseCourse Course { get; init; }

    /// <summary>The drafts as the heart would read them.</summary>
    public required IReadOnlyList<Examination> Drafts { get; init; }

    /// <summary>All examinations with what stands behind them, drafts too, by date and id.</summary>
    public required IReadOnlyList<ExaminationCard> Examinations { get; init; }

    /// <summary>The words on links, withdrawn ones too, oldest first.</summary>
    public required IReadOnlyList<LinkWordView> LinkWords { get; init; }

    /// <summary>The practice with the analysis settings.</summary>
    public required PracticeView Practice { get; init; }

    /// <summary>What was kept of the last analysis; null before the first.</summary>
    public required CaseSummaryView? Summary { get; init; }

    /// <summary>The links that count, for the analysis.</summary>
    public IReadOnlyList<LinkConstraint> Constraints =>
        [.. LinkWords.Where(word => word.WithdrawnAt is null).Select(word => word.Constraint)];

    /// <summary>The course with the drafts, for a preview.</summary>
    public CaseCourse CourseWithDrafts => Course with { Examinations = [.. Course.Examinations, .. Drafts] };
}
