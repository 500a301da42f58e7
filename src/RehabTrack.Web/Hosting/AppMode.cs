namespace RehabTrack.Web.Hosting;

/// <summary>How this server was started.</summary>
/// <param name="IsDemo">Whether horses and people are invented.</param>
/// <param name="DataFolder">Where database and files are kept.</param>
public sealed record AppMode(bool IsDemo, string DataFolder);
