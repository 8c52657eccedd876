using System.Collections.Concurrent;
using System.Globalization;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Backups;
using Clutchwright.Stock.Happenings;
using Clutchwright.Stock.Storage;
using Xunit;

namespace Clutchwright.Cli.Tests.Serving;

/// <summary>The web server is killed while several keepers write through its forms: what it acknowledged is in the book, nothing is there by half,
/// and it starts again over what is left.</summary>
/// <remarks><c>CLUTCHWRIGHT_KILLS</c> says how often; the results of long runs are in docs/checked-against.md.</remarks>
[Collection(nameof(KilledServerTests))]
public sealed class KilledServerTests(ITestOutputHelper output) : IDisposable
{
    private const int Usual = 4;
    private const int Clients = 4;
    private const int MostAnimals = 60;

    private static readonly int? Asked =
        int.TryParse(Environment.GetEnvironmentVariable("CLUTCHWRIGHT_KILLS"), NumberStyles.None, CultureInfo.InvariantCulture, out var kills) ? kills : null;

    private readonly string _home = Directory.CreateTempSubdirectory("clutchwright-kill-").FullName;
    private readonly ConcurrentQueue<string> _animals = new();
    private readonly ConcurrentQueue<string> _acknowledged = new();
    private int _sent;

    public void Dispose() => Directory.Delete(_home, recursive: true);

    [Fact]
    public async Task Serve_KilledWhileKeepersWrite_KeepsWhatItAcknowledged()
    {
        var data = Path.Combine(_home, "data");
        var random = new Random(20261127);
        for (var kill = 0; kill < (Asked ?? Usual); kill++)
        {
            await using (var program = await ServedProgram.StartAsync(_home, data, connection: null))
            {
                await WriteUntilAsync(program, random, program.KillAsync);
            }

            await CheckAsync(BookPlace.InFolder(data));
        }

        Tell("SQLite");
    }

    [Fact]
    public async Task Serve_OnPostgreSqlKilledWhileKeepersWrite_KeepsWhatItAcknowledged()
    {
        using var cluster = PostgreSqlCluster.TryStart();
        Assert.SkipWhen(cluster is null, "no PostgreSQL to test on");
        var random = new Random(20261128);
        for (var kill = 0; kill < (Asked ?? Usual); kill++)
        {
            await using (var program = await ServedProgram.StartAsync(_home, data: null, cluster.For("book")))
            {
                await WriteUntilAsync(program, random, program.KillAsync);
            }

            await CheckAsync(BookPlace.OnPostgreSql(cluster.For("book") + ";Pooling=false"));
        }

        Tell("PostgreSQL");
    }

    /// <summary>The database server itself is killed; the web server stays, and goes on once the database is back.</summary>
    [Fact]
    public async Task Serve_PostgreSqlKilledUnderIt_KeepsWhatItAcknowledgedAndGoesOn()
    {
        using var cluster = PostgreSqlCluster.TryStart();
        Assert.SkipWhen(cluster is null, "no PostgreSQL to test on");
        var random = new Random(20261129);
        await using var program = await ServedProgram.StartAsync(_home, data: null, cluster.For("book"));
        var kills = Asked is { } many ? Math.Max(1, many / 10) : 2;
        for (var kill = 0; kill < kills; kill++)
        {
            await WriteUntilAsync(program, random, () =>
            {
                cluster.Kill();
                return Task.CompletedTask;
            });
            cluster.Restart();
            await CheckAsync(BookPlace.OnPostgreSql(cluster.For("book") + ";Pooling=false"));
            using var client = new FormClient(program.Address);
            Assert.True(await OneOfAsync(() => AddAnimalAsync(client)), "the web server did not go on");
        }

        Tell("PostgreSQL killed");
    }

    // A connection of the pool that broke is found out by the first who uses it.
    private static async Task<bool> OneOfAsync(Func<Task<bool>> send)
    {
        for (var tries = 0; tries < 20; tries++)
        {
            if (await send())
            {
                return true;
            }
        }

        return false;
    }

