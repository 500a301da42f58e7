using Microsoft.AspNetCore.Components;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Accounts;
using RehabTrack.Records.History;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Web.Account;
using RehabTrack.Web.Components.Conflicts;

namespace RehabTrack.Web.Components;

/// <summary>
/// A page that reads and writes records: asks as the person who sits before it, gives up when the page is left, and shows the
/// not-found page for what is not there or not theirs.
/// </summary>
public abstract class RecordPage : ComponentBase, IDisposable
{
    // The session of an open page ended elsewhere: signed out in another window, a new password, another role.
    private static readonly Problem SignedOut = new("", "signed-out");

    private readonly CancellationTokenSource _leaving = new();
    private readonly Presses _presses = new();

    [Inject]
    private CurrentActor Current { get; set; } = default!;

    [Inject]
    private SessionDoor Sessions { get; set; } = default!;

    [Inject]
    private ConfirmationDesk Confirmations { get; set; } = default!;

    [Inject]
    private GetLastWrite GetLastWrite { get; set; } = default!;

    /// <summary>For going elsewhere.</summary>
    [Inject]
    protected NavigationManager Navigation { get; set; } = default!;

    /// <summary>Cancelled when the page is left.</summary>
    protected CancellationToken Leaving => _leaving.Token;

    /// <summary>Asks a use case as the person who is signed in; what wants a confirmation asks them first afresh who they are.</summary>
    protected async Task<Outcome<TResult>> AskAsync<TInput, TResult>(UseCase<TInput, TResult> useCase, TInput input)
    {
        ArgumentNullException.ThrowIfNull(useCase);
        Actor actor = await Current.GetAsync();
        Outcome<TResult> outcome = await useCase.ExecuteAsync(actor, input, Leaving);
        // What was not done for want of a confirmation was not looked at either: it is asked again as it was.
        if (outcome.Problems is [{ Code: "not-confirmed" }] && await Confirmations.AskAsync(actor, Leaving))
        {
            return await useCase.ExecuteAsync(actor, input, Leaving);
        }

        return outcome.Problems is [{ Code: "not-allowed" }] && actor.SessionId is not null && !await Sessions.LivesAsync(actor, Leaving)
            ? SignedOut
            : outcome;
    }

    /// <summary>
    /// Asks a use case because a button was pressed. Pressed again before the answer was drawn, it is the same wish: it is done once.
    /// </summary>
    /// <param name="useCase">What the button does.</param>
    /// <param name="of">To what, where there are several such buttons.</param>
    /// <param name="input">What is asked, under the command id of the wish.</param>
    protected async Task<Outcome<TResult>> PressAsync<TInput, TResult>(
        UseCase<TInput, TResult> useCase,
        object? of,
        Func<Guid, TInput> input
    )
    {
        ArgumentNullException.ThrowIfNull(useCase);
        ArgumentNullException.ThrowIfNull(input);
        Outcome<TResult> outcome = await AskAsync(useCase, input(Pressed(useCase, of, () => Guid.CreateVersion7())));
        AnswerPress(useCase, of, outcome.Succeeded);
        return outcome;
    }

    /// <summary>A part of what the press of a button asks for that has to be the same when it is pressed again: an id, a secret.</summary>
    /// <param name="action">What the button does.</param>
    /// <param name="of">To what.</param>
    /// <param name="make">Makes it for a new wish.</param>
    protected T Pressed<T>(object action, object? of, Func<T> make)
        where T : notnull
    {
        ArgumentNullException.ThrowIfNull(action);
        return _presses.Of((action.GetType(), of), make);
    }

    /// <summary>There is an answer to a press that was not asked by <see cref="PressAsync"/>.</summary>
    protected void AnswerPress(object action, object? of, bool isDone)
    {
        ArgumentNullException.ThrowIfNull(action);
        _presses.Answer((action.GetType(), of), isDone);
    }

    /// <inheritdoc />
    protected override bool ShouldRender()
    {
        _presses.Draw();
        return base.ShouldRender();
    }

    // The framework tells it once the browser has said so: a press that comes after that was made with the answer before one's eyes.
    /// <inheritdoc />
    protected override void OnAfterRender(bool firstRender) => _presses.Drawn();

    /// <summary>Reads what a page cannot be without: when it is not there, or not theirs, the not-found page comes instead.</summary>
    /// <returns>The value, or the default when the page is about to be replaced.</returns>
    protected async Task<TResult?> ReadAsync<TInput, TResult>(UseCase<TInput, TResult> useCase, TInput input)
    {
        Outcome<TResult> outcome = await AskAsync(useCase, input);
        if (!outcome.Succeeded)
        {
            if (outcome.Problems.Contains(SignedOut))
            {
                // The server asks who it is, and leads back here.
                Navigation.Refresh(forceReload: true);
            }
            else
            {
                Navigation.NotFound();
            }

            return default;
        }

        return outcome.Value;
    }

    /// <summary>
    /// Saves a form. When somebody else saved the record meanwhile, the form stays with all that was typed and takes what stands now
    /// beside it; when they changed nothing that the form asks for, it is saved on what they left.
    /// </summary>
    /// <param name="fields">The fields of the form.</param>
    /// <param name="recordId">The record; empty for a new one.</param>
    /// <param name="save">The use case that saves.</param>
    /// <param name="input">What it is asked, from the form and the version that was read last.</param>
    /// <param name="read">Reads what stands now; null when it cannot be read.</param>
    /// <param name="show">Takes what was read as the version to change, and fills the form with it.</param>
    /// <returns>What came of it; null when a person has to look at the form first.</returns>
    protected async Task<Outcome<Saved>?> SaveSharedAsync<TInput, TView>(
        SharedFields fields,
        Guid recordId,
        UseCase<TInput, Saved> save,
        Func<TInput> input,
        Func<Task<TView?>> read,
        Action<TView> show
    )
        where TView : class
    {
        ArgumentNullException.ThrowIfNull(fields);
        ArgumentNullException.ThrowIfNull(input);
        ArgumentNullException.ThrowIfNull(read);
        Outcome<Saved> outcome = await AskAsync(save, input());
        if (!ChangedMeanwhile.IsIn(outcome.Problems) || await read() is not { } now)
        {
            return outcome;
        }

        LastWrite? by = (await AskAsync(GetLastWrite, recordId)).ValueOrDefault;
        return fields.Meet(() => show(now), by) ? null : await AskAsync(save, input());
    }

    /// <summary>Reads what a form can do without when it is not there.</summary>
    protected async Task<TResult?> TryReadAsync<TInput, TResult>(UseCase<TInput, TResult> useCase, TInput input) =>
        (await AskAsync(useCase, input)).ValueOrDefault;

    /// <summary>The person who is signed in.</summary>
    protected Task<Actor> ActorAsync() => Current.GetAsync();

    /// <inheritdoc />
    public void Dispose()
    {
        Dispose(true);
        GC.SuppressFinalize(this);
    }

    /// <summary>Gives up what is under way.</summary>
    protected virtual void Dispose(bool disposing)
    {
        if (disposing)
        {
            _leaving.Cancel();
            _leaving.Dispose();
        }
    }
}
