namespace RehabTrack.Records.Bookings;

/// <summary>What the board shall show.</summary>
/// <param name="CaseId">A case that is shown although nothing has to be done about it; null for none.</param>
public sealed record BoardInput(Guid? CaseId = null);
