namespace RehabTrack.Web.Commands;

/// <summary>Lets a command clean up when it is interrupted from the keyboard.</summary>
public static class KeyboardInterrupt
{
    /// <summary>Runs it; an interrupt cancels it.</summary>
    /// <param name="command">The command; it answers its exit code.</param>
    public static async Task<int> RunAsync(Func<CancellationToken, Task<int>> command)
    {
        ArgumentNullException.ThrowIfNull(command);
        using CancellationTokenSource interrupt = new();
        ConsoleCancelEventHandler handler = (_, pressed) =>
        {
            pressed.Cancel = true;
            interrupt.Cancel();
        };
        Console.CancelKeyPress += handler;
        try
        {
            return await command(interrupt.Token);
        }
        finally
        {
            Console.CancelKeyPress -= handler;
        }
    }
}
