using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Linking;

namespace RehabTrack.Web.Features.Cases;

/// <summary>A place of another examination that a place can be pinned to, or kept apart from.</summary>
/// <param name="Track">Its track.</param>
/// <param name="Step">The place: the nearest date before, else after.</param>
/// <param name="Probability">Probability that both are the same, 0 to 1; null when it was not computed.</param>
public sealed record LinkChoice(Track Track, TrackStep Step, double? Probability)
{
    /// <summary>What the place can be pinned to: every track of its path, the most probable first.</summary>
    public static IReadOnlyList<LinkChoice> ToPin(CaseAnalysis analysis, Rung rung)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        ArgumentNullException.ThrowIfNull(rung);
        return
        [
            .. analysis
                .Links.Tracks.Where(track =>
                    track.Path == rung.Track.Path && track.ConsensusLevel.Scheme == rung.Track.ConsensusLevel.Scheme
                )
                .Select(track => (Track: track, Step: Nearest(track, rung)))
                .Where(choice => choice.Step is not null)
                .Select(choice => new LinkChoice(choice.Track, choice.Step!, ProbabilityOf(choice.Track, rung)))
                .OrderByDescending(choice => choice.Probability ?? 0)
                .ThenBy(choice => Math.Abs((choice.Track.ConsensusLevel.Position - rung.Track.ConsensusLevel.Position).Value)),
        ];
    }

    /// <summary>What the place can be kept apart from: the other places of its track, the nearest before first.</summary>
    public static IReadOnlyList<LinkChoice> ToBreak(Rung rung)
    {
        ArgumentNullException.ThrowIfNull(rung);
        return
        [
            .. rung
                .Others.OrderBy(step => step.Date > rung.Step.Date)
                .ThenBy(step => Math.Abs(step.Date.DayNumber - rung.Step.Date.DayNumber))
                .Select(step => new LinkChoice(rung.Track, step, rung.Step.LinkProbability)),
        ];
    }

    private static double? ProbabilityOf(Track track, Rung rung) =>
        track.Id == rung.Track.Id
            ? rung.Step.LinkProbability
            : rung.Step.Alternatives.FirstOrDefault(alternative => alternative.TrackId == track.Id)?.Probability;

    private static TrackStep? Nearest(Track track, Rung rung)
    {
        TrackStep[] others = [.. track.Steps.Where(step => step.ExaminationId != rung.Step.ExaminationId)];
        return others.LastOrDefault(step => step.Date <= rung.Step.Date) ?? others.FirstOrDefault();
    }
}
