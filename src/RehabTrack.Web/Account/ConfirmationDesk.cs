using RehabTrack.Records.Accounts;
using RehabTrack.Records.Rights;

namespace RehabTrack.Web.Account;

/// <summary>
/// Asks the person before the page afresh who they are, before they sign, and before they open or take away a way in: a tablet at the stable
/// goes from hand to hand. One question at a time, for one open page.
/// </summary>
public sealed class ConfirmationDesk(IServiceScopeFactory scopes)
{
    private TaskCompletionSource<bool>? _asked;
    private Actor? _actor;

    /// <summary>Raised when a question begins or ends.</summary>
    public event EventHandler? Changed;

    /// <summary>Whether a question stands.</summary>
    public bool IsAsking => _asked is not null;

    /// <summary>Whose password is asked for.</summary>
    public string Name => _actor?.Name ?? "";

    /// <summary>
    /// Asks, and waits for the answer; false when the person would rather not, or nothing on the page can ask. While a question stands,
    /// another press is the same wish: it is given up without a word, and the first one goes on.
    /// </summary>
    /// <param name="actor">Who is asked.</param>
    /// <param name="leaving">Takes the question back: what asked is no longer on the page.</param>
    /// <exception cref="OperationCanceledException">A question stood already, or was taken back.</exception>
    public async Task<bool> AskAsync(Actor actor, CancellationToken leaving)
    {
        if (Changed is null)
        {
            return false;
        }

        if (_asked is not null)
        {
            // Shown anew: a browser whose line was down may have shut it by itself.
            Changed.Invoke(this, EventArgs.Empty);
            throw new OperationCanceledException();
        }

        TaskCompletionSource<bool> asked = new(TaskCreationOptions.RunContinuationsAsynchronously);
        (_actor, _asked) = (actor, asked);
        Changed.Invoke(this, EventArgs.Empty);
        using CancellationTokenRegistration left = leaving.Register(() => TakeBack(asked));
        bool isConfirmed = await asked.Task;
        // Answered by going elsewhere: who asked is not there to hear it.
        leaving.ThrowIfCancellationRequested();
        return isConfirmed;
    }

    /// <summary>Takes a password; when it fits, the question is over.</summary>
    /// <returns>Whether it fits.</returns>
    public async Task<bool> ConfirmAsync(string? password)
    {
        // The question that was answered: another one may stand when the password has been looked at.
        if (_actor is not { } actor || _asked is not { } asked)
        {
            return false;
        }

        await using AsyncServiceScope scope = scopes.CreateAsyncScope();
        if (!await scope.ServiceProvider.GetRequiredService<PasswordCheck>().AgainAsync(actor, password))
        {
            return false;
        }

        if (_asked == asked)
        {
            await scope.ServiceProvider.GetRequiredService<SessionDoor>().ConfirmAsync(actor);
            End(true);
        }

        return true;
    }

    /// <summary>The person would rather not.</summary>
    public void Cancel() => End(false);

    private void TakeBack(TaskCompletionSource<bool> asked)
    {
        asked.TrySetCanceled();
        if (_asked == asked)
        {
            End(false);
        }
    }

    private void End(bool isConfirmed)
    {
        TaskCompletionSource<bool>? asked = _asked;
        (_actor, _asked) = (null, null);
        Changed?.Invoke(this, EventArgs.Empty);
        asked?.TrySetResult(isConfirmed);
    }
}
