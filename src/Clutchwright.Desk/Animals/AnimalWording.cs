using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Pedigrees.Beliefs;
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
    public static IReadOnlyList<BeliefLine> Beliefs(OpenCatalogue catalogue, StockAnimal animal)
    {
        var lines = new List<BeliefLine>();
        foreach (var steps in animal.Belief.Steps.GroupBy(s => s.Group))
        {
            var group = steps.Key;
            foreach (var locus in group.Loci)
            {
                var pairs = animal.Belief.Genotype.PairsAt(locus);
                if (pairs.Count == 1 && pairs[0].Value == (0, 0))
                {
                    continue;
                }

                var heterogametic = animal.Belief.Genotype.IsHeterogametic;
                var possibilities = group.IsSex && heterogametic && group.Loci.Count == 1
                    ? animal.Belief.Genotype[group].Select(w => Possibility(w.Value.First, w.Value.Second, isOrdered: true, w.Weight))
                    : pairs.Select(p => Possibility(p.Value.First, p.Value.Second, isOrdered: false, p.Weight));
                lines.Add(new(locus.Name, possibilities.ToArray(), steps.Select(s => Why(animal, s)).ToArray()));

                HiddenLineOfAnimal Possibility(int first, int second, bool isOrdered, Probability chance)
                {
                    var ordered = isOrdered && first != second;
                    var genotype = Genotype.Wild(catalogue.Species, animal.Belief.Genotype.Sex).With(locus, first, second);
                    return new(
                        catalogue.Wording.Pair(locus, first, second, ordered),
                        GeneticNotation.Write(group, genotype[group], heterogametic),
                        chance);
                }
            }
        }

        return lines;
    }

    private static WhyStep Why(StockAnimal animal, BeliefStep step)
    {
        var carries = step.After
            .Where(w => !w.Value.IsWild)
            .Aggregate(Probability.Impossible, (sum, w) => sum + w.Weight);
        var statement = step.Observation is { } index ? animal.Statements[index] : null;
        var said = statement is null ? string.Empty : $"{Line(statement).Text}{(statement.By is { } by ? $", said by {by}" : string.Empty)}";
        var text = step.Source switch
        {
            BeliefSource.Parents when step.Observation is not null => "One of its parents is recorded, and must have had its part in it. Chance now:",
            BeliefSource.Parents => "What its recorded parents may pass on. Chance that it carries something here:",
            BeliefSource.Words when statement!.Kind is StatementKind.Seen => $"Taken from what was seen ({said}). Chance that it carries something here:",
            BeliefSource.Words when statement!.Kind is StatementKind.DnaTest =>
                $"Shed DNA test: {said}. Nothing else is recorded of it here, so carrying it was taken as likely as not before the test. Chance that it carries something here:",
            BeliefSource.Words => $"Taken from what was said ({said}). Chance that it carries something here:",
            BeliefSource.Seen => $"It was looked at ({said}), which rules out what would show. Chance now:",
            BeliefSource.Said => $"Said of it: {said}. Chance now:",
            BeliefSource.SaidAndImplied => $"Said of it: {said}. Not counted again, since the parents' records already say what can be known. Chance still:",
            BeliefSource.RuledOut => $"Ruled out: {said}. Chance now:",
            BeliefSource.DnaTest => $"Shed DNA test: {said}. Chance now:",
        };
        return new(text, carries);
    }
}
