using System.Globalization;
using System.Text;
using Clutchwright.Genetics.Loci;
using Clutchwright.Pedigrees.Charts;
using CsCheck;

namespace Clutchwright.Pedigrees.Tests.Charts;

/// <summary>A made-up pedigree and what is asked of it.</summary>
internal sealed record ChartCase(IReadOnlyList<PedigreeAnimal> Animals, IReadOnlyDictionary<string, ChartAnimal> Known, ChartScope Scope)
{
    /// <summary>Pedigrees full of loops: any earlier animal of the right sex may be a parent, some parents are not recorded, some sires in doubt.</summary>
    public static Gen<ChartCase> Any { get; } = Of(Gen.Int[1, 60], Gen.Int[0, 3]);

    /// <summary>Every animal has two parents or none, no sire is in doubt.</summary>
    public static Gen<ChartCase> Certain { get; } = Of(Gen.Int[1, 60], Gen.Const(0));

    private ChartMeasures Measures { get; } = new();

    public double Symbol => Measures.Symbol;

    public double LabelWidth => Measures.LabelWidth;

    public PedigreeChart Chart() => PedigreeChart.Of(Pedigree.Of(Animals), Known, Scope, Measures);

    /// <summary>Clutches of four from the animals of the last years, back to an old male now and then: what a room of a line breeder looks like.</summary>
    public static ChartCase LineBred(int animals, int seed)
    {
        var random = new Random(seed);
        var founders = Math.Max(4, animals / 12);
        var all = new List<PedigreeAnimal>();
        var known = new Dictionary<string, ChartAnimal>(StringComparer.Ordinal);
        for (var i = 0; i < animals; i++)
        {
            if (i < founders)
            {
                Add(null, null);
                continue;
            }

            var hatched = founders + ((i - founders) / 4 * 4);
            var (sire, dam) = (Recent(hatched, 0), Recent(hatched, 1));
            sire = random.Next(4) == 0 ? random.Next(founders / 2) * 2 : sire;
            for (var young = 0; young < 4 && i < animals; young++, i++)
            {
                Add(sire, dam);
            }

            i--;
        }

        return new(all, known, new ChartScope(Key(animals * 2 / 3)) { IsWhole = true, Most = animals, MostYoung = animals });

        int Recent(int before, int sex)
        {
            var first = Math.Max(0, before - 24) / 2;
            return (2 * random.Next(first, before / 2)) + sex;
        }

        void Add(int? sire, int? dam)
        {
            var key = Key(all.Count);
            known.Add(key, new(key, all.Count % 2 == 0 ? Sex.Male : Sex.Female) { LabelHeight = 36, Hatched = new DateOnly(2015, 1, 1).AddDays(all.Count) });
            all.Add(new(key, sire is { } s ? Key(s) : null, dam is { } d ? Key(d) : null));
        }
    }

    public ChartCase Shuffled(int seed)
    {
        var animals = Animals.ToArray();
        new Random(seed).Shuffle(animals);
        return this with { Animals = animals };
    }

    public override string ToString()
    {
        var text = new StringBuilder($"about {Scope.AskedAbout ?? "all"}, whole {Scope.IsWhole}, {Scope.GenerationsUp} up, {Scope.GenerationsDown} down, most {Scope.Most} and {Scope.MostYoung} young: ");
        return text.AppendJoin(", ", Animals).ToString();
    }

    /// <summary>All that is drawn, as text.</summary>
    public static string Describe(PedigreeChart chart)
    {
        var text = new StringBuilder(string.Create(CultureInfo.InvariantCulture, $"{chart.Width} x {chart.Height}\n"));
        foreach (var symbol in chart.Symbols)
        {
            text.Append(string.Create(CultureInfo.InvariantCulture, $"{symbol.Kind} {symbol.Animal?.Key} {symbol.Row} {symbol.X} {symbol.Y} {symbol.Young} {symbol.MoreYoung} {symbol.HasMoreParents}\n"));
        }

        foreach (var mating in chart.Matings)
        {
            text.Append(CultureInfo.InvariantCulture, $"{mating.Sire} x {mating.Dam} {string.Join(' ', mating.Path)}\n");
        }

        foreach (var sibship in chart.Sibships)
        {
            text.Append(CultureInfo.InvariantCulture, $"{string.Join(' ', sibship.Descents)} {sibship.LineY} {string.Join(' ', sibship.Young)}\n");
        }

        return text.ToString();
    }

    private static Gen<ChartCase> Of(Gen<int> sizes, Gen<int> doubts) =>
        Gen.Select(sizes, Gen.Int[0, int.MaxValue], doubts, Gen.Int[0, 4]).Select((size, seed, doubt, shape) => Make(size, seed, doubt, shape));

    private static ChartCase Make(int size, int seed, int doubt, int shape)
    {
        var random = new Random(seed);
        var animals = new List<PedigreeAnimal>();
        var known = new Dictionary<string, ChartAnimal>(StringComparer.Ordinal);
        var (males, females) = (new List<string>(), new List<string>());
        for (var i = 0; i < size; i++)
        {
            var key = Key(i);
            var isFounder = males.Count < 2 || females.Count < 2 || random.Next(5) == 0;
            string? sire = isFounder || (doubt > 0 && random.Next(6) == 0) ? null : males[^(1 + random.Next(Math.Min(8, males.Count)))];
            string? dam = isFounder || (doubt > 0 && random.Next(6) == 0) ? null : females[^(1 + random.Next(Math.Min(8, females.Count)))];
            string[] possible = !isFounder && sire is null && random.Next(2) < doubt ? [.. males.TakeLast(2)] : [];
            animals.Add(new(key, sire, dam, possible));
            var sex = random.Next(9) == 0 ? (Sex?)null : random.Next(2) == 0 ? Sex.Male : Sex.Female;
            known.Add(key, new(key, sex)
            {
                LabelHeight = random.Next(60),
                Hatched = random.Next(4) == 0 ? null : new DateOnly(2010, 1, 1).AddDays(i * 30),
            });
            if (sex is { } certain)
            {
                (certain == Sex.Male ? males : females).Add(key);
            }
        }

        var scope = new ChartScope(shape == 0 ? null : Key(random.Next(size)))
        {
            IsWhole = shape == 1,
            GenerationsUp = random.Next(5),
            GenerationsDown = random.Next(4),
            Most = shape == 2 ? 1 + random.Next(10) : 1000,
            MostYoung = shape == 3 ? random.Next(4) : 12,
        };
        return new(animals, known, scope);
    }

    private static string Key(int number) => $"a{number:0000}";
}
