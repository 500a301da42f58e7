using Microsoft.Extensions.DependencyInjection;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Care;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Linking;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Care;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Exercise;
using RehabTrack.Web.Features.Decisions;
using RehabTrack.Web.Tests.Hosting;
using RehabTrack.Wording;

namespace RehabTrack.Web.Tests.Features.Decisions;

public sealed class SinceWordsTests(EmptyPractice practice) : IClassFixture<EmptyPractice>
{
    private static readonly DateTime Signed = KeptPractice.Morning.UtcDateTime;

    private static readonly DateOnly Today = HorseInRehab.Today;

    [Fact]
    public async Task Treatments_and_medicines_begun_ended_or_corrected_since_are_told_and_older_ones_are_not()
    {
        (ExerciseView view, IReadOnlyList<OpenCaseToday> cases) = await SignedAsync("Cared");
        CareView[] care =
        [
            Care(CareKind.ShockWave, Today.AddDays(2), null, Signed.AddDays(2)),
            Care(CareKind.AntiInflammatory, Today.AddDays(-30), Today.AddDays(3), Signed.AddDays(-30)),
            Care(CareKind.PlateletRichPlasma, Today.AddDays(-20), Today.AddDays(-20), Signed.AddDays(-20)) with
            {
                CorrectedAt = Signed.AddDays(1),
                CorrectedBy = "H. Corr",
            },
            Care(CareKind.PainRelief, Today.AddDays(-40), Today.AddDays(-30), Signed.AddDays(-40)),
        ];

        IReadOnlyList<string> told = SinceWords.Of(At(view, 5), cases, care);

        Assert.Equal(3, told.Count);
        Assert.Contains(Names.Of(CareKind.PlateletRichPlasma), told[0], StringComparison.Ordinal);
        Assert.Contains("corrected (H. Corr)", told[0], StringComparison.Ordinal);
        Assert.StartsWith($"{Figures.Date(Today.AddDays(2))}: {Names.Of(CareKind.ShockWave)}", told[1], StringComparison.Ordinal);
        Assert.Equal($"{Figures.Date(Today.AddDays(3))}: {Names.Of(CareKind.AntiInflammatory)} ended (M. Enter).", told[2]);
    }

    [Fact]
    public async Task A_medicine_that_has_yet_to_end_has_not_ended()
    {
        (ExerciseView view, IReadOnlyList<OpenCaseToday> cases) = await SignedAsync("Ongoing");

        Assert.Empty(
            SinceWords.Of(At(view, 5), cases, [Care(CareKind.AntiInflammatory, Today.AddDays(-3), Today.AddDays(6), Signed.AddDays(-3))])
        );
    }

    [Fact]
    public async Task Amended_examinations_words_on_links_and_missed_bookings_since_are_told()
    {
        (ExerciseView view, IReadOnlyList<OpenCaseToday> cases) = await SignedAsync("Changed");
        LinkWordView word = new()
        {
            Id = Guid.NewGuid(),
            Version = Guid.NewGuid(),
            Constraint = new LinkConstraint(LinkConstraintKind.Break, Place("a"), Place("b")),
            Reason = "another scar",
            SaidBy = "M. Said",
            SaidAt = Signed.AddDays(-9),
            WithdrawnBy = "M. Back",
            WithdrawnAt = Signed.AddDays(2),
            WithdrawnReason = "it was the same",
            Applies = true,
        };
        OpenCaseToday changed = cases[0] with
        {
            Case = cases[0].Case with
            {
                Examinations =
                [
                    Card(amendments: 1, Signed.AddDays(1)),
                    Card(amendments: 1, Signed.AddDays(-1)),
                    Card(amendments: 0, Signed.AddDays(1)),
                ],
                LinkWords = [word, word with { SaidAt = Signed.AddDays(3), WithdrawnAt = null }],
            },
        };
        ExerciseView later = At(view, 9) with
        {
            Missed = [new MissedRecheck(changed.Case.Id, Today.AddDays(-1)), new MissedRecheck(changed.Case.Id, Today.AddDays(4))],
        };

        IReadOnlyList<string> told = SinceWords.Of(later, [changed], []);

        Assert.Equal(
            [
                $"{Figures.Date(Today.AddDays(1))}: examination of {Figures.Date(Today.AddDays(-60))} amended, {changed.Name} (M. Signed).",
                $"{Figures.Date(Today.AddDays(2))}: word on a link taken back, {changed.Name} (M. Back): it was the same",
                $"{Figures.Date(Today.AddDays(3))}: link {Names.Of(LinkConstraintKind.Break)}, {changed.Name} (M. Said): another scar",
                $"{Figures.Date(Today.AddDays(4))}: the booked recheck was missed, {changed.Name}.",
            ],
            told
        );
    }

    private async Task<(ExerciseView View, IReadOnlyList<OpenCaseToday> Cases)> SignedAsync(string name)
    {
        HorseInRehab horse = await HorseInRehab.BuildAsync(practice, name);
        await horse.SignAsync(HorseInRehab.Plan);
        CaseView injury = (await practice.Services.GetRequiredService<GetCase>().ExecuteAsync(practice.Vet, horse.Case)).Value;
        return (await horse.ViewAsync(), [OpenCaseToday.Of(injury)]);
    }

    /// <summary>The same horse some days later.</summary>
    private static ExerciseView At(ExerciseView view, int days) =>
        view with
        {
            Practice = view.Practice with { Today = Today.AddDays(days) },
        };

    private static CareView Care(CareKind kind, DateOnly from, DateOnly? until, DateTime entered) =>
        new()
        {
            Id = Guid.NewGuid(),
            Version = Guid.NewGuid(),
            Entry = new CareEntry
            {
                Kind = kind,
                From = from,
                Until = until,
            },
            EnteredBy = "M. Enter",
            EnteredAt = entered,
            CorrectedBy = null,
            CorrectedAt = null,
            StandDownBy = null,
        };

    private static ExaminationCard Card(int amendments, DateTime written) =>
        new()
        {
            Id = Guid.NewGuid(),
            Version = Guid.NewGuid(),
            Date = Today.AddDays(-60),
            Name = null,
            State = ExaminationState.Signed,
            Stance = Stance.WeightBearing,
            Examiner = null,
            OutsidePractice = null,
            SignedBy = "M. Signed",
            SignedAt = written,
            EnteredBy = null,
            WrittenAt = written,
            Amendments = amendments,
            ReadingCount = 2,
        };

    private static PlaceKey Place(string examination) => new(examination, LinkPath.Axial, new Centimetres(16));
}
