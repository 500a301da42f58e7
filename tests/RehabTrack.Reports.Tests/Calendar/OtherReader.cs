using System.Diagnostics;
using System.Text;
using System.Text.Json;

namespace RehabTrack.Reports.Tests.Calendar;

/// <summary>ical.js, run by Node: a reader of another ecosystem, installed by the test command as locked in tests/readers.</summary>
internal static class OtherReader
{
    public static async Task<JsonElement> ReadAsync(string file)
    {
        string readers = Path.GetFullPath(Path.Combine(RepositoryFolder.OfPackage("ical.js"), "..", ".."));
        ProcessStartInfo start = new("node", ["read-calendar.mjs"])
        {
            WorkingDirectory = readers,
            UseShellExecute = false,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            StandardInputEncoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false),
            StandardOutputEncoding = Encoding.UTF8,
        };
        using Process node = Process.Start(start)!;
        Task<string> read = node.StandardOutput.ReadToEndAsync();
        Task<string> trouble = node.StandardError.ReadToEndAsync();
        await node.StandardInput.WriteAsync(file);
        node.StandardInput.Close();
        await node.WaitForExitAsync();
        Assert.True(node.ExitCode == 0, await trouble);
        return JsonDocument.Parse(await read).RootElement.Clone();
    }
}
