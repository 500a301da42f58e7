namespace RehabTrack.Web.Features.Examinations;

/// <summary>What the server answers to the browser after texts arrived.</summary>
/// <param name="State">One of the states of <see cref="EntryStates"/>.</param>
/// <param name="Texts">All texts as the server now holds them, by field.</param>
public sealed record EntryAnswer(string State, IReadOnlyDictionary<string, string> Texts);
