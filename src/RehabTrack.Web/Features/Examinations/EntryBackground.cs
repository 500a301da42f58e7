using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Linking;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Cases;

namespace RehabTrack.Web.Features.Examinations;

/// <summary>What the other examinations of the case say, for the entry of one of them.</summary>
public sealed class EntryBackground
{
    private readonly CaseView _case;
    private readonly string _examinationId;
    private readonly ExaminationState _state;

    /// <summary>The background of one examination.</summary>
    /// <param name="injury">The case as it was read.</param>
    /// <param name="examinationId">The examination being entered.</param>
    /// <param name="state">What it will be once it is signed.</param>
    public EntryBackground(CaseView injury, Guid examinationId, ExaminationState state = ExaminationState.Signed)
    {
        ArgumentNullException.ThrowIfNull(injury);
        _case = injury;
        _state = state;
        _examinationId = examinationId.ToString();
        Others = [.. injury.Course.Examinations.Where(other => other.Id != _examinationId).OrderBy(other => other.Date)];
        Before = Analyse(Others);
    }

    /// <summary>The examinations that count, without the one being entered, by date.</summary>
    public IReadOnlyList<Examination> Others { get; }

    /// <summary>The analysis without the one being entered.</summary>
    public CaseAnalysis Before { get; }

    /// <summary>The analysis as it stands, the examination as it was kept included.</summary>
    public CaseAnalysis Standing => Analyse(_case.Course.Examinations);

    /// <summary>The echogenicity scale used last in this case; 0–3 when none was.</summary>
    public GradeScale EchogenicityScale =>
        Others
            .Reverse()
            .SelectMany(other => other.Readings)
            .Select(reading => reading.Echogenicity?.Scale)
            .OfType<GradeScale>()
            .FirstOrDefault()
        ?? GradeScales.Echogenicity0To3;

    /// <summary>Names of examiners and measurers met in this case.</summary>
    public IReadOnlyList<string> People =>
        [
            .. Others
                .SelectMany(other => other.Readings.Select(reading => reading.Measurer).Append(other.Examiner))
                .OfType<string>()
                .Distinct(StringComparer.Ordinal)
                .Order(StringComparer.Ordinal),
        ];

    /// <summary>Names of those who measured in this case.</summary>
    public IReadOnlyList<string> Measurers =>
        [
            .. Others
                .SelectMany(other => other.Readings)
                .Select(reading => reading.Measurer)
                .OfType<string>()
                .Distinct(StringComparer.Ordinal)
                .Order(StringComparer.Ordinal),
        ];

    /// <summary>Transducers met in this case.</summary>
    public IReadOnlyList<string> Transducers =>
        [.. Others.Select(other => other.Transducer).OfType<string>().Distinct(StringComparer.Ordinal)];

    /// <summary>The latest examination on or before a date; null when there is none.</summary>
    public Examination? LastBefore(DateOnly date) => Others.LastOrDefault(other => other.Date <= date);

    /// <summary>The analysis as it would be with this examination signed.</summary>
    public CaseAnalysis With(Examination examination) => Analyse(Signed(examination));

    /// <summary>The fingerprint of that analysis: sent with the signature, so that what is kept is what was seen.</summary>
    public string HashWith(Examination examination) =>
        InputHash.Of(
            _case.Course with
            {
                Examinations = Signed(examination),
            },
            _case.Constraints,
            _case.Practice.Settings,
            _case.Practice.Today
        );

    /// <summary>The place in the analysis of the examination being entered and of an earlier one, where both are on one track.</summary>
    public IReadOnlyList<(Track Track, TrackStep Before, TrackStep Now)> Pairs(CaseAnalysis with, Examination last)
    {
        ArgumentNullException.ThrowIfNull(with);
        ArgumentNullException.ThrowIfNull(last);
        return
        [
            .. from track in with.Links.Tracks
            let before = track.Steps.FirstOrDefault(step => step.ExaminationId == last.Id)
            let now = track.Steps.FirstOrDefault(step => step.ExaminationId == _examinationId)
            where before is not null && now is not null
            select (track, before, now),
        ];
    }

    private IReadOnlyList<Examination> Signed(Examination examination) =>
        [.. Others, examination with { Id = _examinationId, State = _state }];

    private CaseAnalysis Analyse(IReadOnlyList<Examination> examinations) =>
        CaseAnalyser.Analyse(
            _case.Course with
            {
                Examinations = examinations,
            },
            _case.Constraints,
            _case.Practice.Settings,
            _case.Practice.Today
        );
}
