using RehabTrack.Records.Rights;

namespace RehabTrack.Records.Keeping;

internal sealed class PersonRecord : KeptRecord
{
    public required string Name { get; set; }

    /// <summary>The name without case and accents, for search and order.</summary>
    public required string FoldedName { get; set; }

    public Role Role { get; set; }

    public string? Phone { get; set; }

    public string? Mail { get; set; }

    public required string Language { get; set; }

    /// <summary>Whether the person may sign in here; else a contact only.</summary>
    public bool CanSignIn { get; set; }
}
