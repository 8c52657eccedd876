using System.Net;
using System.Text.RegularExpressions;
using Clutchwright.Cli.Words;
using Xunit;

namespace Clutchwright.Cli.Tests.Serving;

/// <summary><c>serve</c>: starts the web app, says where it is, and stops when told to.</summary>
public sealed partial class ServeCommandTests
{
    [Theory]
    [InlineData("http://0.0.0.0:5417", "other machines")]
    [InlineData("nonsense", "nonsense")]
    public async Task Serve_AddressThatWillNotDo_IsAskedWrongly(string address, string said)
    {
        var run = await Run.ShippedAsync("serve", "--urls", address);

        Assert.Equal(ExitCode.AskedWrongly, run.Code);
        Assert.StartsWith("--urls: ", run.Error, StringComparison.Ordinal);
        Assert.Contains(said, run.Error, StringComparison.Ordinal);
        Assert.Equal(string.Empty, run.Output);
    }

    [Fact]
    public async Task Serve_AnyFreePort_AnswersUntilStopped()
    {
        using var data = new DataFolder();
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
        using var output = new AddressWriter();
        using var error = new StringWriter();
        using var client = new HttpClient();

        var running = CommandLine.RunAsync(
            ["serve", "--urls", "http://127.0.0.1:0", "--data", data.Path],
            new Terminal(output, error, IsStyled: false, Width: 200),
            stop.Token);
        var address = await output.Address.WaitAsync(TimeSpan.FromSeconds(60), stop.Token);
        var answer = await client.GetAsync(new Uri(address + "/healthz"), stop.Token);
        await stop.CancelAsync();

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal(ExitCode.Answered, await running);
        Assert.Equal(string.Empty, error.ToString());
    }

    // Tells as soon as an address was written.
    private sealed partial class AddressWriter : StringWriter
    {
        private readonly TaskCompletionSource<string> _address = new(TaskCreationOptions.RunContinuationsAsynchronously);

        public Task<string> Address => _address.Task;

        public override async Task WriteAsync(string? value)
        {
            await base.WriteAsync(value);
            if (Written().Match(value ?? string.Empty) is { Success: true } found)
            {
                _address.TrySetResult(found.Value);
            }
        }

        [GeneratedRegex(@"http://127\.0\.0\.1:\d+")]
        private static partial Regex Written();
    }
}
