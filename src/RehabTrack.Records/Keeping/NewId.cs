namespace RehabTrack.Records.Keeping;

/// <summary>Makes identities that sort by the moment of their making.</summary>
internal static class NewId
{
    public static Guid At(DateTime instant) => Guid.CreateVersion7(new DateTimeOffset(instant, TimeSpan.Zero));
}
