using System.Diagnostics;
using System.Net;
using System.Text;
using System.Text.Json;
using RehabTrack.Browser.Tests.Harness;

namespace RehabTrack.Browser.Tests.Journeys;

/// <summary>
/// The published app as the image starts it: with the environment and the command of the Dockerfile, read from there, but for the port and the
/// volume, which this machine chooses.
/// </summary>
[Collection(BrowserCollection.Name)]
public sealed class ContainerTests
{
    private const string Volume = "/data";

    private static readonly TimeSpan StopsWithin = TimeSpan.FromSeconds(5);

    [Fact]
    public async Task Started_as_the_image_does_it_is_ready_shows_the_door_and_ends_when_told_within_five_seconds()
    {
        string[] lines = await File.ReadAllLinesAsync(RepositoryFolder.Of("Dockerfile"));
        Dictionary<string, string> environment = lines
            .Where(line => line.StartsWith("ENV ", StringComparison.Ordinal))
            .Select(line => line["ENV ".Length..].Split('=', 2))
            .ToDictionary(pair => pair[0], pair => pair[1], StringComparer.Ordinal);
        string[] command = JsonSerializer.Deserialize<string[]>(
            Assert.Single(lines, line => line.StartsWith("ENTRYPOINT ", StringComparison.Ordinal))["ENTRYPOINT ".Length..]
        )!;
        Assert.Contains($"VOLUME {Volume}", lines);
        Assert.Equal(Volume, environment["REHABTRACK_DATA"]);
        Assert.DoesNotContain("--demo", command);
        DirectoryInfo folder = Directory.CreateTempSubdirectory("rehabtrack-image-");
        environment["REHABTRACK_DATA"] = folder.FullName;
        environment["ASPNETCORE_URLS"] = "http://127.0.0.1:0";
        using Process app = Start(command, environment, Path.GetDirectoryName(await PublishedApp.FindAsync())!);
        try
        {
            string address = await AddressAsync(app).WaitAsync(TimeSpan.FromMinutes(2));
            using HttpClient browser = new() { BaseAddress = new Uri(address) };
            Assert.Equal("live", await browser.GetStringAsync("/health/live"));
            Assert.Equal("ready", await browser.GetStringAsync("/health/ready"));
            using HttpResponseMessage door = await browser.GetAsync("/sign-in");
            Assert.Equal(HttpStatusCode.OK, door.StatusCode);

            using Process told = Process.Start("kill", ["-TERM", app.Id.ToString(System.Globalization.CultureInfo.InvariantCulture)]);
            using CancellationTokenSource patience = new(StopsWithin);
            await app.WaitForExitAsync(patience.Token);
            Assert.Equal(0, app.ExitCode);
        }
        finally
        {
            if (!app.HasExited)
            {
                app.Kill(entireProcessTree: true);
                await app.WaitForExitAsync();
            }

            folder.Delete(recursive: true);
        }
    }

    /// <summary>OWASP ASVS 5.0, 13.4.1 and 15.2.3 (from memory).</summary>
    [Fact]
    public async Task What_is_published_holds_neither_sources_nor_their_history_nor_tests()
    {
        string folder = Path.GetDirectoryName(await PublishedApp.FindAsync())!;
        string[] files =
        [
            .. Directory.EnumerateFileSystemEntries(folder, "*", SearchOption.AllDirectories).Select(Path.GetFileName).OfType<string>(),
        ];

        Assert.Contains("RehabTrack.Web.dll", files);
        Assert.DoesNotContain(
            files,
            file =>
                Path.GetExtension(file) is ".cs" or ".razor" or ".csproj" or ".sln" or ".git"
                || file.Contains(".Tests", StringComparison.Ordinal)
                || file.StartsWith("xunit", StringComparison.OrdinalIgnoreCase)
                || file.StartsWith("Microsoft.Playwright", StringComparison.Ordinal)
        );
    }

    /// <summary>OWASP ASVS 5.0, 13.2.2 (from memory): a program that is taken over must not own its machine.</summary>
    [Theory]
    [InlineData("Dockerfile", "USER $APP_UID")]
    [InlineData("docker-compose.yml", "    read_only: true", "    cap_drop:\n      - ALL\n", "      - no-new-privileges:true")]
    [InlineData(
        "deploy/rehabtrack.service",
        "DynamicUser=yes",
        "NoNewPrivileges=yes",
        "CapabilityBoundingSet=\n",
        "ProtectSystem=strict",
        "ProtectHome=yes",
        "SystemCallFilter=@system-service"
    )]
    public async Task Image_service_and_unit_give_the_program_no_rights(string file, params string[] lines)
    {
        string text = await File.ReadAllTextAsync(RepositoryFolder.Of(file.Split('/')));

        Assert.All(lines, line => Assert.Contains($"\n{line}", text, StringComparison.Ordinal));
        // The last word on the user counts, and it comes before the program is named.
        string[] users =
        [
            .. text.Split('\n')
                .Where(line => line.StartsWith("USER ", StringComparison.Ordinal) || line.StartsWith("User=", StringComparison.Ordinal)),
        ];
        Assert.True(users is [] or ["USER $APP_UID"], string.Join(' ', users));
    }

    private static Process Start(string[] command, Dictionary<string, string> environment, string folder)
    {
        ProcessStartInfo start = new(command[0], command[1..])
        {
            WorkingDirectory = folder,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false,
        };
        foreach ((string name, string value) in environment)
        {
            start.Environment[name] = value;
        }

        return Process.Start(start) ?? throw new InvalidOperationException("The app did not start.");
    }

    private static Task<string> AddressAsync(Process app)
    {
        StringBuilder said = new();
        TaskCompletionSource<string> address = new(TaskCreationOptions.RunContinuationsAsynchronously);
        void Hear(string? line)
        {
            lock (said)
            {
                said.AppendLine(line);
            }

            if (line is null)
            {
                address.TrySetException(new InvalidOperationException("The app stopped before it said its address: " + said));
            }
            else if (
                line.Split(' ', ',').FirstOrDefault(word => word.StartsWith("http://127.0.0.1:", StringComparison.Ordinal)) is { } found
            )
            {
                address.TrySetResult(found);
            }
        }

        app.OutputDataReceived += (_, line) => Hear(line.Data);
        app.ErrorDataReceived += (_, line) => Hear(line.Data ?? string.Empty);
        app.BeginOutputReadLine();
        app.BeginErrorReadLine();
        return address.Task;
    }
}
