using RehabTrack.Browser.Tests.Harness;

namespace RehabTrack.Browser.Tests.EveryPage;

/// <summary>A page of the app: its name in the gallery, and how a person gets there.</summary>
public sealed record PageVisit(string Name, Func<Visit, Task> OpenAsync);
