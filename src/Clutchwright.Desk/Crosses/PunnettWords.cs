using Clutchwright.Desk.Opened;
using Clutchwright.Genetics.Crosses;
using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Meiosis;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Desk.Crosses;

/// <summary>A Punnett square in words, where one fits: one or two loci in play and both parents certain.</summary>
internal static class PunnettWords
{
    public static PunnettAnswer? Of(OpenCatalogue catalogue, GenotypeBelief sire, GenotypeBelief dam)
    {
        if (!sire.IsCertain || !dam.IsCertain)
        {
            return null;
        }

        var (father, mother) = (sire.MostLikely(), dam.MostLikely());
        var groups = catalogue.Species.Groups.Where(g => !father[g].IsWild || !mother[g].IsWild).ToArray();
        if (groups.Length is 0 or > 2 || groups.Sum(g => g.Loci.Count(l => father.AllelesAt(l) != (0, 0) || mother.AllelesAt(l) != (0, 0))) > 2)
        {
            return null;
        }

        var square = PunnettSquare.Of(father, mother, groups);
        var loci = groups.SelectMany(g => g.Loci).Where(l => father.AllelesAt(l) != (0, 0) || mother.AllelesAt(l) != (0, 0)).ToArray();
        return new(
            loci.Select(l => l.Name).ToArray(),
            square.SireGametes.Select(g => Gamete(groups, g, father.IsHeterogametic)).ToArray(),
            square.DamGametes.Select(g => Gamete(groups, g, mother.IsHeterogametic)).ToArray(),
            Enumerable.Range(0, square.SireGametes.Count)
                .Select(r => (IReadOnlyList<PunnettCell>)Enumerable.Range(0, square.DamGametes.Count)
                    .Select(c => Cell(catalogue, loci, square[r, c], square.SireGametes[r].Weight * square.DamGametes[c].Weight))
                    .ToArray())
                .ToArray());
    }

    private static GameteWords Gamete(LinkageGroup[] groups, Weighted<IReadOnlyList<Gamete>> gamete, bool heterogametic) => new(
        string.Join(" · ", groups.Select((g, i) => GeneticNotation.Write(g, gamete.Value[i], heterogametic))),
        gamete.Weight);

    private static PunnettCell Cell(OpenCatalogue catalogue, Locus[] loci, Genotype child, Probability chance)
    {
        var shown = loci
            .Select(l => l.ExpressionOf(child.AllelesAt(l).First, child.AllelesAt(l).Second))
            .Where(e => e.IsVisible)
            .ToArray();
        return new(GeneticNotation.Write(child), catalogue.Wording.Look(catalogue.Species.SeenOf(shown)), chance);
    }
}
