namespace Assistant.App.Commands;

/// <summary>A command can not go on. The message is one line for people; it goes to standard error.</summary>
/// <param name="exitCode">2 for an input that can not be read, with file, line and key in the message; 1 for anything else.</param>
public sealed class CommandFailure(string message, int exitCode = CommandFailure.Failed) : Exception(message)
{
    public const int Failed = 1;
    public const int BadInput = 2;

    public int ExitCode { get; } = exitCode;
}
