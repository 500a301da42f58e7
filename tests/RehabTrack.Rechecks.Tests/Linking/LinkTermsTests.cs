using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Linking;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Tests.Linking;

/// <summary>
/// Whether two tracks are one place, with the densities of docs/methods/linking.md written out for what one place and two places would
/// have been read as.
/// </summary>
public sealed class LinkTermsTests
{
    private const double Sigma = 0.7;
    private static readonly LinkingSettings Settings = new();

    /// <summary>What was recorded beside the level.</summary>
    public enum Recorded
    {
        Nothing,
        Areas,
        FarAreas,
        NoLesions,
        Thickness,
        AreasOnOneSide,
        AreasBelow,
        ThicknessAbove,
        ThicknessBelow,
    }

    // Six examinations look there; the first track was read by two or one of them, the second by others, 0.9 cm further down.
    [Theory]
    [InlineData(Recorded.Nothing, 2, 3)]
    [InlineData(Recorded.Nothing, 1, 1)]
    [InlineData(Recorded.Areas, 2, 3)]
    [InlineData(Recorded.Areas, 1, 4)]
    [InlineData(Recorded.FarAreas, 2, 1)]
    [InlineData(Recorded.NoLesions, 2, 3)]
    [InlineData(Recorded.Thickness, 2, 3)]
    [InlineData(Recorded.Thickness, 3, 1)]
    [InlineData(Recorded.AreasOnOneSide, 2, 2)]
    [InlineData(Recorded.AreasBelow, 2, 2)]
    [InlineData(Recorded.ThicknessAbove, 2, 2)]
    [InlineData(Recorded.ThicknessBelow, 2, 2)]
    public void The_odds_that_two_tracks_are_one_place_are_those_of_the_densities_written_out(Recorded recorded, int first, int second)
    {
        CourseState state = Placed(recorded, first, second);
        Consensus consensus = new();
        consensus.Gather(state, 0, -1);
        PlaceNode[][] tracks = [.. state.Columns[0].Skip(1).Take(2).Select(MembersOf)];
        int looks = state.Examinations.Count;

        double away = Mean(tracks[1], place => place.Level) - Mean(tracks[0], place => place.Level);
        double share = (1.0 / first) + (1.0 / second);
        double variance = Sigma * Sigma * share;
        double expected =
            Math.Log(state.Spacing[0] * Read(first + second, looks) / (Read(first, looks) * Read(second, looks)))
            + Math.Log(Math.Exp(-away * away / (2 * variance)) / Math.Sqrt(2 * Math.PI * variance))
            + (
                recorded switch
                {
                    Recorded.Areas or Recorded.FarAreas => Agreement(
                        Difference(tracks, place => place.LogLigamentArea),
                        share,
                        0.076,
                        0.25,
                        6
                    ) + Agreement(Math.Asinh(LesionOf(tracks[1])) - Math.Asinh(LesionOf(tracks[0])), share, 0.26, 0.8, 2.5),
                    Recorded.NoLesions => Agreement(Difference(tracks, place => place.LogLigamentArea), share, 0.076, 0.25, 6) + 0.3,
                    Recorded.Thickness => Agreement(Difference(tracks, place => place.LogThickness), share, 0.075, 0.2, 6),
                    _ => 0,
                }
            );

        Assert.Equal(expected, new LinkTerms(Settings).LogOddsOfOne(consensus, 1, 2, state.Spacing[0]), 9);
    }

    /// <summary>A track is a lasting place, missed with 8 %, or one in ten a level added once, read again with 10 %.</summary>
    private static double Read(int readings, int looks) =>
        (Math.Pow(0.92, readings) * Math.Pow(0.08, looks - readings)) + (0.1 * Math.Pow(0.1, readings - 1));

    /// <summary>Log of the normal density of a difference between means over that of the background; the SD is of two single readings.</summary>
    private static double Agreement(double difference, double share, double deviation, double background, double cap)
    {
        double own = deviation * Math.Sqrt(share / 2);
        double ratio = background / own * Math.Exp((-0.5 * Math.Pow(difference / own, 2)) + (0.5 * Math.Pow(difference / background, 2)));
        return Math.Max(-cap, Math.Log(ratio));
    }

    private static double Mean(PlaceNode[] track, Func<PlaceNode, double> of) => track.Average(of);

    private static double Difference(PlaceNode[][] tracks, Func<PlaceNode, double> of) => Mean(tracks[1], of) - Mean(tracks[0], of);

    private static double LesionOf(PlaceNode[] track) => Mean(track, place => place.Lesion);

    private static PlaceNode[] MembersOf(TrackColumn column) => [.. column.Members.ToArray().OfType<PlaceNode>()];

    /// <summary>Every examination reads 10 and 20 cm; one of the two tracks between them each, as far as it goes.</summary>
    private static CourseState Placed(Recorded recorded, int first, int second)
    {
        Examination[] examinations = [.. Enumerable.Range(0, 6).Select(e => Tapes.Of(e, [.. Rows(e)]))];
        CourseState state = CourseReader.Read(examinations, CommonTape.None, [], Settings);
        state.Columns[0].AddRange(Enumerable.Range(0, 4).Select(_ => new TrackColumn(0, examinations.Length)));
        foreach (PlaceNode[] places in state.Places.Select(paths => paths[0]))
        {
            state.Placed[places[0].Examination] = true;
            foreach (PlaceNode place in places)
            {
                int column =
                    place.Level < 11 ? 0
                    : place.Level > 19 ? 3
                    : place.Examination < first ? 1
                    : 2;
                state.Columns[0][column].Add(place);
            }
        }

        return state;

        IEnumerable<Reading> Rows(int e)
        {
            yield return Tapes.Row(e, Part.Body, 10);
            if (e < first)
            {
                yield return With(Tapes.Row(e, Part.Body, 14 + (0.1 * e)), e, above: true);
            }
            else if (e < first + second)
            {
                yield return With(Tapes.Row(e, Part.Body, 14.9 + (0.1 * e)), e, above: false);
            }

            yield return Tapes.Row(e, Part.Body, 20);
        }

        Reading With(Reading reading, int e, bool above) =>
            recorded switch
            {
                Recorded.Areas => reading with { LigamentArea = Area(1.2, e), LesionArea = Lesion(above ? 0.2 : 0.26, e) },
                Recorded.FarAreas => reading with { LigamentArea = Area(above ? 1 : 2.4, e), LesionArea = Lesion(above ? 0.02 : 0.6, e) },
                Recorded.NoLesions => reading with { LigamentArea = Area(1.2, e), LesionArea = LesionArea.None },
                Recorded.Thickness => reading with { Thickness = new Centimetres(0.9 + (0.02 * e)) },
                Recorded.AreasOnOneSide when above => reading with { LigamentArea = Area(1.2, e), LesionArea = Lesion(0.2, e) },
                Recorded.AreasBelow when !above => reading with { LigamentArea = Area(1.2, e), LesionArea = Lesion(0.2, e) },
                Recorded.ThicknessAbove when above => reading with { Thickness = new Centimetres(0.9) },
                Recorded.ThicknessBelow when !above => reading with { Thickness = new Centimetres(0.9) },
                _ => reading,
            };

        static SquareCentimetres Area(double cm2, int e) => new(cm2 * (1 + (0.02 * e)));
        static LesionArea Lesion(double cm2, int e) => LesionArea.Measured(new SquareCentimetres(cm2 * (1 + (0.05 * e))));
    }
}
