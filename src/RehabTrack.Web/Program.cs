using RehabTrack.Web.Commands;
using RehabTrack.Web.Hosting;

return args is ["analyse", ..] ? AnalyseCommand.Run(args[1..]) : await StartUp.RunAsync(args);
