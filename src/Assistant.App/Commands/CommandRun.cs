using System.CommandLine;
using Assistant.Dialogue.Files;
using Assistant.Records.Storage;
using Assistant.Voice;

namespace Assistant.App.Commands;

/// <summary>Runs a command's work and turns what went wrong into one line on standard error and an exit code.</summary>
internal static class CommandRun
{
    public static void SetWork(this Command command, Func<ParseResult, CancellationToken, Task> work) => command.SetAction(async (arguments, cancellation) =>
    {
        try
        {
            await work(arguments, cancellation);
            return 0;
        }
        catch (Exception failure) when (Explain(failure) is var (line, exitCode))
        {
            await Console.Error.WriteLineAsync(line);
            return exitCode;
        }
    });

    private static (string Line, int ExitCode)? Explain(Exception failure) => failure switch
    {
        CommandFailure known => (known.Message, known.ExitCode),
        VoicePartMissingException missing => (missing.Message, CommandFailure.Failed),
        RecordsException records => (records.Message, CommandFailure.Failed),
        DialogDataException data => (data.Defects[0].ToString(), CommandFailure.BadInput),
        OperationCanceledException => ("Stopped.", CommandFailure.Failed),
        _ when Environment.GetEnvironmentVariable("COLDWALK_TRACE") is null =>
            ($"The program failed inside ({failure.GetType().Name}: {failure.Message.ReplaceLineEndings(" ")}). What was answered is kept; COLDWALK_TRACE=1 shows where.", CommandFailure.Failed),
        _ => null,
    };
}
