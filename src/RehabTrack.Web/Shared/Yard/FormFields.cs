namespace RehabTrack.Web.Shared.Yard;

/// <summary>Names of the fields that every form of these pages posts.</summary>
public static class FormFields
{
    /// <summary>Names the wish, so that a second tap logs nothing twice.</summary>
    public const string Command = "command";
}
