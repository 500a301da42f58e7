namespace RehabTrack.Records.Exercise;

/// <summary>A form as somebody is filling it in.</summary>
/// <param name="IsOwn">Whether it is that of the one who asks.</param>
/// <param name="WrittenBy">Who types.</param>
/// <param name="WrittenAt">When they last did (UTC).</param>
/// <param name="Fields">What is typed, by the names of the fields.</param>
public sealed record TypedView(bool IsOwn, string WrittenBy, DateTime WrittenAt, IReadOnlyDictionary<string, string> Fields);
