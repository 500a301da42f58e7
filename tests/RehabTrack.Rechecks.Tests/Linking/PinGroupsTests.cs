using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Linking;

namespace RehabTrack.Rechecks.Tests.Linking;

/// <summary>Pinned places gather into groups, and the groups stand from proximal to distal before anything is computed.</summary>
public sealed class PinGroupsTests
{
    private static string[] InOrder(Examination[] examinations, params LinkConstraint[] words) =>
        [
            .. CourseReader
                .Read(examinations, CommonTape.None, words, new LinkingSettings())
                .Pins.InOrder()
                .Select(group => string.Join(' ', group.SelectMany(place => place.Place.Readings).Select(reading => reading.Id))),
        ];

    // At the first examination 10 lies above 12, so 10 and 30 come before 12 and 5 though their mean level is larger. Nothing tells how the
    // others stand to them but their mean level, 15 twice: the earlier examinations first.
    [Fact]
    public void What_one_examination_saw_goes_before_mean_levels_and_those_before_dates() =>
        Assert.Equal(
            ["e4@14/Body e5@16/Body", "e6@15/Body e7@15/Body", "e1@10/Body e2@30/Body", "e1@12/Body e3@5/Body"],
            InOrder(
                [
                    Tapes.Exam(1, 10, 12),
                    Tapes.Exam(2, 30),
                    Tapes.Exam(3, 5),
                    Tapes.Exam(4, 14),
                    Tapes.Exam(5, 16),
                    Tapes.Exam(6, 15),
                    Tapes.Exam(7, 15),
                ],
                Tapes.Pin(Tapes.Key(6, 15), Tapes.Key(7, 15)),
                Tapes.Pin(Tapes.Key(1, 12), Tapes.Key(3, 5)),
                Tapes.Pin(Tapes.Key(1, 10), Tapes.Key(2, 30)),
                Tapes.Pin(Tapes.Key(4, 14), Tapes.Key(5, 16))
            )
        );

    [Fact]
    public void Groups_that_meet_are_one_and_the_first_leaves_none_behind() =>
        Assert.Equal(
            ["e1@10/Body e3@12/Body e2@15/Body"],
            InOrder(
                [Tapes.Exam(1, 10), Tapes.Exam(2, 15), Tapes.Exam(3, 12)],
                Tapes.Pin(Tapes.Key(1, 10), Tapes.Key(3, 12)),
                Tapes.Pin(Tapes.Key(3, 12), Tapes.Key(2, 15))
            )
        );
}
