using MudBlazor.Services;
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
        logging.AddFilter("Microsoft.Hosting.Lifetime", LogLevel.Warning);
    }

    private static void Use(WebApplication app)
    {
        app.UseSecurityHeaders();
        app.UseSameOriginSockets();
        app.UseExceptionHandler("/error", createScopeForErrors: true);
        app.UseStatusCodePagesWithReExecute("/not-found", "?status={0}", createScopeForStatusCodePages: true);
        app.UseAntiforgery();
        app.MapStaticAssets().AllowAnonymous();
        app.MapRazorComponents<App>().AddInteractiveServerRenderMode(mode => mode.ContentSecurityFrameAncestorsPolicy = "'none'");
    }
}
