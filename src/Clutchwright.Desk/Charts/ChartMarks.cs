using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Pedigrees.Charts;

namespace Clutchwright.Desk.Charts;

/// <summary>Says which genes a chart marks, and what is believed of them.</summary>
internal static class ChartMarks
{
    /// <summary>The genes that some of the animals show or may carry.</summary>
    public static IEnumerable<Allele> Of(IEnumerable<StockAnimal> animals) => animals.SelectMany(AllelesOf).Distinct();

    public static IReadOnlyList<Allele> Read(OpenCatalogue catalogue, IReadOnlyList<string> asked, List<AskedWrongly> problems)
    {
        var found = new List<Allele>();
        foreach (var name in asked)
        {
            if ((catalogue.Species.FindAllele(name) ?? catalogue.Catalogue.FindAllele(name)?.Allele) is { IsWild: false } allele)
            {
                found.Add(allele);
            }
            else
            {
                problems.Add(new("gene", $"The catalogue has no gene {name}.", DidYouMean: catalogue.Catalogue.NearestNames(name)));
            }
        }

        if (found.Distinct().Count() > ChartQuestion.MostGenes)
        {
            problems.Add(new("gene", $"At most {ChartQuestion.MostGenes} genes are marked at once."));
        }

        return [.. found.Distinct()];
    }

    /// <summary>The gene that most animals carry, recessive ones before others, since those hide.</summary>
    public static Allele? MostCarried(IEnumerable<StockAnimal> animals) => animals
        .SelectMany(AllelesOf)
        .CountBy(a => a)
        .OrderByDescending(c => c.Key.Mode == InheritanceMode.Recessive)
        .ThenByDescending(c => c.Value)
        .ThenBy(c => c.Key.Id, StringComparer.Ordinal)
        .Select(c => c.Key)
        .FirstOrDefault();

    public static ChartMark Of(StockAnimal animal, Allele allele)
    {
        var belief = animal.Belief.Genotype;
        var (first, second) = belief.MostLikely().AllelesAt(allele.Locus);
        var expression = allele.Locus.ExpressionOf(first, second);
        var isShown = (first == allele.Index || second == allele.Index) && expression.IsVisible && animal.Shown.Contains(expression);
        return new(allele.Name, isShown, belief.ChanceOfCarrying(allele));
    }

    private static IEnumerable<Allele> AllelesOf(StockAnimal animal) => animal.Belief.Genotype.Species.Groups
        .Where(g => !animal.Belief.Genotype[g][0].Value.IsWild || animal.Belief.Genotype[g].Count > 1)
        .SelectMany(g => g.Loci)
        .SelectMany(l => l.Alleles.Skip(1))
        .Where(a => animal.Belief.Genotype.ChanceOfCarrying(a) is { } chance && chance.Value > Probability.RoundingTolerance);
}
