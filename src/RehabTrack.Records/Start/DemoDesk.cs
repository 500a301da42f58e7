namespace RehabTrack.Records.Start;

/// <summary>What the practice of the demo did about rechecks.</summary>
/// <param name="By">Who did it; by key.</param>
/// <param name="Bookings">Rechecks that are booked.</param>
/// <param name="Calls">Calls that were noted.</param>
/// <param name="Covers">Vets who stand in for others.</param>
public sealed record DemoDesk(
    string By,
    IReadOnlyList<DemoBooking> Bookings,
    IReadOnlyList<DemoCall> Calls,
    IReadOnlyList<DemoCover> Covers
);
