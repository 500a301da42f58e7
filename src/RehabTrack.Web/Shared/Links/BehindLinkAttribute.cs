namespace RehabTrack.Web.Shared.Links;

/// <summary>Marks what can be reached behind a share link, as far as the role allows; nothing else can.</summary>
[AttributeUsage(AttributeTargets.Class)]
public sealed class BehindLinkAttribute : Attribute;
