using System.Diagnostics;
using System.Globalization;
using System.Text;
using Clutchwright.Stock.Backups;
using Clutchwright.Stock.Storage;
using Xunit;

namespace Clutchwright.Cli.Tests.Serving;

/// <summary><c>book restore</c> is killed at random moments: the book is the old one or the new one, whole, and nothing between.</summary>
[Collection(nameof(KilledServerTests))]
public sealed class KilledRestoreTests(ITestOutputHelper output) : IDisposable
{
    private const int Kills = 4;
    private const int Animals = 500;

    private readonly string _home = Directory.CreateTempSubdirectory("clutchwright-kill-").FullName;

    public void Dispose() => Directory.Delete(_home, recursive: true);

    [Fact]
    public Task Restore_KilledAtRandomMoments_LeavesTheOldOrTheNewBook() => KillAsync(data: Path.Combine(_home, "data"), connection: null);

    [Fact]
    public async Task Restore_OnPostgreSqlKilledAtRandomMoments_LeavesTheOldOrTheNewBook()
    {
        using var cluster = PostgreSqlCluster.TryStart();
        Assert.SkipWhen(cluster is null, "no PostgreSQL to test on");
        await KillAsync(data: null, cluster.For("book"));
    }

    private async Task KillAsync(string? data, string? connection)
    {
        var place = data is null ? BookPlace.OnPostgreSql(connection! + ";Pooling=false") : BookPlace.InFolder(data);
        string[] where = data is null ? [] : ["--data", data];
        var csv = Path.Combine(_home, "animals.csv");
        var rows = new StringBuilder("id,sex,seen,told\n");
        for (var i = 0; i < Animals; i++)
        {
            rows.Append(CultureInfo.InvariantCulture, $"K{i},u,Pastel,66% het Clown\n");
        }

        await File.WriteAllTextAsync(csv, rows.ToString(), TestContext.Current.CancellationToken);
        var (a, b) = (Path.Combine(_home, "a.clutchwright"), Path.Combine(_home, "b.clutchwright"));
        await RunAsync(connection, null, ["stock", "import", csv, .. where]);
        await RunAsync(connection, null, ["book", "backup", a, .. where]);
        await RunAsync(connection, null, ["stock", "note", "K1", "noted", "--text", "later", .. where]);
        await RunAsync(connection, null, ["book", "backup", b, .. where]);
        var later = await DigestAsync(place);
        var longest = await RunAsync(connection, null, ["book", "restore", a, "--yes", .. where]);
        var first = await DigestAsync(place);
        Assert.NotEqual(first, later);
        var random = new Random(20261130);
        var (isFirst, changed) = (true, 0);
        for (var kill = 0; kill < Kills; kill++)
        {
            // Nearly all of the time goes by before the restoring.
            await RunAsync(connection, longest * (0.4 + (0.6 * random.NextDouble())), ["book", "restore", isFirst ? b : a, "--yes", .. where]);

            var digest = await DigestAsync(place);
            Assert.True(digest == first || digest == later, "the book is neither the old nor the new one");
            changed += digest == first == isFirst ? 0 : 1;
            isFirst = digest == first;
        }

        output.WriteLine($"{Kills} killed, {changed} of them after the restoring was done");
    }

    private static async Task<string> DigestAsync(BookPlace place)
    {
        using var book = (await Book.OpenAsync(place, TimeProvider.System, CancellationToken.None)).Expect();
        var check = (await new CheckBook(book).RunAsync(CancellationToken.None)).Expect();
        Assert.True(check.IsSound, string.Join("; ", [.. check.Damage, .. check.Orphans, .. check.History]));
        return check.Contents.Digest!;
    }

    private async Task<TimeSpan> RunAsync(string? connection, TimeSpan? killAfter, IReadOnlyList<string> args)
    {
        var started = Stopwatch.GetTimestamp();
        using var process = ServedProgram.Start(_home, connection, args);
        var (output, error) = (process.StandardOutput.ReadToEndAsync(CancellationToken.None), process.StandardError.ReadToEndAsync(CancellationToken.None));
        if (killAfter is { } time)
        {
            await Task.WhenAny(process.WaitForExitAsync(CancellationToken.None), Task.Delay(time, CancellationToken.None));
            process.Kill();
        }

        await process.WaitForExitAsync(CancellationToken.None);
        await output;
        var wrong = await error;
        Assert.True(killAfter is not null || process.ExitCode == 0, wrong);
        return Stopwatch.GetElapsedTime(started);
    }
}
