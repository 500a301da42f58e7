using AngleSharp.Dom;
using Bunit;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Examinations;
using RehabTrack.Records.Rights;
using RehabTrack.Web.Features.Examinations;
using RehabTrack.Web.Features.Examinations.Worksheets;
using RehabTrack.Web.Tests.Features.Cases;
using RehabTrack.Wording;

namespace RehabTrack.Web.Tests.Features.Examinations;

public sealed class SignPanelTests : IAsyncDisposable
{
    private readonly BunitContext _page = new();
    private int _signed;

    public SignPanelTests() => _page.JSInterop.Mode = JSRuntimeMode.Loose;

    public ValueTask DisposeAsync() => _page.DisposeAsync();

    private static Worksheet SheetOf(Examination examination) =>
        Worksheet.Of(
            new ExaminationContent
            {
                Date = examination.Date,
                Examiner = examination.Examiner,
                Readings =
                [
                    .. examination.Readings.Select(reading => new DraftReading(
                        Guid.CreateVersion7(),
                        new ReadingDraft
                        {
                            Part = reading.Part,
                            LevelCm = reading.Level.Position.Value,
                            LigamentAreaCm2 = reading.LigamentArea?.Value,
                            LesionAreaCm2 = reading.LesionArea.MeasuredArea?.Value,
                            Measurer = reading.Measurer,
                        }
                    )),
                ],
            },
            true,
            GradeScales.Echogenicity0To3,
            () => Guid.CreateVersion7().ToString()
        );

    private IRenderedComponent<SignPanel> Render(
        Worksheet sheet,
        Role role = Role.Vet,
        int before = 4,
        double shrink = 0.7,
        bool signing = false
    )
    {
        CaseView injury = Invented.View(Invented.Course(before, shrink));
        Guid id = Guid.CreateVersion7();
        return _page.Render<SignPanel>(panel =>
            panel
                .Add(
                    one => one.Reading,
                    WorksheetReader.Read(
                        sheet,
                        new WorksheetTerms
                        {
                            Today = Invented.Today,
                            ExaminationId = id.ToString(),
                            KeptDate = Invented.Today,
                        }
                    )
                )
                .Add(one => one.Sheet, sheet)
                .Add(one => one.Background, new EntryBackground(injury, id))
                .Add(one => one.Case, injury)
                .Add(one => one.Actor, new Actor(Guid.NewGuid(), Guid.NewGuid(), role, "A. Vet"))
                .Add(one => one.Signing, signing)
                .Add(one => one.Sign, () => _signed++)
                .Add(one => one.Back, "/back")
        );
    }

    private static IElement? Button(IRenderedComponent<SignPanel> panel) => panel.FindAll("button").SingleOrDefault();

    [Fact]
    public async Task A_vet_sees_what_is_signed_and_the_verdict_before_and_after()
    {
        IRenderedComponent<SignPanel> panel = Render(SheetOf(Invented.Examination(5, 1.2) with { Date = Invented.Today }));

        string[] verdicts = [.. panel.FindAll(".verdict .lead").Select(one => one.TextContent)];
        Assert.Equal(2, verdicts.Length);
        Assert.StartsWith("Healing", verdicts[0], StringComparison.Ordinal);
        Assert.NotEqual(verdicts[0], verdicts[1]);
        Assert.Contains("5 levels", panel.Find(".lead").TextContent, StringComparison.Ordinal);
        Assert.Equal(5, panel.FindAll("table tbody tr").Count);

        await Button(panel)!.ClickAsync(new());
        Assert.Equal(1, _signed);
    }

    [Fact]
    public void While_the_signature_is_under_way_it_cannot_be_pressed_again() =>
        Assert.True(
            Button(Render(SheetOf(Invented.Examination(5) with { Date = Invented.Today }), signing: true))!.HasAttribute("disabled")
        );

    [Theory]
    [InlineData(Role.Assistant)]
    [InlineData(Role.Administrator)]
    public void Nobody_but_a_vet_is_offered_to_sign(Role role)
    {
        IRenderedComponent<SignPanel> panel = Render(SheetOf(Invented.Examination(5) with { Date = Invented.Today }), role);

        Assert.Null(Button(panel));
        Assert.Contains(ExaminationPage.SignOnlyVet, panel.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_to_be_mended_comes_first()
    {
        Worksheet sheet = SheetOf(Invented.Examination(5) with { Date = Invented.Today });
        Worksheet wrong = sheet.With(sheet.Grid.Type(sheet.Grid.Rows[0].Key, EntryColumn.LigamentArea, "x"));

        IRenderedComponent<SignPanel> panel = Render(wrong);

        Assert.Equal(ExaminationPage.SignMendFirst, panel.Find("[role=alert]").TextContent);
        Assert.True(Button(panel)!.HasAttribute("disabled"));
    }

    [Fact]
    public void Another_examination_of_the_day_must_be_told_apart()
    {
        Worksheet sheet = SheetOf(Invented.Examination(4));
        Assert.Equal(ExaminationPage.SignOtherSameDay, Render(sheet).Find("[role=alert]").TextContent);

        Assert.Empty(Render(sheet.With(HeaderField.Name, "evening")).FindAll("[role=alert]"));
    }

    [Fact]
    public void Nothing_read_is_nothing_to_sign()
    {
        Worksheet empty = new Worksheet().With(HeaderField.Date, "today").With(Entering.LaidOut(20, 22));

        IRenderedComponent<SignPanel> panel = Render(empty);

        Assert.Equal(ExaminationPage.SignNothing, panel.Find("[role=alert]").TextContent);
        Assert.Empty(panel.FindAll(".verdict"));
        Assert.Contains("2 levels", panel.Find(".findings").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void Levels_left_open_marked_not_read_and_a_missing_measurer_are_named()
    {
        EntryGrid grid = Entering.LaidOut(20, 22, 24).Type("r1", EntryColumn.LigamentArea, "1.5").Strike("r2");

        string said = Render(new Worksheet().With(HeaderField.Date, "today").With(grid)).Find(".findings").TextContent;

        Assert.Contains(ExaminationPage.SignUnreadOne, said, StringComparison.Ordinal);
        Assert.Contains("body 22 cm", said, StringComparison.Ordinal);
        Assert.Contains(ExaminationPage.SignNoMeasurer, said, StringComparison.Ordinal);
    }

    [Fact]
    public void The_first_examination_of_a_case_has_nothing_to_compare_with()
    {
        IRenderedComponent<SignPanel> panel = Render(SheetOf(Invented.Examination(1) with { Date = Invented.Today }), before: 0);

        Assert.Contains(ExaminationPage.SignVerdictFirst, panel.Markup, StringComparison.Ordinal);
        Assert.Empty(panel.FindAll("table"));
    }
}
