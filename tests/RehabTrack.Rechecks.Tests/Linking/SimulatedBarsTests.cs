using RehabTrack.Rechecks.Linking;
using RehabTrack.Simulation.Cases;
using RehabTrack.Simulation.Scores;
using RehabTrack.Simulation.Studies;
using Xunit.Abstractions;

namespace RehabTrack.Rechecks.Tests.Linking;

/// <summary>
/// The bars of docs/methods/linking.md, over simulated ligaments with known places: they rank methods and are no clinical evidence.
/// </summary>
public sealed class SimulatedBarsTests(ITestOutputHelper output)
{
    [Fact]
    public void Two_centimetres_apart_with_few_misses_F1_is_at_least_93()
    {
        LinkScore score = Score(new SimulatedRegime(2, 0.05, 0.05), 500);
        Assert.True(score.F1 >= 0.955, $"F1 {score.F1:F4}");
        Assert.True(score.SureRight >= 0.98, $"of links said at least .9, {score.SureRight:F4} are right");
        Assert.True(score.SureShare >= 0.9, "hardly any link is said to be sure");
    }

    [Fact]
    public void Three_centimetres_apart_with_many_misses_F1_is_at_least_865()
    {
        LinkScore score = Score(new SimulatedRegime(3, 0.12, 0.15), 500);
        Assert.True(score.F1 >= 0.91, $"F1 {score.F1:F4}");
    }

    [Fact]
    public void From_the_fifth_examination_back_to_the_first_places_are_found_again()
    {
        LinkScore score = Score(new SimulatedRegime(2, 0.1, 0.1), 500);
        Assert.True(score.FarRecall >= 0.92, $"recall {score.FarRecall:F4}");
        Assert.True(score.FarPrecision >= 0.89, $"precision {score.FarPrecision:F4}");
        Assert.True(score.SureRight >= 0.96, $"of links said at least .9, {score.SureRight:F4} are right");
    }

    [Fact]
    public void A_lesion_that_doubles_at_every_examination_keeps_its_links()
    {
        LinkScore near = Score(new SimulatedRegime(2, 0.05, 0.05, 2), 500);
        LinkScore far = Score(new SimulatedRegime(3, 0.05, 0.05, 2), 500);
        Assert.True(near.FarRecall >= 0.97, $"recall {near.FarRecall:F4} at 2 cm");
        Assert.True(far.FarRecall >= 0.97, $"recall {far.FarRecall:F4} at 3 cm");
    }

    [Fact]
    public void Where_areas_tell_neighbours_apart_less_well_the_links_said_sure_are_still_right()
    {
        LinkScore few = Score(new SimulatedRegime(2, 0.05, 0.05) { SmoothAreas = true }, 300);
        LinkScore many = Score(new SimulatedRegime(2, 0.1, 0.1) { SmoothAreas = true }, 300);
        Assert.True(few.F1 >= 0.9, $"F1 {few.F1:F4}");
        Assert.True(few.SureRight >= 0.95, $"{few.SureRight:F4}");
        Assert.True(many.SureRight >= 0.9, $"{many.SureRight:F4}");
    }

    [Fact]
    public void By_positions_only_the_tracks_beat_the_plain_alignment_of_neighbours()
    {
        SimulatedRegime regime = new(2, 0.05, 0.05) { Areas = false };
        LinkScore score = Score(regime, 500);
        double plain = PlainF1(regime, 500);
        output.WriteLine($"plain alignment F1 {plain:F4}");
        Assert.True(score.F1 > plain, $"F1 {score.F1:F4} against {plain:F4}");
        Assert.True(score.SureRight >= 0.95, $"{score.SureRight:F4}");
    }

    [Fact]
    public void A_level_that_turns_abnormal_or_swells_mostly_keeps_its_link_and_is_asked_about_otherwise()
    {
        LinkScore lesion = Score(new SimulatedRegime(2, 0.05, 0.05) { NewLesion = true }, 400);
        LinkScore swelling = Score(new SimulatedRegime(2, 0.05, 0.05) { Swelling = 1.3 }, 400);
        Assert.True(lesion.StruckRecall >= 0.87, $"new lesion: {lesion.StruckRecall:F4} linked");
        Assert.True(lesion.StruckLinkedOrAsked >= 0.95, $"new lesion: {lesion.StruckLinkedOrAsked:F4} linked or asked");
        Assert.True(swelling.StruckRecall >= 0.65, $"swelling: {swelling.StruckRecall:F4} linked");
        Assert.True(swelling.StruckLinkedOrAsked >= 0.9, $"swelling: {swelling.StruckLinkedOrAsked:F4} linked or asked");
    }

