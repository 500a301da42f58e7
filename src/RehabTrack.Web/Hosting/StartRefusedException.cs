namespace RehabTrack.Web.Hosting;

/// <summary>The app does not start as it was asked to; the message says why and what to do.</summary>
public sealed class StartRefusedException(string message) : Exception(message);
