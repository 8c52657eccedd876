using System.Text;

namespace Clutchwright.Benchmarks;

/// <summary>A made-up book of a kennel over many seasons, as the CSV that the import takes: all young looked at, half of the founders' hidden alleles told.</summary>
/// <remarks>The same every time. Two recessives and two incomplete dominants; 20 females and 6 males a season, one clutch a female, young kept now and then.</remarks>
internal static class BredBook
{
    private const int Females = 20;
    private const int Males = 6;
    private static readonly (string Name, bool IsRecessive, int PerHundred)[] Genes = [("Clown", true, 10), ("Pied", true, 6), ("Pastel", false, 15), ("Enchi", false, 10)];

    /// <summary>Writes a book.</summary>
    /// <param name="animals">How many animals.</param>
    /// <param name="seed">The seed.</param>
    /// <param name="misread">The number of a young bred of two that do not show Pastel, entered as showing it; -1: none.</param>
    public static string Csv(int animals, int seed, int misread = -1)
    {
        var random = new Random(seed);
        var text = new StringBuilder("id,sex,sire,dam,hatched,seen,told\n");
        var genotypes = new List<int[]>();
        var (dams, sires) = (new List<int>(), new List<int>());
        var left = misread;
        for (var i = 0; i < Females + Males; i++)
        {
            (i < Females ? dams : sires).Add(Founder(i < Females, 2000));
        }

        for (var season = 2003; genotypes.Count < animals; season++)
        {
            dams.Add(Founder(isFemale: true, season - 3));
            if (season % 2 == 0)
            {
                sires.Add(Founder(isFemale: false, season - 3));
            }

            var (bred, used) = (dams.TakeLast(Females).ToArray(), sires.TakeLast(Males).ToArray());
            for (var c = 0; c < bred.Length && genotypes.Count < animals; c++)
            {
                var sire = random.Next(2) == 0 ? used[0] : used[random.Next(used.Length)];
                for (var n = 4 + random.Next(5); n > 0 && genotypes.Count < animals; n--)
                {
                    Young(sire, bred[c], season);
                }
            }
        }

        return text.ToString();

        int Founder(bool isFemale, int year)
        {
            var genotype = Array.ConvertAll(Genes, g => (random.Next(100) < g.PerHundred ? 1 : 0) + (random.Next(100) < g.PerHundred ? 1 : 0));
            var told = Genes.Where((g, i) => g.IsRecessive && genotype[i] == 1 && random.Next(2) == 0).Select((g, i) => (i % 2 == 0 ? "het " : "66% het ") + g.Name);
            text.Append($"B{genotypes.Count:0000},{(isFemale ? 'f' : 'm')},,,{year},{Seen(genotype)},{string.Join(' ', told)}\n");
            genotypes.Add(genotype);
            return genotypes.Count - 1;
        }

        void Young(int sire, int dam, int season)
        {
            var genotype = Genes.Select((_, i) => Passed(genotypes[sire][i]) + Passed(genotypes[dam][i])).ToArray();
            var isFemale = random.Next(2) == 0;
            var seen = (int[])genotype.Clone();
            if (genotypes[sire][2] == 0 && genotypes[dam][2] == 0 && left-- == 0)
            {
                seen[2] = 1;
            }

            text.Append($"B{genotypes.Count:0000},{(isFemale ? 'f' : 'm')},B{sire:0000},B{dam:0000},{season},{Seen(seen)},\n");
            genotypes.Add(genotype);
            if (random.Next(10) == 0)
            {
                (isFemale ? dams : sires).Insert(0, genotypes.Count - 1);
            }
        }

        int Passed(int copies) => copies == 2 || (copies == 1 && random.Next(2) == 0) ? 1 : 0;
    }

    private static string Seen(int[] genotype)
    {
        var words = Genes.Select((g, i) => g.IsRecessive ? (genotype[i] == 2 ? g.Name : null) : genotype[i] switch { 0 => null, 1 => g.Name, _ => "Super " + g.Name }).OfType<string>();
        return string.Join(' ', words) is { Length: > 0 } seen ? seen : "normal";
    }
}
