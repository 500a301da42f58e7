namespace RehabTrack.Records.Exercise;

/// <summary>The latest time that less was permitted than before, and whether it has reached the stable.</summary>
/// <param name="On">The day.</param>
/// <param name="TrainerLookedAt">When a trainer of the horse last opened the page since (UTC); null when none has.</param>
public sealed record PermitDrop(DateOnly On, DateTime? TrainerLookedAt);
