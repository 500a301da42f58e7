using RehabTrack.Rechecks.Linking;

namespace RehabTrack.Rechecks.Tests.Linking;

public sealed class LevelLinkerTests
{
    [Fact]
    public void Every_place_of_every_examination_is_on_exactly_one_track()
    {
        for (int seed = 0; seed < 20; seed++)
        {
            SimulatedLigament ligament = SimulatedLigament.Of(seed, new SimulatedRegime(2, 0.1, 0.1));
            LinkedCourse course = LevelLinker.Link(ligament.Examinations, [], new LinkingSettings());
            string[] read =
            [
                .. ligament
                    .Examinations.SelectMany(examination => examination.Readings)
                    .Select(reading => reading.Id)
                    .Order(StringComparer.Ordinal),
            ];
            string[] tracked =
            [
                .. course
                    .Tracks.SelectMany(track => track.Steps)
                    .SelectMany(step => step.Place.Readings)
                    .Select(reading => reading.Id)
                    .Order(StringComparer.Ordinal),
            ];
            Assert.Equal(read, tracked);
        }
    }
}
