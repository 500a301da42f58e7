using RehabTrack.Rechecks.Exercise;

namespace RehabTrack.Web.Features.Plans;

/// <summary>What a vet signs of a plan besides its rows.</summary>
/// <param name="From">The first day it counts for.</param>
/// <param name="Place">Where the horse stands.</param>
/// <param name="IsAdvance">Whether it is signed as an advance.</param>
/// <param name="RecheckDate">When the horse is to be seen again.</param>
public sealed record PlanSignature(DateOnly From, PlanPlace Place, bool IsAdvance, DateOnly RecheckDate);
