using RehabTrack.Records.Rights;

namespace RehabTrack.Web.Account;

/// <summary>The page a person lands on.</summary>
public static class HomeOf
{
    /// <summary>The address of the first page for a role.</summary>
    public static string Person(Role role) =>
        role switch
        {
            Role.Administrator or Role.Vet or Role.Assistant => "/",
            Role.Trainer => "/yard",
            Role.Owner => "/progress",
            Role.ReferringVet => "/report",
        };
}
