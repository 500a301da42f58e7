using Microsoft.AspNetCore.DataProtection;
using MudBlazor.Services;
using RehabTrack.Records.Sqlite;
using RehabTrack.Records.Start;
using RehabTrack.Web.Account;
using RehabTrack.Web.Features.Board;
using RehabTrack.Web.Features.Concerns;
using RehabTrack.Web.Features.Horses;
using RehabTrack.Web.Features.Import;
using RehabTrack.Web.Features.People;
using RehabTrack.Web.Features.Reminders;
using RehabTrack.Web.Features.Trail;
using RehabTrack.Web.Jobs;
using RehabTrack.Web.Shared.Links;
using RehabTrack.Web.Shared.Yard;
using RehabTrack.Web.Shell;

namespace RehabTrack.Web.Hosting;

/// <summary>Puts the server together: services, the order of the middleware, the pages.</summary>
public static class WebHost
{
    /// <summary>Builds the server without starting it.</summary>
    /// <exception cref="StartRefusedException">It was asked to listen where another machine could reach it.</exception>
    public static WebApplication Build(StartOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        WebApplicationBuilder builder = WebApplication.CreateBuilder(
            new WebApplicationOptions
            {
                Args = [.. options.FrameworkArguments],
                ApplicationName = typeof(WebHost).Assembly.GetName().Name,
                ContentRootPath = AppContext.BaseDirectory,
            }
        );
        builder.WebHost.UseUrls([.. LoopbackAddresses.Choose(builder.Configuration)]);
        // "dotnet run" serves the files of the source folder whatever the environment is called.
        builder.WebHost.UseStaticWebAssets();
        builder.Services.AddSingleton(MailSettings.Read(builder.Configuration));
        builder.Services.AddSingleton(SecondStepPolicy.Read(builder.Configuration));
        builder.Services.AddSingleton(BackupConfiguration.Read(builder.Configuration));
        Configure(builder.Services, new AppMode(options.IsDemo, options.DataFolder));
        Logging(builder.Logging);
        WebApplication app = builder.Build();
        Use(app);
        return app;
    }

    private static void Configure(IServiceCollection services, AppMode mode)
    {
        services.AddSingleton(mode);
        services.AddSingleton(TimeProvider.System);
        services.AddHostFiltering(hosts => hosts.AllowedHosts = ["localhost", "127.0.0.1", "[::1]"]);
        services.AddRazorComponents().AddInteractiveServerComponents();
        services.AddMudServices();
        services.AddSingleton<ImportReader>();
        services.AddAccounts(mode);
        services
            .AddDataProtection()
            .SetApplicationName("RehabTrack")
            .PersistKeysToFileSystem(Directory.CreateDirectory(Path.Combine(mode.DataFolder, "keys")));
        services.AddAntiforgery(token =>
        {
            token.Cookie.Name = mode.IsDemo ? "rehabtrack-demo-form" : "rehabtrack-form";
            token.Cookie.SameSite = SameSiteMode.Strict;
            // Not the base of a share link: the address would stand in the cookie, and two cookies of one name would fight.
            token.Cookie.Path = "/";
        });
        services.AddShareLinks();
        services.AddRecords();
        services.AddSqliteRecords(mode.DataFolder);
        services.AddSingleton<MailSender>();
        services.AddSingleton<ReminderMail>();
        services.AddSingleton<ConcernMail>();
        services.AddSingleton<ConcernBell>();
        services.AddHostedService<ConcernMailJob>();
        services.AddHostedService<SummaryRenewalJob>();
        services.AddHostedService<ForgetAccessJob>();
        services.AddHostedService<BackupJob>();
    }

    private static void Logging(ILoggingBuilder logging)
    {
        logging.AddSimpleConsole(console =>
        {
            console.SingleLine = true;
            console.TimestampFormat = "HH:mm:ss ";
        });
        logging.SetMinimumLevel(LogLevel.Warning);
        logging.AddFilter("RehabTrack", LogLevel.Information);
        // A start that failed is told once, in our words.
        logging.AddFilter("Microsoft.Extensions.Hosting.Internal.Host", LogLevel.None);
        // These tell whole addresses, and the address of a share link is its secret.
        logging.AddFilter("Microsoft.AspNetCore.Components", LogLevel.Information);
        logging.AddFilter("Microsoft.AspNetCore.Http.Result", LogLevel.Warning);
        // The keys that seal the cookies are guarded by the rights of the data folder, like the records themselves.
        logging.AddFilter("Microsoft.AspNetCore.DataProtection", LogLevel.Error);
    }

    private static void Use(WebApplication app)
    {
        app.UseSecurityHeaders();
        app.UseSameOriginSockets();
        app.UseExceptionHandler("/error", createScopeForErrors: true);
        app.UseStatusCodePagesWithReExecute("/not-found", "?status={0}", createScopeForStatusCodePages: true);
        app.UseShareDoor();
        app.UseRouting();
        app.UseAuthentication();
        app.UseShareGuard();
        app.UseAuthorization();
        app.UseAntiforgery();
        app.MapStaticAssets().AllowAnonymous();
        app.MapSignIn();
        app.MapPhotos();
        app.MapImports();
        app.MapCalendars();
        app.MapYard();
        app.MapTrail();
        app.MapPersonFile();
        app.MapRazorComponents<App>().AddInteractiveServerRenderMode(mode => mode.ContentSecurityFrameAncestorsPolicy = "'none'");
    }
}
