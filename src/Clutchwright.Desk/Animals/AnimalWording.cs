using Clutchwright.Desk.Carry;
using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Pedigrees.Beliefs.Explanations;
using Clutchwright.Stock.Statements;

namespace Clutchwright.Desk.Animals;

/// <summary>Puts animals of the stock, and what is believed of them, into words.</summary>
internal static class AnimalWording
{
    public static AnimalLine Line(OpenCatalogue catalogue, StockAnimal animal) => new(
        animal.Animal.Tag,
        animal.Animal.Name,
        animal.Animal.Sex,
        animal.Animal.Hatched?.Words,
        animal.Animal.Status.ToString(),
        catalogue.Wording.Animal(animal.Belief.Genotype),
        animal.Problems.Count > 0);

    public static StatementLine Line(Statement statement) => new(
        statement.StatementId.Value,
        statement.Kind.ToString(),
        statement.Kind == StatementKind.LookedAtNormal ? Statement.Normal
            : statement.Test is { } test ? $"{statement.Text}: {(test.Found ? "found" : "not found")}"
            : statement.Text,
        statement.By,
        statement.When?.Words,
        statement.Confidence);

    /// <summary>What an animal carries, locus by locus, and from what each belief comes.</summary>
    public static IReadOnlyList<BeliefLine> Beliefs(OpenCatalogue catalogue, StockRecord record, StockAnimal animal, CancellationToken cancel)
    {
        var lines = new List<BeliefLine>();
        var belief = animal.Belief;
        foreach (var group in belief.Spoken)
        {
            foreach (var locus in group.Loci)
            {
                var pairs = belief.Genotype.PairsAt(locus);
                if (pairs.Count == 1 && pairs[0].Value == (0, 0))
                {
                    continue;
                }

                var heterogametic = belief.Genotype.IsHeterogametic;
                var possibilities = group.IsSex && heterogametic && group.Loci.Count == 1
                    ? belief.Genotype[group].Select(w => Possibility(w.Value.First, w.Value.Second, isOrdered: true, w.Weight))
                    : pairs.Select(p => Possibility(p.Value.First, p.Value.Second, isOrdered: false, p.Weight));
                lines.Add(new(locus.Name, possibilities.ToArray(), [.. Why(locus)]));

                HiddenLineOfAnimal Possibility(int first, int second, bool isOrdered, Probability chance)
                {
                    var ordered = isOrdered && first != second;
                    var genotype = Genotype.Wild(catalogue.Species, belief.Genotype.Sex).With(locus, first, second);
                    return new(
                        catalogue.Wording.Pair(locus, first, second, ordered),
                        GeneticNotation.Write(group, genotype[group], heterogametic),
                        chance);
                }
            }
        }

        return lines;

        IEnumerable<WhyStep> Why(Locus locus) => locus.Alleles
            .Skip(1)
            .Where(a => !belief.Genotype.ChanceOfCarrying(a).IsImpossible)
            .SelectMany(a => new ExplanationWords(
                catalogue, record, BeliefExplanation.Of(animal.Beliefs, animal.Key, new GenotypeClaim.Carries(a), cancel)).All());
    }
}
