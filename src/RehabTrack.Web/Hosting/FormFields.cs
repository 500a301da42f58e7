namespace RehabTrack.Web.Hosting;

/// <summary>Names of the fields that every form that is sent over plain HTTP posts.</summary>
public static class FormFields
{
    /// <summary>Names the wish, so that a second tap does nothing twice.</summary>
    public const string Command = "command";
}
