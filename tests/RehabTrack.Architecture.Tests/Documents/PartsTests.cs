using System.Diagnostics;
using System.Text.Json;

namespace RehabTrack.Architecture.Tests.Documents;

/// <summary>The list of parts (CycloneDX), made by the command in docs/operations.md: OWASP ASVS 5.0, 15.1.2 (from memory).</summary>
public sealed class PartsTests
{
    /// <summary>Named in the lock file and part of nothing that runs.</summary>
    private static readonly string[] NoParts =
    [
        // Looks at the sources while they are built.
        "Meziantou.Analyzer",
        // Comes with the framework itself.
        "Microsoft.AspNetCore.App.Internal.Assets",
    ];

    [Fact]
    public async Task Every_package_that_the_program_is_locked_to_stands_in_the_list_of_parts_with_its_version()
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("rehabtrack-parts-");
        try
        {
            await RunAsync("tool", "restore");
            await RunAsync(Command(folder.FullName));
            using JsonDocument parts = JsonDocument.Parse(await File.ReadAllTextAsync(Path.Combine(folder.FullName, "parts.json")));

            Assert.Equal("CycloneDX", parts.RootElement.GetProperty("bomFormat").GetString());
            Assert.Empty(Locked().Except(Listed(parts), StringComparer.OrdinalIgnoreCase));
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    /// <summary>As the document says it, with another folder.</summary>
    private static string[] Command(string folder)
    {
        const string Begin = "dotnet dotnet-CycloneDX ";
        string line = Repository.Read("docs/operations.md").Split('\n').Single(text => text.StartsWith(Begin, StringComparison.Ordinal));
        return [.. line["dotnet ".Length..].Replace("FOLDER", folder, StringComparison.Ordinal).Split(' ')];
    }

    private static IEnumerable<string> Listed(JsonDocument parts) =>
        parts
            .RootElement.GetProperty("components")
            .EnumerateArray()
            .Select(part => $"{part.GetProperty("name").GetString()} {part.GetProperty("version").GetString()}");

    private static List<string> Locked()
    {
        using JsonDocument locked = JsonDocument.Parse(Repository.Read("src/RehabTrack.Web/packages.lock.json"));
        List<string> packages =
        [
            .. locked
                .RootElement.GetProperty("dependencies")
                .EnumerateObject()
                .SelectMany(framework => framework.Value.EnumerateObject())
                .Where(part => part.Value.GetProperty("type").GetString() != "Project")
                .Where(part => !NoParts.Contains(part.Name, StringComparer.Ordinal))
                .Select(part => $"{part.Name} {part.Value.GetProperty("resolved").GetString()}"),
        ];
        Assert.NotEmpty(packages);
        return packages;
    }

    private static async Task RunAsync(params string[] arguments)
    {
        ProcessStartInfo start = new("dotnet", arguments)
        {
            WorkingDirectory = RepositoryFolder.Root,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false,
        };
        using Process tool = Process.Start(start) ?? throw new InvalidOperationException("dotnet did not start.");
        Task<string> said = tool.StandardOutput.ReadToEndAsync();
        Task<string> complained = tool.StandardError.ReadToEndAsync();
        await tool.WaitForExitAsync();
        Assert.True(tool.ExitCode == 0, $"dotnet {string.Join(' ', arguments)}: {await said} {await complained}");
    }
}
