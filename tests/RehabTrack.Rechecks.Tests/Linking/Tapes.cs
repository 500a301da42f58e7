using System.Globalization;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Linking;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Tests.Linking;

/// <summary>Examinations written as rows of levels, and what the linker made of them in a form that can be compared.</summary>
internal static class Tapes
{
    /// <summary>The n-th examination, 60 days apart, called e1, e2 …; readings are called e1@10.9.</summary>
    public static Examination Exam(int number, params double[] levels) => Exam(number, Part.Body, levels);

    public static Examination Exam(int number, Part part, params double[] levels) =>
        Of(number, [.. levels.Select(level => Row(number, part, level))]);

    public static Examination Of(int number, params Reading[] readings) =>
        new()
        {
            Id = Text($"e{number}"),
            Date = new DateOnly(2024, 1, 1).AddDays(60 * number),
            Readings = readings,
        };

    public static Reading Row(int number, Part part, double level, double? ligament = null, double? lesion = null) =>
        new()
        {
            Id = Text($"e{number}@{level}/{part}"),
            Part = part,
            Level = new Centimetres(level),
            LigamentArea = ligament is { } area ? new SquareCentimetres(area) : null,
            LesionArea = lesion is { } seen ? LesionArea.Measured(new SquareCentimetres(seen)) : LesionArea.Unknown,
        };

    public static PlaceKey Key(int number, double level, LinkPath path = LinkPath.Axial) =>
        new(Text($"e{number}"), path, new Centimetres(level));

    public static LinkConstraint Pin(PlaceKey first, PlaceKey second) => new(LinkConstraintKind.Pin, first, second);

    public static LinkConstraint Break(PlaceKey first, PlaceKey second) => new(LinkConstraintKind.Break, first, second);

    public static LinkedCourse Link(IReadOnlyList<Examination> examinations, params LinkConstraint[] words) =>
        LevelLinker.Link(examinations, words, new LinkingSettings());

    /// <summary>The track of a place.</summary>
    public static Track TrackOf(this LinkedCourse course, PlaceKey key) =>
        course.Tracks.Single(track => track.Steps.Any(step => step.Place.Key == key));

    public static TrackStep StepOf(this LinkedCourse course, PlaceKey key) =>
        course.TrackOf(key).Steps.Single(step => step.Place.Key == key);

    /// <summary>Which readings share a track, one line a track, in the order of the tracks.</summary>
    public static string[] Company(this LinkedCourse course) =>
        [
            .. course.Tracks.Select(track =>
                string.Join(' ', track.Steps.SelectMany(step => step.Place.Readings).Select(reading => reading.Id))
            ),
        ];

    /// <summary>All that was found, to the last digit.</summary>
    public static string[] Written(this LinkedCourse course) =>
        [
            .. course.Tracks.Select(track =>
                Text($"{track.Id} {track.Path} {track.Part} {track.ConsensusLevel.Position.Value:R}: ")
                + string.Join(
                    " | ",
                    track.Steps.Select(step =>
                        Text(
                            $"{step.ExaminationId} {step.Place.Level.Position.Value:R} {step.LinkProbability:R} {step.Basis} {step.Uncertain} "
                        ) + string.Join(' ', step.Alternatives.Select(other => Text($"{other.TrackId}:{other.Probability:R}")))
                    )
                )
            ),
            .. course.Shifts.Select(shift => Text($"{shift.ExaminationId} {shift.Shift.Value:R} {shift.StandardDeviation.Value:R}")),
        ];

    /// <summary>Asserts what must hold of every answer: one track a place, one place an examination, order kept, paths apart.</summary>
    public static void AssertSound(this LinkedCourse course, IReadOnlyList<Examination> examinations, params string[] apart)
    {
        Assert.Equal(
            examinations.SelectMany(exam => exam.Readings).Select(reading => reading.Id).Order(StringComparer.Ordinal),
            course
                .Tracks.SelectMany(track => track.Steps)
                .SelectMany(step => step.Place.Readings)
                .Select(reading => reading.Id)
                .Order(StringComparer.Ordinal)
        );
        Assert.Equal(course.Tracks.Count, course.Tracks.Select(track => track.Id).Distinct(StringComparer.Ordinal).Count());
        foreach (Track track in course.Tracks)
        {
            Assert.NotEmpty(track.Steps);
            Assert.Equal(track.Steps.Count, track.Steps.Select(step => step.ExaminationId).Distinct(StringComparer.Ordinal).Count());
            Assert.All(track.Steps, step => Assert.Equal(track.Path, step.Place.Key.Path));
            Assert.All(
                track.Steps,
                (step, index) =>
                {
                    Assert.Equal(index == 0, step.LinkProbability is null);
                    Assert.Equal(index == 0, step.Basis == LinkBasis.First);
                    Assert.InRange(step.LinkProbability ?? 1, 0, 1);
                }
            );
        }

        Track[] joined = [.. course.Tracks.Where(track => !apart.Contains(track.Steps[0].ExaminationId, StringComparer.Ordinal))];
        foreach (Track above in joined)
        {
            foreach (Track below in joined.SkipWhile(track => track != above).Skip(1).Where(track => track.Path == above.Path))
            {
                Assert.True(above.ConsensusLevel <= below.ConsensusLevel);
                foreach (TrackStep step in above.Steps)
                {
                    foreach (TrackStep other in below.Steps.Where(other => other.ExaminationId == step.ExaminationId))
                    {
                        Assert.True(step.Place.Level < other.Place.Level, $"{step.Place.Key} and {other.Place.Key} swap.");
                    }
                }
            }
        }
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
