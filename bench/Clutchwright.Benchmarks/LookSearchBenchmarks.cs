using BenchmarkDotNet.Attributes;
using Clutchwright.Catalogue;
using Clutchwright.Catalogue.Looks;
using Clutchwright.Genetics.Loci;

namespace Clutchwright.Benchmarks;

/// <summary>The first 20 makings that show a look, over the shipped catalogue; and the same by composing every making.</summary>
[MemoryDiagnoser]
public class LookSearchBenchmarks
{
    private const int Wanted = 20;

    private readonly SpeciesCatalogue _catalogue;
    private readonly CielabColour _yellow;

    public LookSearchBenchmarks()
    {
        var root = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(root.FullName, "Clutchwright.slnx")))
        {
            root = root.Parent ?? throw new InvalidOperationException("The benchmarks do not run inside the checkout.");
        }

        _catalogue = CatalogueFolder.Read(Path.Combine(root.FullName, "catalogue", "python-regius")).Catalogue!;
        _yellow = _catalogue.Tones.First(t => t.Name == "strong yellow").Lab;
    }

    /// <summary>The most genes of a composed making.</summary>
    [Params(2, 3)]
    public int Genes { get; set; }

    [Benchmark(Description = "a tone at one age")]
    public int Tone() => First(new() { Tones = [new([TonePlace.Pattern], [_yellow], 12)], MostGenes = Genes });

    [Benchmark(Description = "a tone that holds, white patches")]
    public int Holds() => First(new()
    {
        Tones = [new([TonePlace.Pattern], [_yellow], 12)],
        White = (WhiteExtent.Patches, WhiteExtent.Patches),
        Course = LookCourse.Holds,
        MostGenes = Genes,
    });

    [Benchmark(Description = "every making with a rare tone")]
    public int All() => _catalogue.FindLooks(new()
    {
        Tones = [new([TonePlace.Ground], [CielabColour.FromSrgb(new(90, 60, 130))], 10)],
        MostGenes = Genes,
    }).Count();

    [Benchmark(Baseline = true, Description = "pairs of genes, each composed")]
    public int EachComposed()
    {
        var forms = _catalogue.Forms.Select(f => f.Expression).ToArray();
        var found = 0;
        for (var i = 0; i < forms.Length; i++)
        {
            for (var j = i + 1; j < forms.Length; j++)
            {
                if (forms[i].Locus != forms[j].Locus
                    && _catalogue.LookOf([forms[i], forms[j]], AgeStage.Adult) is { } look
                    && look.Tones.Pattern.Lab.DifferenceFrom(_yellow) <= 12)
                {
                    found++;
                }
            }
        }

        return found;
    }

    private int First(LookWish wish) => _catalogue.FindLooks(wish).Take(Wanted).Count();
}
