using Waywright.Cli;

return await CommandLine.RunAsync(args).ConfigureAwait(false);
