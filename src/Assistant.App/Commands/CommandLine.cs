using System.CommandLine;
using System.Text;

namespace Assistant.App.Commands;

/// <summary>The program's commands. Without one it talks: that is the job.</summary>
internal static class CommandLine
{
    private const string HowToServe = "The same call on a page: run it again with \"serve\" behind it. All commands: --help.";

    public static Task<int> RunAsync(string[] args)
    {
        Console.OutputEncoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
        if (args.Length == 0)
        {
            Console.Error.WriteLine(HowToServe);
            args = ["talk"];
        }

        return Root().Parse(args).InvokeAsync();
    }

    private static RootCommand Root() => new("Coldwalk walks a refrigeration technician through a call to a warm cold room.")
    {
        Options.Store,
        TalkCommand.Create(),
        ServeCommand.Create(),
        ListenCommand.Create(),
        ReportCommand.Create(),
        AssessCommand.Create(),
        UnderstandCommand.Create(),
        SaturationCommand.Create(),
        VerifyCommand.Create(),
        ExportCommand.Create(),
        ImportCommand.Create(),
        PeopleCommand.Create(),
        UndeliveredCommand.Create(),
    };
}
