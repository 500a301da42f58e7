using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Linking;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Cases;
using RehabTrack.Web.Features.Cases;

namespace RehabTrack.Web.Tests.Features.Cases;

public sealed class UnusedWordsTests
{
    private static readonly LinkConstraint Straight = Pin(20, 20);
    private static readonly LinkConstraint Crossing = Pin(22, 18);
    private static readonly LinkConstraint Lost = Pin(19, 19);

    private static readonly LinkedCourse Links = LevelLinker.Link(
        Invented.Course(2).Examinations,
        [Straight, Crossing, Lost],
        new LinkingSettings()
    );

    [Fact]
    public void A_word_that_is_followed_needs_no_remark() => Assert.Null(UnusedWords.ReasonOf(Word(Straight), Links));

    [Fact]
    public void A_word_that_an_earlier_one_rules_out_says_so() =>
        Assert.Equal(LeftOutReason.Crossing, UnusedWords.ReasonOf(Word(Crossing), Links));

    [Fact]
    public void A_word_that_was_taken_back_needs_no_remark() =>
        Assert.Null(UnusedWords.ReasonOf(Word(Crossing) with { WithdrawnAt = DateTime.UnixEpoch }, Links));

    [Fact]
    public void A_word_whose_place_is_gone_says_so_but_not_one_whose_place_is_still_to_come()
    {
        Assert.Equal(LeftOutReason.PlaceNotFound, UnusedWords.ReasonOf(Word(Lost) with { Applies = false }, Links));
        Assert.Null(UnusedWords.ReasonOf(Word(Lost), Links));
    }

    private static LinkConstraint Pin(double first, double second) =>
        new(
            LinkConstraintKind.Pin,
            new PlaceKey(Invented.ExaminationId(1).ToString(), LinkPath.Axial, new Centimetres(first)),
            new PlaceKey(Invented.ExaminationId(2).ToString(), LinkPath.Axial, new Centimetres(second))
        );

    private static LinkWordView Word(LinkConstraint constraint) =>
        new()
        {
            Id = Guid.NewGuid(),
            Version = Guid.NewGuid(),
            Constraint = constraint,
            Reason = "seen",
            SaidBy = "A. Vet",
            SaidAt = DateTime.UnixEpoch,
            WithdrawnBy = null,
            WithdrawnAt = null,
            WithdrawnReason = null,
            Applies = true,
        };
}
