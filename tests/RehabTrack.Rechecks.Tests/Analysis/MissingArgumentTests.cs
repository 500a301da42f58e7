using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Linking;
using RehabTrack.Rechecks.Suggestions;
using RehabTrack.Rechecks.Tests.Linking;

namespace RehabTrack.Rechecks.Tests.Analysis;

/// <summary>
/// An argument that is missing is refused by its name at the door, before anything is reckoned: the report of a failure then names the
/// caller's mistake and not a place deep inside.
/// </summary>
public sealed class MissingArgumentTests
{
    private static readonly AnalysisSettings Settings = new();
    private static readonly DateOnly AsOf = new(2024, 6, 1);
    private static readonly CaseCourse Course = new()
    {
        Id = "case",
        Limb = Limb.LeftHind,
        Landmark = Landmark.PointOfHock,
        Examinations = [],
    };
    private static readonly CaseAnalysis Analysis = CaseAnalyser.Analyse(Course, [], Settings, AsOf);

    private static readonly SeenFigures Seen = SeenFigures.Of(Course, [], Analysis);
    private static readonly Place Level = Places.Of(Tapes.Exam(1, 10))[0];
    private static readonly MeasurementErrorSettings Error = new();

    [Fact]
    public void The_analysis_refuses_a_missing_argument()
    {
        Refused("course", () => CaseAnalyser.Analyse(null!, [], Settings, AsOf));
        Refused("constraints", () => CaseAnalyser.Analyse(Course, null!, Settings, AsOf));
        Refused("settings", () => CaseAnalyser.Analyse(Course, [], null!, AsOf));
        Refused("course", () => CaseAnalyser.AnalyseLinked(null!, Analysis.Links, Settings, AsOf));
        Refused("links", () => CaseAnalyser.AnalyseLinked(Course, null!, Settings, AsOf));
        Refused("settings", () => CaseAnalyser.AnalyseLinked(Course, Analysis.Links, null!, AsOf));
        Refused("course", () => CaseAnalyser.Suggest(null!, Analysis, default, new VisitSigns()));
        Refused("analysis", () => CaseAnalyser.Suggest(Course, null!, default, new VisitSigns()));
        Refused("signs", () => CaseAnalyser.Suggest(Course, Analysis, default, null!));
    }

    [Fact]
    public void What_was_seen_and_the_settings_refuse_a_missing_argument()
    {
        Refused("course", () => SeenFigures.Of(null!, [], Analysis));
        Refused("constraints", () => SeenFigures.Of(Course, null!, Analysis));
        Refused("analysis", () => SeenFigures.Of(Course, [], null!));
        Refused("then", () => FiguresDifference.Between(null!, Seen));
        Refused("today", () => FiguresDifference.Between(Seen, null!));
        string name = SettingRanges.All[0].Name;
        Refused("settings", () => SettingRanges.ValueOf(null!, name));
        Refused("name", () => SettingRanges.ValueOf(Settings, null!));
        Refused("settings", () => SettingRanges.With(null!, name, 1));
        Refused("range", () => SettingRanges.ProblemOf(null!, "1"));
    }

    [Fact]
    public void Healing_refuses_a_missing_argument()
    {
        Refused("probabilities", () => Holm.Adjust(null!));
        Refused("values", () => Kendall.Of(null!));
        Refused("places", () => LevelComparison.Between(null!, Error, Limb.LeftHind, Looks.Once));
        Refused("settings", () => LevelComparison.Between([], null!, Limb.LeftHind, Looks.Once));
        Refused("settings", () => new MeasurementError(null!, Limb.LeftHind));
        Refused("before", () => PlaceComparison.Between(null!, Level, Error, Limb.LeftHind, 2));
        Refused("now", () => PlaceComparison.Between(Level, null!, Error, Limb.LeftHind, 2));
        Refused("settings", () => PlaceComparison.Between(Level, Level, null!, Limb.LeftHind, 2));
        Refused("series", () => PointStep.Of(null!));
        Refused("trend", () => SizeBar.Of(null!));
        Refused("course", () => TrendStart.Of(null!, new TrendSettings(), AsOf)!);
        Refused("settings", () => TrendStart.Of(Course, null!, AsOf)!);
    }

    [Fact]
    public void Linking_refuses_a_missing_argument()
    {
        LinkingSettings settings = new();
        Refused("examinations", () => LevelLinker.Link((IReadOnlyList<Examination>)null!, [], settings));
        Refused("constraints", () => LevelLinker.Link(Course.Examinations, null!, settings));
        Refused("settings", () => LevelLinker.Link(Course.Examinations, [], null!));
        Refused("course", () => LevelLinker.Link((CaseCourse)null!, [], settings));
        Refused("constraints", () => LevelLinker.Link(Course, null!, settings));
        Refused("settings", () => LevelLinker.Link(Course, [], null!));
        Refused("course", () => CommonTape.OffsetsOf(null!));
        Refused("settings", () => PlainAligner.Align([10], [10], default, null!));
        Refused("settings", () => PlainAligner.AlignOverShifts([10], [10], null!));
        Refused("settings", () => PlainAligner.LinkProbabilities([10], [10], null!));
    }

    private static void Refused(string name, Func<object> call) => Assert.Throws<ArgumentNullException>(name, call);
}
