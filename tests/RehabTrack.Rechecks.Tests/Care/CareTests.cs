using RehabTrack.Rechecks.Care;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Findings;
using RehabTrack.Rechecks.Suggestions;
using static RehabTrack.Rechecks.Tests.Healing.CourseBuilder;

namespace RehabTrack.Rechecks.Tests.Care;

public sealed class CareTests
{
    private static readonly int Within = new CareSettings().InjectionDays;

    private static CareEntry Entry(CareKind kind, int from, int? until = null, string? caseId = null) =>
        new()
        {
            Kind = kind,
            From = Start.AddDays(from),
            Until = until is { } last ? Start.AddDays(last) : null,
            CaseId = caseId,
        };

    [Theory]
    [InlineData(CareKind.ShockWave, CareGroup.Treatment)]
    [InlineData(CareKind.OtherTreatment, CareGroup.Treatment)]
    [InlineData(CareKind.AntiInflammatory, CareGroup.Medicine)]
    [InlineData(CareKind.OtherMedicine, CareGroup.Medicine)]
    [InlineData(CareKind.Lameness, CareGroup.Sign)]
    [InlineData(CareKind.OtherSign, CareGroup.Sign)]
    public void Every_kind_belongs_to_a_group(CareKind kind, CareGroup group) => Assert.Equal(group, CareRules.GroupOf(kind));

    [Fact]
    public void An_examination_is_marked_up_to_the_days_of_the_setting_after_the_latest_injection_of_its_case()
    {
        CaseCourse course = Case(Exam(0), Exam(20), Exam(20 + Within), Exam(21 + Within));
        CareEntry[] care =
        [
            Entry(CareKind.PlateletRichPlasma, 10, caseId: "case"),
            Entry(CareKind.StemCells, 20, caseId: "case"),
            Entry(CareKind.StemCells, 20 + Within, caseId: "another"),
            Entry(CareKind.ShockWave, 21 + Within, caseId: "case"),
        ];

        IReadOnlyList<InjectionMark> marks = InjectionMarks.Of(course, care);
        Assert.Equal([(20, 0), (20 + Within, Within)], marks.Select(mark => (mark.Date.DayNumber - Start.DayNumber, mark.Days)));

        IReadOnlyList<Finding> findings = InjectionMarks.Findings(marks, Start.AddDays(20 + Within));
        Assert.Equal([true, false], findings.Select(finding => finding.IsEarlier));
        Assert.All(
            findings,
            finding => Assert.Equal((FindingKind.SoonAfterInjection, FindingSeverity.Note), (finding.Kind, finding.Severity))
        );
        Assert.Single(InjectionMarks.Findings(marks, Start.AddDays(20)));
    }

    [Fact]
    public void A_medicine_without_an_end_is_still_given_and_a_treatment_without_one_is_of_its_day()
    {
        CareEntry medicine = Entry(CareKind.AntiInflammatory, 3);
        CareEntry treatment = Entry(CareKind.Shoeing, 3);

        Assert.Equal([false, true, true], new[] { 2, 3, 90 }.Select(day => medicine.HoldsOn(Start.AddDays(day))));
        Assert.Equal([false, true, false], new[] { 2, 3, 4 }.Select(day => treatment.HoldsOn(Start.AddDays(day))));
        Assert.Equal([true, false], new[] { 5, 6 }.Select(day => Entry(CareKind.PainRelief, 3, 5).HoldsOn(Start.AddDays(day))));
    }

    [Fact]
    public void The_record_answers_what_a_visit_asks_and_silence_is_no_no()
    {
        CareEntry[] care =
        [
            Entry(CareKind.AntiInflammatory, 0, 10),
            Entry(CareKind.OtherMedicine, 0),
            Entry(CareKind.ShockWave, 2),
            Entry(CareKind.ShockWave, 9),
            Entry(CareKind.Neurectomy, 30),
        ];

        VisitSigns during = CareAnswers.Of(care, Start.AddDays(10)).Fill(new VisitSigns());
        Assert.Equal((true, true, Start.AddDays(9)), (during.UnderAntiInflammatory, during.HadShockWave, during.LastShockWave));
        Assert.Null(during.HadNeurectomy);

        VisitSigns after = CareAnswers.Of(care, Start.AddDays(30)).Fill(new VisitSigns { UnderAntiInflammatory = false });
        Assert.Equal((false, true), (after.UnderAntiInflammatory, after.HadNeurectomy));
        Assert.Equal(new VisitSigns(), CareAnswers.Of([], Start).Fill(new VisitSigns()));
    }

    [Theory]
    [InlineData(20, 15)]
    [InlineData(12, 12)]
    public void The_last_shock_wave_is_the_last_day_given_of_the_course_that_ends_last(int visit, int last)
    {
        CareEntry[] care = [Entry(CareKind.ShockWave, 0, 15), Entry(CareKind.ShockWave, 9)];

        Assert.Equal(Start.AddDays(last), CareAnswers.Of(care, Start.AddDays(visit)).Fill(new VisitSigns()).LastShockWave);
    }

    [Fact]
    public void What_cannot_be_is_told_with_its_field()
    {
        CareEntry wrong = Entry(CareKind.StemCells, 5, 4) with { LamenessAaep = 6, StandDownUntil = Start };

        Assert.Equal(
            [
                ("from", "date-in-future"),
                ("until", "until-before-from"),
                ("standDownUntil", "until-before-from"),
                ("caseId", "injection-without-case"),
                ("lameness", "lameness-out-of-range"),
            ],
            CareRules.Check(wrong, Start.AddDays(4)).Select(problem => (problem.Field, problem.Code))
        );
        Assert.Empty(CareRules.Check(Entry(CareKind.StemCells, 5, 5, "case") with { LamenessAaep = 5 }, Start.AddDays(5)));
    }
}
