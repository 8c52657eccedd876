using System.Text;
using BenchmarkDotNet.Attributes;
using Clutchwright.Browser;
using Clutchwright.Desk;
using Clutchwright.Desk.Animals;
using Clutchwright.Desk.Carry;
using Clutchwright.Desk.Pairs;
using Microsoft.Extensions.DependencyInjection;

namespace Clutchwright.Benchmarks;

/// <summary>What the pages ask of a book of 2,000 animals: the best pairs, among all kin or among families, and whose record fits least to all others.</summary>
[MemoryDiagnoser]
public class LargeBookBenchmarks
{
    private const int Animals = 2_000;
    private readonly string _folder = Directory.CreateTempSubdirectory("clutchwright-bench-").FullName;
    private readonly List<ServiceProvider> _desks = [];
    private RankPairs _bred = null!;
    private RankPairs _families = null!;
    private ListSuspects _suspects = null!;

    [GlobalSetup]
    public async Task Setup()
    {
        _bred = (await OpenAsync(BredBook.Csv(Animals, 1))).GetRequiredService<RankPairs>();
        _families = (await OpenAsync(LargeStock.Csv(Animals))).GetRequiredService<RankPairs>();
        _suspects = (await OpenAsync(BredBook.Csv(Animals, 1, misread: 100))).GetRequiredService<ListSuspects>();
    }

    [Benchmark(Description = "best pairs for Clown, all kin and looked at")]
    public Task<int> Bred() => PairsAsync(_bred, "Clown");

    [Benchmark(Description = "best pairs for Clown Pied, the same")]
    public Task<int> BredTwo() => PairsAsync(_bred, "Clown Pied");

    [Benchmark(Description = "best pairs for Clown, families whose young nobody looked at")]
    public Task<int> Families() => PairsAsync(_families, "Clown");

    [Benchmark(Description = "whose record fits least, one clash")]
    public async Task<int> Suspects() => (await _suspects.RunAsync(5, CancellationToken.None)).Animals.Count;

    [GlobalCleanup]
    public void Close()
    {
        _desks.ForEach(d => d.Dispose());
        _desks.Clear();
        Directory.Delete(_folder, recursive: true);
    }

    private static async Task<int> PairsAsync(RankPairs rank, string want) => (await rank.RunAsync(new(want), CancellationToken.None)).Value!.Pairs.Count;

    private async Task<ServiceProvider> OpenAsync(string csv)
    {
        var services = new ServiceCollection();
        services.AddSingleton(TimeProvider.System);
        services.AddDesk(CatalogueFolder(), Path.Combine(_folder, $"book{_desks.Count}"));
        var desk = services.BuildServiceProvider();
        _desks.Add(desk);
        var done = await desk.GetRequiredService<ImportStock>().RunAsync(Encoding.UTF8.GetBytes(csv), null, "book.csv", "keeper", CancellationToken.None);
        return done.Problems.Count == 0 ? desk : throw new InvalidOperationException(done.Problems[0].ToString());
    }

    private static string CatalogueFolder()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "Clutchwright.slnx")))
        {
            folder = folder.Parent ?? throw new InvalidOperationException("The benchmarks do not run inside the checkout.");
        }

        return Path.Combine(folder.FullName, "catalogue", "python-regius");
    }
}
