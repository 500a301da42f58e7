namespace RehabTrack.Web.Hosting;

/// <summary>What the person who starts the app asked for; everything else on the command line goes to the framework.</summary>
public sealed record StartOptions
{
    /// <summary>The environment variable that names the data folder when <c>--data</c> does not.</summary>
    public const string DataVariable = "REHABTRACK_DATA";

    /// <summary>Whether the invented practice is opened, in a data folder of its own.</summary>
    public required bool IsDemo { get; init; }

    /// <summary>Where the database and the files are kept, as a full path.</summary>
    public required string DataFolder { get; init; }

    /// <summary>The arguments that are not ours.</summary>
    public required IReadOnlyList<string> FrameworkArguments { get; init; }

    /// <summary>Reads <c>--demo</c> and <c>--data FOLDER</c> (or <c>--data=FOLDER</c>).</summary>
    /// <exception cref="StartRefusedException"><c>--data</c> names no folder.</exception>
    public static StartOptions Parse(IReadOnlyList<string> arguments)
    {
        ArgumentNullException.ThrowIfNull(arguments);
        bool demo = false;
        string? folder = Environment.GetEnvironmentVariable(DataVariable);
        List<string> rest = [];
        for (int index = 0; index < arguments.Count; index++)
        {
            string argument = arguments[index];
            if (argument == "--demo")
            {
                demo = true;
            }
            else if (argument == "--data")
            {
                index++;
                folder = index < arguments.Count ? arguments[index] : "";
                RefuseWithoutName(folder);
            }
            else if (argument.StartsWith("--data=", StringComparison.Ordinal))
            {
                folder = argument["--data=".Length..];
                RefuseWithoutName(folder);
            }
            else
            {
                rest.Add(argument);
            }
        }

        return new StartOptions
        {
            IsDemo = demo,
            DataFolder = Path.GetFullPath(string.IsNullOrWhiteSpace(folder) ? DefaultFolder(demo) : folder),
            FrameworkArguments = rest,
        };
    }

    private static void RefuseWithoutName(string folder)
    {
        if (string.IsNullOrWhiteSpace(folder) || folder.StartsWith("--", StringComparison.Ordinal))
        {
            throw new StartRefusedException(Wording.StartUpTexts.DataWithoutFolder);
        }
    }

    private static string DefaultFolder(bool demo) =>
        Path.Combine(
            Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData, Environment.SpecialFolderOption.Create),
            demo ? "RehabTrack-demo" : "RehabTrack"
        );
}