    [Fact]
    public void A_four_times_finer_grid_hardly_moves_a_probability()
    {
        LinkingSettings usual = new();
        LinkingSettings finer = usual with
        {
            ShiftSumStepCm = usual.ShiftSumStepCm / 4,
            CommonLesionChangeStep = usual.CommonLesionChangeStep / 4,
        };
        List<double> moved = [];
        for (int seed = 0; seed < 60; seed++)
        {
            // Two examinations: one alignment, whose probabilities are what the grids sum.
            SimulatedLigament ligament = SimulatedLigament.Of(seed, new SimulatedRegime(2, 0.05, 0.05) { Examinations = 2 });
            Dictionary<string, double> coarse = ProbabilitiesOf(ligament, usual);
            Dictionary<string, double> fine = ProbabilitiesOf(ligament, finer);
            Assert.Equal(coarse.Keys.Order(StringComparer.Ordinal), fine.Keys.Order(StringComparer.Ordinal));
            moved.AddRange(coarse.Select(pair => Math.Abs(pair.Value - fine[pair.Key])));
        }

        output.WriteLine($"a four times finer grid: {moved.Average():F5} on average, {moved.Max():F4} at most, {moved.Count} links");
        Assert.True(moved.Average() < 0.0005, $"{moved.Average():F5} on average");
        Assert.True(moved.Max() < 0.03, $"{moved.Max():F4} at most");

        static Dictionary<string, double> ProbabilitiesOf(SimulatedLigament ligament, LinkingSettings settings) =>
            LevelLinker
                .Link(ligament.Examinations, [], settings)
                .Tracks.SelectMany(track => track.Steps)
                .Where(step => step.LinkProbability is not null)
                .ToDictionary(step => step.Place.Readings[0].Id, step => step.LinkProbability!.Value, StringComparer.Ordinal);
    }

    [Fact]
    public void The_shift_of_each_examination_lies_within_its_error()
    {
        SimulatedRegime regime = new(2, 0.05, 0.05);
        int inside = 0;
        int count = 0;
        double square = 0;
        for (int seed = 0; seed < 300; seed++)
        {
            SimulatedLigament ligament = SimulatedLigament.Of(seed, regime);
            LinkedCourse course = LevelLinker.Link(ligament.Examinations, [], new LinkingSettings());
            for (int e = 1; e < ligament.Examinations.Count; e++)
            {
                double error = course.Shifts[e].Shift.Value - (ligament.Shifts[e] - ligament.Shifts[0]);
                count++;
                square += error * error;
                inside += Math.Abs(error) <= 1.96 * course.Shifts[e].StandardDeviation.Value ? 1 : 0;
            }
        }

        output.WriteLine($"shift: root mean square error {Math.Sqrt(square / count):F3} cm, inside 95 % {(double)inside / count:F3}");
        Assert.True(Math.Sqrt(square / count) < 0.45);
        Assert.InRange((double)inside / count, 0.9, 0.99);
    }

    [Fact]
    public void On_a_regular_tape_the_linker_is_no_worse_than_linking_by_number()
    {
        double byNumber = 0;
        double byLinker = 0;
        int numbers = 0;
        int links = 0;
        for (int seed = 0; seed < 300; seed++)
        {
            RegularTape tape = RegularTape.Of(seed);
            LinkedCourse course = LevelLinker.Link(tape.Examinations, [], new LinkingSettings());
            foreach (Track track in course.Tracks)
            {
                foreach ((TrackStep before, TrackStep step) in track.Steps.Zip(track.Steps.Skip(1)))
                {
                    byLinker += Math.Abs(tape.PositionOf(step.Place.Readings[0].Id) - tape.PositionOf(before.Place.Readings[0].Id));
                    links++;
                }
            }

            foreach ((var before, var exam) in tape.Examinations.Zip(tape.Examinations.Skip(1)))
            {
                foreach ((var first, var second) in before.Readings.Zip(exam.Readings))
                {
                    byNumber += Math.Abs(tape.PositionOf(second.Id) - tape.PositionOf(first.Id));
                    numbers++;
                }
            }
        }

        byNumber /= numbers;
        byLinker /= links;
        output.WriteLine(
            $"regular tape: mean place error by number {byNumber:F3} cm, by the linker {byLinker:F3} cm, links {(double)links / numbers:F3} of all"
        );
        Assert.True(byLinker < byNumber, $"{byLinker:F3} against {byNumber:F3} cm");
        Assert.True(links > 0.75 * numbers);
    }

    private LinkScore Score(SimulatedRegime regime, int count)
    {
        LinkScore score = LinkingStudy.Score(regime, count);
        output.WriteLine(
            $"{regime}: F1 {score.F1:F4}, recall {score.Recall:F3}, precision {score.Precision:F3}; 5 to 1 {score.FarRecall:F3} / {score.FarPrecision:F3}; "
                + $"sure {score.SureRight:F4} right, {score.SureShare:F3} of all; struck {score.StruckRecall:F3} linked, {score.StruckLinkedOrAsked:F3} linked or asked"
        );
        return score;
    }

    private static double PlainF1(SimulatedRegime regime, int count)
    {
        int truth = 0;
        int found = 0;
        int right = 0;
        LinkingSettings settings = new();
        for (int seed = 0; seed < count; seed++)
        {
            SimulatedLigament ligament = SimulatedLigament.Of(50_000 + seed, regime);
            foreach ((var before, var exam) in ligament.Examinations.Zip(ligament.Examinations.Skip(1)))
            {
                PlainAlignment plain = PlainAligner.AlignOverShifts(
                    [.. before.Readings.Select(reading => reading.Level.Position.Value)],
                    [.. exam.Readings.Select(reading => reading.Level.Position.Value)],
                    settings
                );
                int[] places = [.. exam.Readings.Select(reading => ligament.PlaceOf(reading.Id))];
                for (int i = 0; i < before.Readings.Count; i++)
                {
                    int place = ligament.PlaceOf(before.Readings[i].Id);
                    truth += Array.IndexOf(places, place) >= 0 ? 1 : 0;
                    found += plain.Partners[i] >= 0 ? 1 : 0;
                    right += plain.Partners[i] >= 0 && places[plain.Partners[i]] == place ? 1 : 0;
                }
            }
        }

        return 2.0 * right / (truth + found);
    }
}
