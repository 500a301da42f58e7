using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Linking;

namespace RehabTrack.Rechecks.Tests.Linking;

/// <summary>
/// Two tapes that share one place: the difference of their shifts is held beforehand with variance 2τ² and read with 2σ², and normal
/// densities are joined by the inverse of their variances.
/// </summary>
public sealed class ShiftFitTests
{
    private const double Prior = 2 * 0.6 * 0.6;
    private const double Tape = 2 * 0.7 * 0.7;

    private static ShiftFit Fit(params Examination[] examinations)
    {
        CourseState state = CourseReader.Read(examinations, CommonTape.None, [], new LinkingSettings());
        TrackColumn column = new(0, examinations.Length);
        state.Columns[0].Add(column);
        foreach (PlaceNode[][] paths in state.Places)
        {
            if (paths[0].Length > 0)
            {
                column.Add(paths[0][0]);
            }
        }

        return ShiftFit.Of(state, new LinkingSettings());
    }

    [Fact]
    public void The_difference_of_two_tapes_is_drawn_to_none_by_how_well_it_was_read()
    {
        ShiftFit fit = Fit(Tapes.Exam(1, 10), Tapes.Exam(2, 11));
        double variance = 1 / ((1 / Prior) + (1 / Tape));

        Assert.Equal(variance / Tape, fit.Difference(1, 0), 12);
        Assert.Equal(variance, fit.DifferenceVariance(1, 0, 0), 12);
        Assert.Equal(0, fit.DifferenceVariance(1, 1, 1));
    }

    // Given the other tape, one shift has variance 1/(1/τ² + 1/2σ²): only what the alignment leaves open beyond that is added.
    [Fact]
    public void What_the_alignment_leaves_open_widens_it()
    {
        ShiftFit fit = Fit(Tapes.Exam(1, 10), Tapes.Exam(2, 11));
        double own = 1 / ((2 / Prior) + (1 / Tape));

        Assert.Equal(fit.DifferenceVariance(1, 0, 0), fit.DifferenceVariance(1, 0, own), 12);
        Assert.Equal(fit.DifferenceVariance(1, 0, 0) + 0.1, fit.DifferenceVariance(1, 0, own + 0.1), 12);
    }

    [Fact]
    public void A_tape_that_read_nothing_is_as_unsure_as_before_and_one_that_read_a_single_path_is_not()
    {
        ShiftFit fit = Fit(Tapes.Exam(1, 10), Tapes.Exam(2));
        Assert.Equal(Prior, fit.DifferenceVariance(1, 0, 0), 12);
        Assert.Equal(Prior, fit.DifferenceVariance(0, 1, 0), 12);
        Assert.Equal(0, fit.Difference(1, 0));

        ShiftFit branch = Fit(
            Tapes.Of(1, Tapes.Row(1, Part.Body, 10), Tapes.Row(1, Part.MedialBranch, 20)),
            Tapes.Of(2, Tapes.Row(2, Part.Body, 11))
        );
        Assert.NotEqual(0, branch.Difference(1, 0));
    }
}
