using RehabTrack.Browser.Tests.Harness;

namespace RehabTrack.Browser.Tests.EveryPage;

/// <summary>A page of the app: its name in the gallery, who opens it, and how a person gets there.</summary>
/// <param name="Name">The name in the gallery.</param>
/// <param name="Role">Who is signed in; null for nobody.</param>
/// <param name="OpenAsync">The way there, until the page is complete.</param>
public sealed record PageVisit(string Name, string? Role, Func<Visit, Task> OpenAsync);
