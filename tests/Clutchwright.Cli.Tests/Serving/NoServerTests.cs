using Xunit;

namespace Clutchwright.Cli.Tests.Serving;

/// <summary>A database that cannot be used ends every command with exit code 2 and one line in plain words, without the password.</summary>
[Collection(nameof(KilledServerTests))]
public sealed class NoServerTests : IDisposable
{
    private readonly string _home = Directory.CreateTempSubdirectory("clutchwright-none-").FullName;

    public static TheoryData<string[]> Commands() => [new[] { "stock", "list" }, new[] { "book" }, new[] { "serve", "--urls", "http://127.0.0.1:0" }];

    public void Dispose() => Directory.Delete(_home, recursive: true);

    [Theory]
    [MemberData(nameof(Commands))]
    public async Task Run_ServerOutOfReach_SaysSo(string[] args)
    {
        var (code, error) = await RunAsync("Host=127.0.0.1;Port=1;Database=stock;Username=keeper;Password=hush-hush", args);

        Assert.Equal(ExitCode.CouldNotBeDone, code);
        Assert.StartsWith("Database stock on 127.0.0.1, port 1 cannot be used: ", error, StringComparison.Ordinal);
        AssertPlain(error);
    }

    [Fact]
    public async Task Run_PasswordRefused_SaysSo()
    {
        using var cluster = PostgreSqlCluster.TryStart();
        Assert.SkipWhen(cluster is null, "no PostgreSQL to test on");
        cluster.AskForPasswords("keeper", "the right one");

        var (refused, error) = await RunAsync(cluster.For("book", "keeper") + ";Password=hush-hush", ["stock", "list"]);
        var (taken, none) = await RunAsync(cluster.For("book", "keeper") + ";Password=the right one", ["stock", "list"]);

        Assert.Equal(ExitCode.CouldNotBeDone, refused);
        Assert.Contains("password authentication failed for user \"keeper\"", error, StringComparison.Ordinal);
        AssertPlain(error);
        Assert.Equal((ExitCode.Answered, string.Empty), (taken, none));
    }

    private static void AssertPlain(string error)
    {
        Assert.DoesNotContain("hush-hush", error, StringComparison.Ordinal);
        Assert.DoesNotContain("Exception", error, StringComparison.Ordinal);
        Assert.Single(error.TrimEnd('\n').Split('\n'));
    }

    private async Task<(int Code, string Error)> RunAsync(string connection, string[] args)
    {
        using var process = ServedProgram.Start(_home, connection, args);
        var (output, error) = (process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken), process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken));
        await Task.WhenAll(output, error);
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        return (process.ExitCode, await error);
    }
}
