using RehabTrack.Web.Commands;
using RehabTrack.Web.Hosting;

return args switch
{
    ["analyse", .. var words] => AnalyseCommand.Run(words),
    ["verify-audit", .. var words] => await VerifyAuditCommand.RunAsync(words),
    _ => await StartUp.RunAsync(args),
};
