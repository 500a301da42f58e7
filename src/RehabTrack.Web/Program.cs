using RehabTrack.Web.Hosting;

return await StartUp.RunAsync(args);
