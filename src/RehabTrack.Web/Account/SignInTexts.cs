using RehabTrack.Records.Rights;
using RehabTrack.Wording;

namespace RehabTrack.Web.Account;

/// <summary>What each role of the demo gets to see.</summary>
public static class SignInTexts
{
    /// <summary>The sentence for a role.</summary>
    public static string Sees(Role role) =>
        role switch
        {
            Role.Administrator => SignInPage.SeesAdministrator,
            Role.Vet => SignInPage.SeesVet,
            Role.Assistant => SignInPage.SeesAssistant,
            Role.Trainer => SignInPage.SeesTrainer,
            Role.Owner => SignInPage.SeesOwner,
            Role.ReferringVet => SignInPage.SeesReferringVet,
        };
}
