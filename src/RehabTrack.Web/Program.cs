using RehabTrack.Web.Commands;
using RehabTrack.Web.Hosting;

return args switch
{
    ["analyse", .. var words] => await KeyboardInterrupt.RunAsync(token =>
        Task.FromResult(AnalyseCommand.Run(words, Console.Error, token))
    ),
    ["backup", .. var words] => await KeyboardInterrupt.RunAsync(token =>
        BackupCommand.RunAsync(words, Console.Error, TimeProvider.System, token)
    ),
    ["restore", .. var words] => await KeyboardInterrupt.RunAsync(token => RestoreCommand.RunAsync(words, Console.Error, token)),
    ["verify", .. var words] => await KeyboardInterrupt.RunAsync(token => VerifyCommand.RunAsync(words, Console.Error, token)),
    ["verify-audit", .. var words] => await KeyboardInterrupt.RunAsync(token =>
        VerifyAuditCommand.RunAsync(words, Console.Out, Console.Error, token)
    ),
    ["invite", .. var words] => await KeyboardInterrupt.RunAsync(token => InviteCommand.RunAsync(words, Console.Out, Console.Error, token)),
    _ => await StartUp.RunAsync(args),
};
