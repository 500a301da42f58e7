using RehabTrack.Rechecks.Exercise;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Exercise;

/// <summary>A plan as it is being written.</summary>
/// <param name="CommandId">Names the wish.</param>
/// <param name="HorseId">The horse.</param>
/// <param name="Version">The version of the draft that was read; null for a first one.</param>
/// <param name="Plan">What is written; its id and number are given when it is signed.</param>
public sealed record SavePlanDraftInput(Guid CommandId, Guid HorseId, Guid? Version, PlanVersion Plan) : ICommand;
