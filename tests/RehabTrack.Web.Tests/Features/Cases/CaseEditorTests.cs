using Bunit;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Room;
using RehabTrack.Web.Features.Cases;
using RehabTrack.Web.Tests.Hosting;
using RehabTrack.Wording;

namespace RehabTrack.Web.Tests.Features.Cases;

/// <summary>A case that two people change at once.</summary>
public sealed class CaseEditorTests(EmptyPractice kept) : IClassFixture<EmptyPractice>
{
    [Fact]
    public async Task What_both_changed_is_chosen_and_the_rest_comes_together()
    {
        HorseInRehab horse = await HorseInRehab.BuildAsync(kept, "Larch Ghyll");
        CaseView before = await ReadAsync(horse);
        await using BunitContext tab = kept.Tab();
        IRenderedComponent<CaseEditor> page = tab.Render<CaseEditor>(with => with.Add(one => one.Id, horse.Case));
        await page.TypeAsync("onset", "2026-09-03");
        await page.TypeAsync("target-work", "hacking");
        await kept.DoneAsync<ChangeCase, ChangeCaseInput, Saved>(
            new ChangeCaseInput
            {
                CommandId = Guid.NewGuid(),
                Id = horse.Case,
                Version = before.Version,
                Limb = Limb.LeftHind,
                Structure = Structure.SuspensoryLigament,
                Onset = new DateOnly(2026, 9, 2),
                Landmark = before.Course.Landmark,
                Diagnosis = "seen from behind",
                TargetFraction = 0.1,
                HockToJointCm = 6.5,
            }
        );

        await page.Find("form").SubmitAsync();

        page.AssertTaken(kept.Vet.Name, $"{CaseForm.TargetPercent}: 10", $"{CaseForm.HockToJoint}: 6.5");
        page.AssertAsks("onset", Figures.Date(new DateOnly(2026, 9, 3)), Figures.Date(new DateOnly(2026, 9, 2)));
        await page.ChooseAsync("onset", theirs: false);
        Assert.Equal("2026-09-03", page.Find("#onset").GetAttribute("value"));
        await page.Find("form").SubmitAsync();

        CaseView now = await ReadAsync(horse);
        Assert.Equal(
            (new DateOnly(2026, 9, 3), "hacking", 0.1, "seen from behind"),
            (now.Course.Onset!.Value, now.TargetWork, now.Course.TargetFraction!.Value, now.Diagnosis)
        );
    }

    private Task<CaseView> ReadAsync(HorseInRehab horse) => kept.DoneAsync<GetCase, Guid, CaseView>(horse.Case);
}
