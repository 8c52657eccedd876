using System.Globalization;
using System.Text;
using Clutchwright.Desk.Opened;
using Clutchwright.Genetics.Loci;
using Clutchwright.Stock.Animals;

namespace Clutchwright.Desk.Leaving;

/// <summary>A pedigree in linkage format: what is seen of each animal, and who its parents are, as programs of human genetics read it.</summary>
/// <param name="Ped">A line an animal: family, id, father, mother, sex, affection (0 for all), then two allele numbers a locus.</param>
/// <param name="Map">A line a locus, in the order of the columns.</param>
/// <param name="Phenotypes">For each locus whether an animal shows something of it: 2 yes, 1 no, 0 not known.</param>
/// <param name="Legend">What the columns and numbers mean, and what the format could not hold.</param>
internal sealed record LinkagePedigree(string Ped, string Map, string Phenotypes, string Legend)
{
    private const string Family = "book";

    /// <summary>The file's ending and its companions', in the order of writing.</summary>
    public static readonly IReadOnlyList<string> Endings = [".ped", ".map", ".phe", ".txt"];

    public IReadOnlyList<string> Texts => [Ped, Map, Phenotypes, Legend];

    /// <param name="catalogue">Reads what is seen.</param>
    /// <param name="animals">Out of the bin, their parents among them.</param>
    public static LinkagePedigree Of(OpenCatalogue catalogue, IReadOnlyList<Animal> animals)
    {
        var ids = new LinkageIds(animals);
        var seen = animals.ToDictionary(a => a.AnimalId, a => SeenAtLoci.Of(catalogue, a));
        Locus[] loci = [.. catalogue.Species.Loci.Where(l => animals.Any(a => seen[a.AnimalId].At(l) is { IsVisible: true }))];
        var (ped, phenotypes) = (new StringBuilder(), new StringBuilder($"FID IID{string.Concat(loci.Select(l => $" {l.Id}"))}\n"));
        foreach (var placeholder in ids.Placeholders)
        {
            ped.Append(CultureInfo.InvariantCulture, $"{Family} {placeholder.Id} 0 0 {Number(placeholder.Sex)} 0{string.Concat(Enumerable.Repeat(" 0 0", loci.Length))}\n");
        }

        foreach (var animal in animals)
        {
            var at = seen[animal.AnimalId];
            var (father, mother) = ids.ParentsOf(animal);
            ped.Append(CultureInfo.InvariantCulture, $"{Family} {ids.Of(animal)} {father} {mother} {Number(ids.SexOf(animal))} 0");
            phenotypes.Append(CultureInfo.InvariantCulture, $"{Family} {ids.Of(animal)}");
            foreach (var shown in loci.Select(at.At))
            {
                var pair = shown is null ? null : SeenAtLoci.PairOf(shown);
                ped.Append(CultureInfo.InvariantCulture, $" {pair?.First + 1 ?? 0} {pair?.Second + 1 ?? 0}");
                phenotypes.Append(shown switch { null => " 0", { IsVisible: true } => " 2", _ => " 1" });
            }

            ped.Append('\n');
            phenotypes.Append('\n');
        }

        return new(
            ped.ToString(),
            string.Concat(loci.Select(l => $"0 {l.Id} 0 0\n")),
            phenotypes.ToString(),
            LinkageLegend.Of(loci, ids, animals, animals.SelectMany(a => seen[a.AnimalId].Problems.Select(p => $"{ids.Of(a)}: {p}")).ToList()));
    }

    private static int Number(Sex? sex) => sex switch { Sex.Male => 1, Sex.Female => 2, null => 0 };
}
