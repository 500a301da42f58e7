using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Rechecks.Schedule;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Practices;

namespace RehabTrack.Web.Tests.Features.Cases;

/// <summary>An invented case: five levels of a suspensory body, read four times, the lesion shrinking by a share each time.</summary>
internal static class Invented
{
    public static readonly DateOnly Today = new(2026, 9, 20);
    private static readonly double[] Levels = [18, 20, 22, 24, 26];
    private static readonly double[] Lesions = [0, 0.2, 0.5, 0.25, 0];

    public static Guid ExaminationId(int number) => new($"00000000-0000-0000-0000-00000000000{number}");

    public static CaseCourse Course(int examinations = 4, double shrink = 0.7, string? measurer = "H. Brandt") =>
        new()
        {
            Id = "case",
            Limb = Limb.LeftHind,
            Structure = Structure.SuspensoryLigament,
            Landmark = Landmark.PointOfHock,
            Onset = new DateOnly(2025, 12, 2),
            Examinations = [.. Enumerable.Range(1, examinations).Select(number => Examination(number, shrink, measurer))],
        };

    public static Examination Examination(int number, double shrink = 0.7, string? measurer = "H. Brandt") =>
        new()
        {
            Id = ExaminationId(number).ToString(),
            Date = new DateOnly(2026, 1, 12).AddDays(60 * (number - 1)),
            Examiner = "A. Vet",
            Readings =
            [
                .. Levels.Select(
                    (level, index) =>
                        new Reading
                        {
                            Id = $"{number}-{index}",
                            Part = Part.Body,
                            Level = new Centimetres(level),
                            LigamentArea = new SquareCentimetres(1.4),
                            LesionArea = LesionArea.Measured(
                                new SquareCentimetres(Math.Round(Lesions[index] * Math.Pow(shrink, number - 1), 3))
                            ),
                            Measurer = measurer,
                        }
                ),
            ],
        };

    public static CaseAnalysis Analyse(CaseCourse course) => CaseAnalyser.Analyse(course, [], new AnalysisSettings(), Today);

    public static CaseSummaryView Summary(DateOnly due) =>
        new()
        {
            Verdict = Verdict.Healing,
            Reason = VerdictReason.FallOfSlope,
            Measure = Measure.LesionVolume,
            RatePercentPer60Days = -30,
            Lower95Percent = -40,
            Upper95Percent = -20,
            ExaminationCount = 4,
            FirstExamination = new DateOnly(2026, 1, 12),
            LastExamination = due.AddDays(-60),
            LastSigned = due.AddDays(-60),
            DueOn = due,
            DueBy = DueBy.Interval,
            WorstSeverity = null,
            RedCount = 0,
            AmberCount = 0,
        };

    public static CaseView View(CaseCourse course, bool showChange = false) =>
        new()
        {
            Id = new Guid("00000000-0000-0000-0000-0000000000c1"),
            Version = Guid.NewGuid(),
            Horse = new HorseView
            {
                Id = Guid.NewGuid(),
                Version = Guid.NewGuid(),
                Name = "Juniper Vale",
                Microchip = null,
                BirthYear = 2012,
                BirthDate = null,
                Sex = Sex.Mare,
                Use = null,
                Markings = null,
                YardId = null,
                Yard = null,
                YardPhone = null,
                People = [],
                HasPhoto = false,
                Archived = false,
                Cases = [],
            },
            Label = null,
            FirstDiagnosis = null,
            Diagnosis = null,
            TargetWork = null,
            ResponsibleVetId = null,
            ResponsibleVet = null,
            IsOpen = true,
            Closing = null,
            Course = course,
            Drafts = [],
            Examinations = [],
            LinkWords = [],
            Practice = new PracticeView
            {
                Id = Guid.NewGuid(),
                Version = Guid.NewGuid(),
                Name = "Practice",
                Phone = null,
                TimeZone = "Europe/Vienna",
                Language = "en",
                RecheckIntervalDays = 60,
                IntervalIsUsual = true,
                AccessKeptDays = null,
                ContactKeptDays = null,
                ShowChangeWhileEntering = showChange,
                Settings = new AnalysisSettings(),
                ErrorOrigins = new Dictionary<MeasuredSize, ErrorOrigin>(),
                SettingsAreUsual = true,
                Today = Today,
            },
            Summary = null,
        };
}
