namespace RehabTrack.Records.Start;

/// <summary>A clock that stands at one instant: the demo lives through its past with it.</summary>
internal sealed class StandingClock(DateTime instant) : TimeProvider
{
    public override DateTimeOffset GetUtcNow() => new(instant, TimeSpan.Zero);
}
