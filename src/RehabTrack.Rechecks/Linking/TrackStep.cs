using RehabTrack.Rechecks.Exams;

namespace RehabTrack.Rechecks.Linking;

/// <summary>One examination's place on a track, with how sure it is that it belongs there.</summary>
public sealed record TrackStep
{
    /// <summary>The examination.</summary>
    public required string ExaminationId { get; init; }

    /// <summary>The date of the examination.</summary>
    public required DateOnly Date { get; init; }

    /// <summary>The place.</summary>
    public required Place Place { get; init; }

    /// <summary>Probability that the place belongs to this track, 0 to 1; null for the track's first place; 1 when pinned.</summary>
    public required double? LinkProbability { get; init; }

    /// <summary>
    /// Whether the page must ask: a computed link is less probable than the setting (0.9), or the place opens a track although, with more
    /// than the rest (0.1), it may belong to one that was there before.
    /// </summary>
    public required bool Uncertain { get; init; }

    /// <summary>Where the link comes from.</summary>
    public required LinkBasis Basis { get; init; }

    /// <summary>
    /// The other tracks that the place might belong to, most probable first; empty when the page need not ask. What is missing to 1 is
    /// the probability of a place of its own.
    /// </summary>
    public required IReadOnlyList<LinkAlternative> Alternatives { get; init; }
}
