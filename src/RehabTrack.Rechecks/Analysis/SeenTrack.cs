using RehabTrack.Rechecks.Exams;

namespace RehabTrack.Rechecks.Analysis;

/// <summary>The places that were held to be one place.</summary>
/// <param name="Id">What the track was called then, for example <c>axial-2</c>; a later analysis may count otherwise.</param>
/// <param name="Places">One an examination that read it, in order of date.</param>
public sealed record SeenTrack(string Id, IReadOnlyList<PlaceKey> Places);
