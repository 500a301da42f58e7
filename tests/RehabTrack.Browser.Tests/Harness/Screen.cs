namespace RehabTrack.Browser.Tests.Harness;

/// <summary>A window by its width.</summary>
public sealed record Screen(string Name, int Width, int Height)
{
    public static Screen Desktop { get; } = new("desktop", 1280, 900);

    public static Screen Phone { get; } = new("phone", 390, 844);

    public static IReadOnlyList<Screen> All { get; } = [Desktop, Phone];

    public bool IsPhone => this == Phone;

    public static Screen Named(string name) => All.Single(screen => screen.Name == name);
}
