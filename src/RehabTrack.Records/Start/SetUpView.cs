namespace RehabTrack.Records.Start;

/// <summary>What is there before anybody can sign in.</summary>
/// <param name="PracticeName">A practice that an older version of this program began; null when there is none.</param>
/// <param name="PersonName">Its first person, who takes it over.</param>
public sealed record SetUpView(string? PracticeName, string? PersonName);