    private async Task WriteUntilAsync(ServedProgram program, Random random, Func<Task> kill)
    {
        var before = _acknowledged.Count;
        using var stop = new CancellationTokenSource();
        var seeds = Enumerable.Range(0, Clients).Select(_ => random.Next()).ToArray();
        var writers = seeds.Select(seed => Task.Run(() => WriteAsync(program.Address, new Random(seed), stop.Token))).ToArray();

        // At a moment after they began.
        while (_acknowledged.Count == before && !writers.All(w => w.IsCompleted))
        {
            await Task.Delay(5, CancellationToken.None);
        }

        await Task.Delay(random.Next(400), CancellationToken.None);
        await kill();
        await stop.CancelAsync();
        await Task.WhenAll(writers);
    }

    private async Task WriteAsync(Uri address, Random random, CancellationToken stop)
    {
        using var client = new FormClient(address);
        while (!stop.IsCancellationRequested)
        {
            var isWritten = _animals.Count < 3 || (_animals.Count < MostAnimals && random.Next(3) == 0)
                ? await AddAnimalAsync(client)
                : random.Next(2) == 0 ? await WriteLogAsync(client, random) : await SayAsync(client, random);
            if (!isWritten)
            {
                // Killed, or on the way to it.
                await Task.Delay(20, CancellationToken.None);
            }
        }
    }

    private async Task<bool> AddAnimalAsync(FormClient client)
    {
        var tag = Next("K");
        var isWritten = await client.SendAsync("/stock/new", "animal", ("tag", tag), ("sex", "u"), ("seen", "Pastel"), ("told", "66% het Clown"), ("status", "Kept"));
        if (isWritten)
        {
            _animals.Enqueue(tag);
            _acknowledged.Enqueue($"animal {tag}");
        }

        return isWritten;
    }

    private async Task<bool> WriteLogAsync(FormClient client, Random random)
    {
        var text = Next("text ");
        var isWritten = await client.SendAsync("/log", "happening", ("animal", Any(random)), ("kind", "Noted"), ("text", text));
        if (isWritten)
        {
            _acknowledged.Enqueue($"log {text}");
        }

        return isWritten;
    }

    private async Task<bool> SayAsync(FormClient client, Random random)
    {
        var by = Next("by ");
        var isWritten = await client.SendAsync($"/stock/{Any(random)}", "statement", ("kind", "Told"), ("sure", "100"), ("text", "50% het Pied"), ("by", by), ("sensitivity", "99"), ("specificity", "99"));
        if (isWritten)
        {
            _acknowledged.Enqueue($"statement {by}");
        }

        return isWritten;
    }

    private string Any(Random random) => _animals.ElementAt(random.Next(_animals.Count));

    private string Next(string prefix) => string.Create(CultureInfo.InvariantCulture, $"{prefix}{Interlocked.Increment(ref _sent)}");

    private async Task CheckAsync(BookPlace place)
    {
        using var book = (await Book.OpenAsync(place, TimeProvider.System, CancellationToken.None)).Expect();
        var check = (await new CheckBook(book).RunAsync(CancellationToken.None)).Expect();
        Assert.True(check.IsSound, string.Join("; ", [.. check.Damage, .. check.Orphans, .. check.History]));
        var animals = (await new AllAnimals(book).RunAsync(CancellationToken.None)).Expect();
        var there = animals.Select(a => $"animal {a.Tag}")
            .Concat(animals.SelectMany(a => a.Statements).Select(s => $"statement {s.By}"))
            .Concat((await new ListHappenings(book).RunAsync(null, [], 1_000_000, CancellationToken.None)).Expect().Select(h => $"log {h.Text}"))
            .ToHashSet(StringComparer.Ordinal);
        Assert.DoesNotContain(_acknowledged, done => !there.Contains(done));

        // An animal comes with what is seen and told of it, all three or none.
        Assert.All(animals, animal => Assert.Equal(2, animal.Statements.Count(s => s.By is null)));
    }

    private void Tell(string database) => output.WriteLine(string.Create(
        CultureInfo.InvariantCulture, $"{database}: {_acknowledged.Count} acknowledged of {_sent} sent, all of them there"));
}

/// <summary>The machine is theirs alone.</summary>
[CollectionDefinition(nameof(KilledServerTests), DisableParallelization = true)]
public sealed class KilledServerGroup;
