using RehabTrack.Records.Rights;

namespace RehabTrack.Web.Features.Concerns;

/// <summary>A concern that was rung for.</summary>
/// <param name="Actor">Who reported it.</param>
/// <param name="HorseId">Of which horse.</param>
/// <param name="LineId">The line that opened it.</param>
public sealed record ConcernRing(Actor Actor, Guid HorseId, Guid LineId);
