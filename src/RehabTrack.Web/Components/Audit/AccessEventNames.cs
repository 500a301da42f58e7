using RehabTrack.Records.History;
using RehabTrack.Wording;

namespace RehabTrack.Web.Components.Audit;

/// <summary>What pages call the notes of who came in.</summary>
public static class AccessEventNames
{
    /// <summary>A note, as "Signed in".</summary>
    public static string Of(AccessEvent what) =>
        TrailTexts.ResourceManager.GetString($"Event_{what}", TextCulture.Default)
        ?? throw new ArgumentOutOfRangeException(nameof(what), what, "There is no text for this event.");
}
