namespace RehabTrack.Web.Components.Exercise;

/// <summary>Which way a signature moves what is permitted.</summary>
public enum PermitChange
{
    /// <summary>Not at all.</summary>
    None,

    /// <summary>Down.</summary>
    Less,

    /// <summary>Up, in at least one component.</summary>
    More,
}
