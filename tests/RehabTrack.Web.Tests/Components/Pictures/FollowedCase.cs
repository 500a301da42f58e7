using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Web.Tests.Components.Pictures;

/// <summary>A lesion of a suspensory body that heals over five examinations, analysed by the engine.</summary>
internal static class FollowedCase
{
    public static readonly CaseCourse Course = new()
    {
        Id = "followed",
        Limb = Limb.LeftHind,
        Structure = Structure.SuspensoryLigament,
        Landmark = Landmark.PointOfHock,
        Examinations = [.. Enumerable.Range(0, 5).Select(Examined)],
    };

    public static readonly CaseAnalysis Analysis = CaseAnalyser.Analyse(Course, [], new AnalysisSettings(), new DateOnly(2026, 9, 20));

    public static string IdOf(int examination) => $"exam-{examination}";

    private static Examination Examined(int i) =>
        new()
        {
            Id = IdOf(i),
            Date = new DateOnly(2026, 1, 12).AddDays(60 * i),
            Readings =
            [
                Read(i, 20, 1.2, 0),
                Read(i, 22, 1.4, 0.5 * Math.Exp(-0.3 * i)),
                Read(i, 24, 1.5, 0.6 * Math.Exp(-0.3 * i)),
                Read(i, 26, 1.3, 0),
            ],
        };

    private static Reading Read(int examination, double level, double ligament, double lesion) =>
        new()
        {
            Id = $"{examination}-{level}",
            Part = Part.Body,
            Level = new Centimetres(level),
            LigamentArea = new SquareCentimetres(ligament),
            LesionArea = LesionArea.Measured(new SquareCentimetres(Math.Round(lesion, 2))),
            Measurer = "Una Field",
        };
}
