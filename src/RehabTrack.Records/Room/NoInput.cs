namespace RehabTrack.Records.Room;

/// <summary>For use cases that need to be told nothing.</summary>
public sealed record NoInput
{
    /// <summary>The only one.</summary>
    public static NoInput Value { get; } = new();
}
