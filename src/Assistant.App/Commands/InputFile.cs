using System.Text;

namespace Assistant.App.Commands;

/// <summary>The file a command reads, or standard input for "-".</summary>
public static class InputFile
{
    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>All lines, in UTF-8.</summary>
    /// <exception cref="CommandFailure">It can not be read; the message names it.</exception>
    public static IReadOnlyList<string> ReadLines(string file)
    {
        try
        {
            if (file != "-")
            {
                return File.ReadAllLines(file, Strict);
            }

            using var input = new StreamReader(Console.OpenStandardInput(), Strict);
            return input.ReadToEnd().ReplaceLineEndings("\n").TrimEnd('\n').Split('\n');
        }
        catch (DecoderFallbackException)
        {
            throw new CommandFailure($"{file}:1: file: it is not UTF-8 text.", CommandFailure.BadInput);
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException or ArgumentException)
        {
            throw new CommandFailure($"{file}:1: file: it can not be read ({failure.Message.TrimEnd('.')}).", CommandFailure.BadInput);
        }
    }
}
