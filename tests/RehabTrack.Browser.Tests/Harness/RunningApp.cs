using System.Diagnostics;
using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;

namespace RehabTrack.Browser.Tests.Harness;

/// <summary>The published app on a free port of this machine, with a data folder that goes away with it.</summary>
public sealed partial class RunningApp : IAsyncDisposable
{
    private const string DemoArgument = "--demo";

    private static readonly Lazy<Task<DemoFiles>> LoadedDemo = new(LoadDemoAsync);

    private readonly DirectoryInfo _data;
    private readonly string[] _arguments;
    private Started _run;

    private RunningApp(DirectoryInfo data, string[] arguments, Started run)
    {
        _data = data;
        _arguments = arguments;
        _run = run;
        Address = run.Address;
    }

    /// <summary>Where it answers, without a slash at the end.</summary>
    public string Address { get; }

    /// <summary>The code of the first run, as the console says it after the address.</summary>
    public Task<string> SetUpCodeAsync() => _run.SetUpCode.WaitAsync(TimeSpan.FromMinutes(1));

    /// <summary>Starts the app and waits until it says its address.</summary>
    public static Task<RunningApp> StartAsync(params string[] arguments) =>
        StartAsync(Directory.CreateTempSubdirectory("rehabtrack-"), "http://127.0.0.1:0", arguments);

    /// <summary>Starts a demo of its own. The invented practice is loaded by the first of them; the others start on a copy of its files.</summary>
    public static async Task<RunningApp> StartDemoAsync()
    {
        DirectoryInfo data = Directory.CreateTempSubdirectory("rehabtrack-");
        (await LoadedDemo.Value).CopyTo(data);
        return await StartAsync(data, "http://127.0.0.1:0", [DemoArgument]);
    }

    /// <summary>Starts the app so that it can be reached by TLS only, with a certificate that nobody vouches for.</summary>
    public static async Task<RunningApp> StartSealedAsync()
    {
        DirectoryInfo data = Directory.CreateTempSubdirectory("rehabtrack-");
        string certificate = Path.Combine(data.FullName, "certificate.pfx");
        await File.WriteAllBytesAsync(certificate, OwnCertificate.Make());
        return await StartAsync(data, "https://127.0.0.1:0", [$"--Kestrel:Certificates:Default:Path={certificate}"]);
    }

    /// <summary>Ends it at once, as a pulled plug does.</summary>
    public async Task KillAsync()
    {
        _run.Process.Kill(entireProcessTree: true);
        await _run.Process.WaitForExitAsync();
    }

    /// <summary>Tells it to end, as a service manager does, and yields its exit code when it has ended in time.</summary>
    public async Task<int> StopAsync(TimeSpan within)
    {
        using Process told = Process.Start("kill", ["-TERM", _run.Process.Id.ToString(CultureInfo.InvariantCulture)]);
        using CancellationTokenSource patience = new(within);
        await _run.Process.WaitForExitAsync(patience.Token);
        return _run.Process.ExitCode;
    }

    /// <summary>Starts it again after <see cref="KillAsync"/>, at the same address, on what the one before left.</summary>
    public async Task StartAgainAsync()
    {
        _run.Process.Dispose();
        _run = await RunAsync(_data, Address, _arguments);
    }

    private static async Task<DemoFiles> LoadDemoAsync()
    {
        await using RunningApp first = await StartAsync(DemoArgument);
        await first.KillAsync();
        return DemoFiles.Read(first._data);
    }

    private static async Task<RunningApp> StartAsync(DirectoryInfo data, string urls, string[] arguments) =>
        new(data, arguments, await RunAsync(data, urls, arguments));

    private static async Task<Started> RunAsync(DirectoryInfo data, string urls, string[] arguments)
    {
        ProcessStartInfo start = new("dotnet")
        {
            WorkingDirectory = data.FullName,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false,
        };
        start.Environment["DOTNET_NOLOGO"] = "1";
        start.Environment.Remove("ASPNETCORE_URLS");
        start.Environment["ASPNETCORE_ENVIRONMENT"] = "Production";
        string[] all = [await PublishedApp.FindAsync(), "--data", Path.Combine(data.FullName, "data"), "--urls", urls, .. arguments];
        foreach (string argument in all)
        {
            start.ArgumentList.Add(argument);
        }

        Process process = Process.Start(start) ?? throw new InvalidOperationException("The app did not start.");
        StringBuilder said = new();
        TaskCompletionSource<string> address = new(TaskCreationOptions.RunContinuationsAsynchronously);
        TaskCompletionSource<string> code = new(TaskCreationOptions.RunContinuationsAsynchronously);
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
            else if (Loopback().Match(line) is { Success: true } found)
            {
                address.TrySetResult(found.Value);
            }
            else if (Code().Match(line) is { Success: true } printed)
            {
                code.TrySetResult(printed.Value);
            }
        }

        process.OutputDataReceived += (_, line) => Hear(line.Data);
        process.ErrorDataReceived += (_, line) => Hear(line.Data ?? string.Empty);
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
        try
        {
            return new Started(process, await address.Task.WaitAsync(TimeSpan.FromMinutes(2)), code.Task);
        }
        catch
        {
            process.Kill(entireProcessTree: true);
            process.Dispose();
            throw;
        }
    }

    /// <inheritdoc />
    public async ValueTask DisposeAsync()
    {
        if (!_run.Process.HasExited)
        {
            await KillAsync();
        }

        _run.Process.Dispose();
        _data.Delete(recursive: true);
    }

    private sealed record Started(Process Process, string Address, Task<string> SetUpCode);

    [GeneratedRegex(@"https?://127\.0\.0\.1:\d+")]
    private static partial Regex Loopback();

    [GeneratedRegex("[A-Z2-9]{4}(-[A-Z2-9]{4}){3}")]
    private static partial Regex Code();
}
