using Bunit;
using Microsoft.AspNetCore.Components.Authorization;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;
using MudBlazor.Services;
using RehabTrack.Records.People;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Records.Sqlite;
using RehabTrack.Records.Start;
using RehabTrack.Web.Account;
using RehabTrack.Web.Features.Concerns;
using RehabTrack.Web.Features.Import;
using RehabTrack.Web.Features.Reminders;
using RehabTrack.Web.Hosting;

namespace RehabTrack.Web.Tests.Hosting;

/// <summary>Records in a folder of their own, on a morning that does not move, for pages that are rendered without a server.</summary>
public abstract class KeptPractice : IAsyncLifetime
{
    /// <summary>The morning: 25 November 2026.</summary>
    public static readonly DateTimeOffset Morning = new(2026, 11, 25, 8, 0, 0, TimeSpan.Zero);

    private readonly string _folder = Directory.CreateTempSubdirectory("rehabtrack-pages-").FullName;
    private ServiceProvider? _services;

    public IServiceProvider Services => _services!;

    public Actor Vet { get; private set; } = default!;

    public async Task InitializeAsync()
    {
        await FillAsync(_folder);
        ServiceCollection services = new();
        Register(services, _folder);
        _services = services.BuildServiceProvider();
        await Services.GetRequiredService<SqliteStart>().RunAsync();
        Vet = await FoundAsync(Services);
    }

    public async Task DisposeAsync()
    {
        await _services!.DisposeAsync();
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        Directory.Delete(_folder, recursive: true);
    }

    /// <summary>A browser tab in which the vet is signed in, or somebody else.</summary>
    public BunitContext Tab(Actor? who = null)
    {
        BunitContext tab = new();
        tab.JSInterop.Mode = JSRuntimeMode.Loose;
        Register(tab.Services, _folder);
        tab.Services.AddMudServices();
        tab.Services.AddScoped<CurrentActor>();
        tab.Services.AddScoped<ConfirmationDesk>();
        tab.Services.AddSingleton(new AppMode(false, _folder));
        tab.Services.AddSingleton<ImportReader>();
        tab.Services.AddSingleton(new MailSettings());
        tab.Services.AddSingleton<MailSender>();
        tab.Services.AddScoped<ReminderMail>();
        tab.Services.AddSingleton<ConcernMail>();
        tab.Services.AddSingleton<ConcernBell>();
        tab.Services.AddSingleton<AuthenticationStateProvider>(new Somebody(who ?? Vet));
        return tab;
    }

    /// <summary>An assistant of the practice.</summary>
    public async Task<Actor> AssistantAsync()
    {
        Saved saved = (
            await Services
                .GetRequiredService<SavePerson>()
                .ExecuteAsync(
                    Vet,
                    new SavePersonInput
                    {
                        CommandId = Guid.NewGuid(),
                        Name = "Pia Thorn",
                        Role = Role.Assistant,
                        CanSignIn = true,
                    }
                )
        ).Value;
        return new Actor(Vet.PracticeId, saved.Id, Role.Assistant, "Pia Thorn");
    }

    /// <summary>Puts the database into its folder.</summary>
    protected virtual Task FillAsync(string folder) => MigratedFolder.FillAsync(folder);

    /// <summary>Makes the practice, and yields its vet.</summary>
    protected abstract Task<Actor> FoundAsync(IServiceProvider services);

    /// <summary>The records of a folder, on that morning.</summary>
    protected static void Register(IServiceCollection services, string folder)
    {
        services.AddSingleton<TimeProvider>(new FakeTimeProvider(Morning));
        services.AddRecords();
        services.AddSqliteRecords(folder);
    }

    private sealed class Somebody(Actor actor) : AuthenticationStateProvider
    {
        public override Task<AuthenticationState> GetAuthenticationStateAsync() =>
            Task.FromResult(new AuthenticationState(ActorClaims.Write(actor)));
    }
}
