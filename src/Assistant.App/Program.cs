using Assistant.App.Commands;

return await CommandLine.RunAsync(args);
