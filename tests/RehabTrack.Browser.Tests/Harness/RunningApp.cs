using System.Diagnostics;
using System.Text;
using System.Text.RegularExpressions;

namespace RehabTrack.Browser.Tests.Harness;

/// <summary>The published app on a free port of this machine, with a data folder that goes away with it.</summary>
public sealed partial class RunningApp : IAsyncDisposable
{
    private readonly Process _process;
    private readonly DirectoryInfo _data;

    private readonly Task<string> _setUpCode;

    private RunningApp(Process process, DirectoryInfo data, string address, Task<string> setUpCode)
    {
        _process = process;
        _data = data;
        _setUpCode = setUpCode;
        Address = address;
    }

    /// <summary>Where it answers, without a slash at the end.</summary>
    public string Address { get; }

    /// <summary>The code of the first run, as the console says it after the address.</summary>
    public Task<string> SetUpCodeAsync() => _setUpCode.WaitAsync(TimeSpan.FromMinutes(1));

    /// <summary>Starts the app and waits until it says its address.</summary>
    public static Task<RunningApp> StartAsync(params string[] arguments) =>
        StartAsync(Directory.CreateTempSubdirectory("rehabtrack-"), ["--urls", "http://127.0.0.1:0", .. arguments]);

    /// <summary>Starts the app so that it can be reached by TLS only, with a certificate that nobody vouches for.</summary>
    public static async Task<RunningApp> StartSealedAsync()
    {
        DirectoryInfo data = Directory.CreateTempSubdirectory("rehabtrack-");
        string certificate = Path.Combine(data.FullName, "certificate.pfx");
        await File.WriteAllBytesAsync(certificate, OwnCertificate.Make());
        return await StartAsync(data, ["--urls", "https://127.0.0.1:0", $"--Kestrel:Certificates:Default:Path={certificate}"]);
    }

    private static async Task<RunningApp> StartAsync(DirectoryInfo data, string[] arguments)
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
        foreach (string argument in (string[])[await PublishedApp.FindAsync(), "--data", Path.Combine(data.FullName, "data"), .. arguments])
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
            return new RunningApp(process, data, await address.Task.WaitAsync(TimeSpan.FromMinutes(2)), code.Task);
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
        if (!_process.HasExited)
        {
            _process.Kill(entireProcessTree: true);
            await _process.WaitForExitAsync();
        }

        _process.Dispose();
        _data.Delete(recursive: true);
    }

    [GeneratedRegex(@"https?://127\.0\.0\.1:\d+")]
    private static partial Regex Loopback();

    [GeneratedRegex("[A-Z2-9]{4}(-[A-Z2-9]{4}){3}")]
    private static partial Regex Code();
}
