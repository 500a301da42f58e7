using System.Text;

namespace RehabTrack.Records.Accounts;

/// <summary>
/// How a person proves who they are: name and password, and a second step. It is nobody's clinical record: it stands beside the person, is told
/// in the trail only by what happened, and goes when the person is erased.
/// </summary>
public sealed class SignInAccount
{
    /// <summary>The person's id.</summary>
    public Guid PersonId { get; set; }

    /// <summary>The person's practice.</summary>
    public Guid PracticeId { get; set; }

    /// <summary>What the person signs in with, as they typed it.</summary>
    public required string SignInName { get; set; }

    /// <summary>The name without case: one account of it on the whole server.</summary>
    public required string FoldedSignInName { get; set; }

    /// <summary>The hash of the password, as ASP.NET Core Identity makes it; null until one was chosen.</summary>
    public string? PasswordHash { get; set; }

    /// <summary>Renewed with password and second step: whatever was begun with an older one is void.</summary>
    public string SecurityStamp { get; set; } = "";

    /// <summary>A token renewed by every write.</summary>
    public Guid Version { get; set; }

    /// <summary>Refused sign-ins since the last good one.</summary>
    public int FailedCount { get; set; }

    /// <summary>Until when unknown browsers are refused whatever they send; null when they are not.</summary>
    public DateTime? LockedUntil { get; set; }

    /// <summary>The key of the second step, sealed; null while there is none.</summary>
    public string? SealedKey { get; set; }

    /// <summary>Whether the second step is asked for.</summary>
    public bool HasSecondStep { get; set; }

    /// <summary>The number of the 30-second step whose code was taken last, so that no code is taken twice.</summary>
    public long LastTimeStep { get; set; }

    /// <summary>SHA-256 of the recovery codes that are left, parted by spaces.</summary>
    public string RecoveryHashes { get; set; } = "";

    /// <summary>The name as accounts are found by it.</summary>
    public static string Fold(string signInName)
    {
        ArgumentNullException.ThrowIfNull(signInName);
        // Half a surrogate pair cannot be normalised: it becomes the sign for what cannot be read.
        string whole = Encoding.UTF8.GetString(Encoding.UTF8.GetBytes(signInName.Trim()));
        return whole.Normalize(NormalizationForm.FormKC).ToUpperInvariant();
    }
}
