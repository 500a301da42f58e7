namespace RehabTrack.Web.Commands;

/// <summary>The exit codes of the commands; see docs/operations.md.</summary>
public static class ExitCodes
{
    /// <summary>It was done, and nothing is wrong.</summary>
    public const int Done = 0;

    /// <summary>It was done, and found something wrong.</summary>
    public const int Unsound = 1;

    /// <summary>It was not done: the command line, the input or the machine does not allow it.</summary>
    public const int Refused = 2;

    /// <summary>It was interrupted.</summary>
    public const int Interrupted = 130;
}
