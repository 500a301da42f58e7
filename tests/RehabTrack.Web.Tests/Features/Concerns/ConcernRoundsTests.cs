using RehabTrack.Records.Exercise;
using RehabTrack.Records.Rights;
using RehabTrack.Web.Features.Concerns;

namespace RehabTrack.Web.Tests.Features.Concerns;

public sealed class ConcernRoundsTests
{
    private static readonly TimeSpan Pause = TimeSpan.FromMinutes(15);
    private static readonly DateTimeOffset Start = new(2026, 11, 24, 9, 0, 0, TimeSpan.Zero);
    private static readonly Actor Trainer = new(Guid.NewGuid(), Guid.NewGuid(), Role.Trainer, "Oona Pell");

    [Fact]
    public void The_first_of_a_horse_goes_at_once_and_all_that_follow_within_the_pause_go_in_one_letter()
    {
        ConcernRounds rounds = new(Pause);
        Guid horse = Guid.NewGuid();
        ConcernRing[] flood = [.. Enumerable.Range(0, 100).Select(_ => Of(horse))];

        Assert.Equal(1, flood.Count(ring => rounds.IsNow(ring, Start)));
        Assert.Equal(Start + Pause, rounds.Next);
        Assert.Empty(rounds.Due(Start + Pause - TimeSpan.FromSeconds(1)));

        (ConcernRing latest, int count) = Assert.Single(rounds.Due(Start + Pause));

        Assert.Equal((flood[^1], 99), (latest, count));
    }

    [Fact]
    public void Another_horse_does_not_wait_for_the_first()
    {
        ConcernRounds rounds = new(Pause);

        Assert.True(rounds.IsNow(Of(Guid.NewGuid()), Start));
        Assert.True(rounds.IsNow(Of(Guid.NewGuid()), Start));
    }

    [Fact]
    public void After_a_pause_without_any_the_next_goes_at_once_again_and_nothing_is_remembered()
    {
        ConcernRounds rounds = new(Pause);
        Guid horse = Guid.NewGuid();
        rounds.IsNow(Of(horse), Start);

        Assert.Empty(rounds.Due(Start + Pause));
        Assert.Null(rounds.Next);
        Assert.True(rounds.IsNow(Of(horse), Start + Pause));
    }

    [Fact]
    public void A_letter_about_several_begins_a_pause_of_its_own()
    {
        ConcernRounds rounds = new(Pause);
        Guid horse = Guid.NewGuid();
        rounds.IsNow(Of(horse), Start);
        rounds.IsNow(Of(horse), Start);
        rounds.Due(Start + Pause);

        Assert.False(rounds.IsNow(Of(horse), Start + Pause));
        Assert.Equal(Start + Pause + Pause, rounds.Next);
    }

    [Fact]
    public void The_bell_remembers_a_bounded_number_and_the_latest_are_among_them()
    {
        ConcernBell bell = new();
        Guid first = Guid.NewGuid();
        bell.Ring(Trainer, Guid.NewGuid(), new LogAnswer(first, true));
        for (int more = 0; more < ConcernBell.Most; more++)
        {
            Guid line = Guid.NewGuid();
            bell.Ring(Trainer, Guid.NewGuid(), new LogAnswer(line, true));
            bell.Ring(Trainer, Guid.NewGuid(), new LogAnswer(line, true));
        }

        Assert.Equal(ConcernBell.Most, bell.Rung.Count);
        for (int rung = 0; rung < ConcernBell.Most; rung++)
        {
            Assert.True(bell.Rung.TryRead(out _));
        }

        // So long ago that it is not known any more.
        bell.Ring(Trainer, Guid.NewGuid(), new LogAnswer(first, true));
        Assert.Equal(1, bell.Rung.Count);
    }

    private static ConcernRing Of(Guid horse) => new(Trainer, horse, Guid.NewGuid());
}
