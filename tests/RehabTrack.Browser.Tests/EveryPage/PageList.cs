namespace RehabTrack.Browser.Tests.EveryPage;

/// <summary>
/// Every page a person can open, in the order of the gallery. A page that is added here is checked for access, width and complaints,
/// and gets its pictures.
/// </summary>
public static class PageList
{
    public static IReadOnlyList<PageVisit> All { get; } =
    [new("start", visit => visit.OpenAsync("/")), new("about-the-verdict", visit => visit.OpenAsync("/about-the-verdict"))];
}
