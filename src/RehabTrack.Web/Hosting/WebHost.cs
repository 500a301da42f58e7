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
using RehabTrack.Web.Shared.Referrals;
using RehabTrack.Web.Shared.Yard;
using RehabTrack.Web.Shell;
using IPNetwork = System.Net.IPNetwork;

namespace RehabTrack.Web.Hosting;

/// <summary>Puts the server together: services, the order of the middleware, the pages.</summary>
public static class WebHost
{
    /// <summary>Builds the server without starting it.</summary>
    /// <exception cref="StartRefusedException">It was asked to listen where others must not reach it.</exception>
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
        IReadOnlyList<IPNetwork> proxies = ProxySettings.Networks(builder.Configuration);
        bool hasProxy = proxies.Count > 0;
        IReadOnlyList<string> addresses = ListenAddresses.Choose(builder.Configuration, options.IsDemo, hasProxy);
        builder.WebHost.UseUrls([.. addresses]);
        // "dotnet run" serves the files of the source folder whatever the environment is called.
        builder.WebHost.UseStaticWebAssets();
        builder.Services.AddSingleton(MailSettings.Read(builder.Configuration));
        builder.Services.AddSingleton(SecondStepPolicy.Read(builder.Configuration));
        builder.Services.AddSingleton(BackupConfiguration.Read(builder.Configuration));
        ServingLimits limits = new();
        builder.WebHost.ConfigureKestrel(server => server.Limits.MaxRequestBodySize = limits.RequestBytes);
        AppMode mode = new(options.IsDemo, options.DataFolder, hasProxy || ListenAddresses.AreSealed(builder.Configuration, addresses));
        Configure(builder.Services, mode, ProxySettings.Hosts(builder.Configuration));
        Limit(builder.Services, limits);
        Logging(builder.Logging, isPlain: options.IsDemo || builder.Environment.IsDevelopment());
        WebApplication app = builder.Build();
        ProxySettings.Use(app, proxies);
        Use(app, mode);
        return app;
    }

    private static void Limit(IServiceCollection services, ServingLimits limits)
    {
        services.AddSingleton(limits);
        services.AddSingleton<OpenWindows>();
        services.AddRateLimits(limits);
        services.AddSignalR(hub => hub.MaximumReceiveMessageSize = limits.MessageBytes);
        services.Configure<HostOptions>(host => host.ShutdownTimeout = limits.Shutdown);
    }

    private static void Configure(IServiceCollection services, AppMode mode, IReadOnlyList<string> hostNames)
    {
        services.AddSingleton(mode);
        services.AddSingleton(TimeProvider.System);
        services.AddHostFiltering(hosts => hosts.AllowedHosts = [.. hostNames]);
        services.AddHsts(strict =>
        {
            strict.MaxAge = TimeSpan.FromDays(365);
            strict.IncludeSubDomains = true;
        });
        services.AddExceptionHandler<FaultBook>();
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
            token.Cookie.Name = mode.CookieName("form");
            token.Cookie.SameSite = SameSiteMode.Strict;
            token.Cookie.SecurePolicy = CookieSecurePolicy.SameAsRequest;
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
        services.AddHostedService<ForgetOldWordsJob>();
        services.AddHostedService<BackupJob>();
    }

    private static void Logging(ILoggingBuilder logging, bool isPlain)
    {
        if (isPlain)
        {
            logging.AddSimpleConsole(console =>
            {
                console.SingleLine = true;
                console.TimestampFormat = "HH:mm:ss ";
            });
        }
        else
        {
            logging
                .AddConsole(console => console.FormatterName = LogLines.FormatName)
                .AddConsoleFormatter<LogLines, Microsoft.Extensions.Logging.Console.ConsoleFormatterOptions>();
        }

        logging.SetMinimumLevel(LogLevel.Warning);
        logging.AddFilter("RehabTrack", LogLevel.Information);
        // A start that failed is told once, in our words.
        logging.AddFilter("Microsoft.Extensions.Hosting.Internal.Host", LogLevel.None);
        // What broke is told once, with its number.
        logging.AddFilter("Microsoft.AspNetCore.Diagnostics.ExceptionHandlerMiddleware", LogLevel.None);
        // Below this it tells whole addresses, and the address of a share link, an invitation or a calendar is its secret: whatever is asked for.
        logging.AddFilter("Microsoft", LogLevel.Warning);
        // The keys that seal the cookies are guarded by the rights of the data folder, like the records themselves.
        logging.AddFilter("Microsoft.AspNetCore.DataProtection", LogLevel.Error);
    }

    private static void Use(WebApplication app, AppMode mode)
    {
        if (!mode.IsDemo)
        {
            // Says nothing to this machine itself, and nothing where the way here is not sealed.
            app.UseHsts();
        }

        app.UseSecurityHeaders();
        app.UseWebSockets();
        app.UseSameOriginSockets();
        app.UseExceptionHandler("/error", createScopeForErrors: true);
        app.UseStatusCodePagesWithReExecute("/not-found", "?status={0}", createScopeForStatusCodePages: true);
        app.UseRefusals();
        app.UseShareDoor();
        app.UseRouting();
        app.UseAuthentication();
        app.UseShareGuard();
        app.UseRateLimiter();
        app.UseAuthorization();
        app.UseWindowLimits();
        app.UseAntiforgery();
        app.MapStaticAssets().AllowAnonymous();
        app.MapHealth();
        app.MapSignIn();
        app.MapPhotos();
        app.MapImports();
        app.MapCalendars();
        app.MapYard();
        app.MapReports();
        app.MapTrail();
        app.MapPersonFile();
        app.MapRazorComponents<App>().AddInteractiveServerRenderMode(mode => mode.ContentSecurityFrameAncestorsPolicy = "'none'");
    }
}
