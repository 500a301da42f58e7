namespace RehabTrack.Browser.Tests.Harness;

/// <summary>A window: how wide, and light or dark.</summary>
public sealed record Screen(string Name, int Width, int Height, bool IsDark)
{
    public static Screen Desktop { get; } = new("desktop-light", 1280, 900, IsDark: false);

    public static Screen DesktopDark { get; } = new("desktop-dark", 1280, 900, IsDark: true);

    public static Screen Phone { get; } = new("phone-light", 390, 844, IsDark: false);

    public static Screen PhoneDark { get; } = new("phone-dark", 390, 844, IsDark: true);

    public static IReadOnlyList<Screen> All { get; } = [Desktop, DesktopDark, Phone, PhoneDark];

    public bool IsPhone => Width < 600;

    public static Screen Named(string name) => All.Single(screen => screen.Name == name);
}
