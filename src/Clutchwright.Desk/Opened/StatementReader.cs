using Clutchwright.Catalogue.TradeTexts;
using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Looks;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Pedigrees.Beliefs;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Statements;

namespace Clutchwright.Desk.Opened;

/// <summary>Turns a keeper's statements into observations, and the observations into a belief.</summary>
internal static class StatementReader
{
    /// <summary>What is recorded of one animal, in the terms of genetics.</summary>
    public static ReadStatements Read(OpenCatalogue catalogue, Animal animal, IReadOnlyList<Statement> recorded)
    {
        var problems = new List<string>();
        var observations = new List<Observation>();
        var statements = new List<Statement>();

        // Seen first: what everyone can check stands before what someone says, and that before what breeding or a test has shown.
        foreach (var statement in recorded.OrderBy(s => s.Kind).ThenBy(s => s.StatementId.Value))
        {
            foreach (var observation in Read(catalogue, animal, statement, problems))
            {
                observations.Add(observation with { Confidence = Probability.From(statement.Confidence) });
                statements.Add(statement);
            }
        }

        return new(observations, statements, problems);
    }

    /// <summary>What is wrong with a text of a statement; <c>null</c>: it can be read.</summary>
    public static TradeTextProblem? Check(OpenCatalogue catalogue, string column, string text)
    {
        var outcome = catalogue.Read(text);
        return outcome.IsRead
            ? null
            : new TradeTextProblem(outcome.Problem.Text, Position: outcome.Problem.Position);
    }

    private static IEnumerable<Observation> Read(
        OpenCatalogue catalogue, Animal animal, Statement statement, List<string> problems)
    {
        var sex = animal.Sex ?? catalogue.Species.SexSystem.Heterogametic().Opposite();
        if (statement.Kind == StatementKind.LookedAtNormal)
        {
            return [new Observation.Seen([], GenotypeBelief.Wild(catalogue.Species, sex))];
        }

        var outcome = catalogue.Read(statement.Text);
        var belief = outcome.IsRead ? outcome.Value.ToBelief(sex) : null;

        // A maker says of itself that it has two different sex chromosomes; an unsexed animal is read as such a one.
        if (belief is { IsRead: false } && animal.Sex is null)
        {
            belief = outcome.Value!.ToBelief(sex.Opposite());
        }

        if (belief is not { IsRead: true })
        {
            problems.Add($"\"{statement.Text}\" cannot be read: {(outcome.Problem ?? belief!.Problem)!.Text}");
            return [];
        }

        return statement.Kind switch
        {
            StatementKind.Seen => [new Observation.Seen(Forms(belief.Value), belief.Value)],
            StatementKind.Told => [new Observation.Said(belief.Value, StatementBasis.Told)],
            StatementKind.ProvenByBreeding => [new Observation.Said(belief.Value, StatementBasis.ProvenByBreeding)],
            StatementKind.RuledOut => [new Observation.RuledOut(Named(outcome.Value!).ToArray())],
            StatementKind.DnaTest => Tests(outcome.Value!, statement.Test!),
            StatementKind.LookedAtNormal => [],
        };
    }

    private static IEnumerable<Observation> Tests(ReadAnimal read, DnaTest test)
    {
        foreach (var claim in read.Claims)
        {
            var (first, second) = claim.Pairs[0].Value;
            foreach (var allele in new[] { first, second }.Where(a => a > 0).Distinct())
            {
                var copies = !test.Found ? 0 : (first == allele ? 1 : 0) + (second == allele ? 1 : 0);
                yield return new Observation.DnaTest(
                    claim.Locus.Alleles[allele], copies, Probability.From(test.Sensitivity), Probability.From(test.Specificity));
            }
        }
    }

    private static IEnumerable<Allele> Named(ReadAnimal read) => read.Claims
        .SelectMany(c => c.Pairs.SelectMany(p => new[] { p.Value.First, p.Value.Second }).Where(a => a > 0).Distinct().Select(a => c.Locus.Alleles[a]));

    private static Expression[] Forms(GenotypeBelief belief)
    {
        var genotype = belief.MostLikely();
        return belief.Species.Loci
            .Select(l => l.ExpressionOf(genotype.AllelesAt(l).First, genotype.AllelesAt(l).Second))
            .Where(e => e.IsVisible)
            .ToArray();
    }
}

/// <summary>The statements of an animal that could be read.</summary>
/// <param name="Observations">In the terms of genetics.</param>
/// <param name="Statements">The statement each observation comes from.</param>
/// <param name="Problems">Those that cannot be read, in sentences.</param>
internal sealed record ReadStatements(
    IReadOnlyList<Observation> Observations, IReadOnlyList<Statement> Statements, IReadOnlyList<string> Problems);
