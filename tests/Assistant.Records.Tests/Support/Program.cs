using Assistant.Records.Tests.Fixtures;
using Assistant.Records.Tests.Log;

namespace Assistant.Records.Tests.Support;

/// <summary>What the test assembly does when it is run as a program.</summary>
internal static class Program
{
    public static Task Main(string[] arguments) => arguments switch
    {
        ["append", var path, var run] => Appender.RunAsync(path, run),
        ["make-fixture", var path] => FirstRelease.MakeAsync(path),
        ["group-commit"] => GroupCommit.RunAsync(),
        _ => throw new ArgumentException("append PATH RUN, make-fixture PATH, or group-commit"),
    };
}
