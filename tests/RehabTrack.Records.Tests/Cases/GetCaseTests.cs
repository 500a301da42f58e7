using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Room;
using RehabTrack.Records.Tests.House;

namespace RehabTrack.Records.Tests.Cases;

public sealed class GetCaseTests
{
    [Fact]
    public async Task A_case_is_read_with_its_signed_examinations_its_drafts_apart_and_the_summary_of_what_was_signed()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Saved horse = await house.HorseAsync();
        Saved injury = await house.CaseAsync(horse.Id);
        await house.SignedAsync(injury.Id, Wishes.Content(new DateOnly(2026, 6, 1), (10, 0), (12, 0.5), (14, 0)));
        await house.SignedAsync(injury.Id, Wishes.Content(new DateOnly(2026, 8, 1), (10, 0), (12, 0.3), (14, 0)));
        await house.SignedAsync(injury.Id, Wishes.Content(new DateOnly(2026, 10, 1), (10, 0), (12, 0.15), (14, 0)));
        await house.DraftAsync(injury.Id, Wishes.Content(new DateOnly(2026, 11, 20), (12, 1.4)));

        CaseView view = (await house.Get<GetCase>().ExecuteAsync(house.Vet, injury.Id)).Value;

        Assert.Equal("Thistle Vane", view.Horse.Name);
        Assert.Equal(3, view.Course.Examinations.Count);
        Assert.All(view.Course.Examinations, examination => Assert.Equal(ExaminationState.Signed, examination.State));
        Assert.Equal(4, view.Examinations.Count);
        Assert.Equal(1.4, Assert.Single(Assert.Single(view.Drafts).Readings).LesionArea.Area.Value);
        Assert.Equal(Verdict.Healing, view.Summary!.Verdict);
        Assert.Equal(3, view.Summary.ExaminationCount);
        Assert.Equal(new DateOnly(2026, 10, 1), view.Summary.LastSigned);
        Assert.Equal(new DateOnly(2026, 11, 30), view.Summary.DueOn);
        Assert.Equal("Edda Marrow", view.Examinations[0].SignedBy);
        Assert.Equal(4, view.CourseWithDrafts.Examinations.Count);
    }
}
