using Microsoft.AspNetCore.Components.Authorization;
using RehabTrack.Records.Rights;

namespace RehabTrack.Web.Account;

/// <summary>Who sits before this page, for the use cases.</summary>
public sealed class CurrentActor(AuthenticationStateProvider authentication)
{
    /// <summary>The actor.</summary>
    /// <exception cref="InvalidOperationException">Nobody is signed in: a page that needs somebody was opened without asking for it.</exception>
    public async Task<Actor> GetAsync() => await FindAsync() ?? throw new InvalidOperationException("Nobody is signed in.");

    /// <summary>The actor, or null when nobody is signed in.</summary>
    public async Task<Actor?> FindAsync() => ActorClaims.Read((await authentication.GetAuthenticationStateAsync()).User);
}
