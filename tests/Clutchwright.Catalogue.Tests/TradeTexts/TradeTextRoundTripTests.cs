using Clutchwright.Catalogue.TradeTexts;
using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;
using CsCheck;
using Xunit;

namespace Clutchwright.Catalogue.Tests.TradeTexts;

public sealed class TradeTextRoundTripTests
{
    [Fact]
    public void Read_WhatWasWritten_GivesTheSameGenotype() =>
        Gen.Int[0, int.MaxValue].Sample(
            number =>
            {
                var random = new Random(number);
                var species = RandomSpecies.Make(random);
                var trade = TradeText.For(species);
                var genotype = RandomSpecies.Genotype(random, species);

                var text = trade.Write(genotype);
                var belief = trade.Read(text) is { IsRead: true, Value: var read } ? read.ToBelief(genotype.Sex).Value : null;

                return belief is { IsCertain: true } && belief.MostLikely().Equals(genotype);
            },
            iter: 20_000,
            print: Describe);

    [Fact]
    public void Read_GeneticNotation_GivesTheSameGenotype() =>
        Gen.Int[0, int.MaxValue].Sample(
            number =>
            {
                var random = new Random(number);
                var species = RandomSpecies.Make(random, plainNames: true);
                var trade = TradeText.For(species);
                var genotype = RandomSpecies.Genotype(random, species);

                var text = GeneticNotation.Write(genotype);
                var belief = trade.Read(text) is { IsRead: true, Value: var read } ? read.ToBelief(genotype.Sex).Value : null;

                return belief is { IsCertain: true } && belief.MostLikely().Equals(genotype);
            },
            iter: 5_000,
            print: Describe);

    [Fact]
    public void Read_WrittenBelief_GivesTheSameBeliefUpToRounding() =>
        Gen.Int[0, int.MaxValue].Sample(
            number =>
            {
                var random = new Random(number);
                var species = RandomSpecies.Make(random);
                var trade = TradeText.For(species);
                var belief = RandomSpecies.Belief(random, species);

                var outcome = trade.Read(trade.Write(belief));
                var read = outcome.IsRead ? outcome.Value.ToBelief(belief.Sex).Value : null;

                return read is not null && species.Groups.All(g => belief[g].All(w =>
                    Math.Abs(w.Weight.Value - read[g].Where(r => r.Value == w.Value).Sum(r => r.Weight.Value)) < 0.02));
            },
            iter: 5_000,
            print: n =>
            {
                var random = new Random(n);
                var species = RandomSpecies.Make(random);
                return TradeText.For(species).Write(RandomSpecies.Belief(random, species));
            });

    private static string Describe(int number)
    {
        var random = new Random(number);
        var species = RandomSpecies.Make(random);
        var genotype = RandomSpecies.Genotype(random, species);
        return $"{genotype} of {species.SexSystem} written {TradeText.For(species).Write(genotype)}";
    }
}

/// <summary>Species, genotypes and beliefs that no person would think of.</summary>
internal static class RandomSpecies
{
    // Few words, so that names run together: Red, Stripe, Red Stripe, Stripe Red.
    private static readonly string[] Words = ["Red", "Stripe", "Ash", "Pale", "Dot"];

    public static Species Make(Random random, bool plainNames = false)
    {
        var names = new HashSet<string>(StringComparer.Ordinal);
        var loci = Enumerable.Range(0, random.Next(1, 7)).Select(i => Locus(random, i, names, plainNames)).ToArray();
        return Species.From(new("random", random.Next(2) == 0 ? SexSystem.XY : SexSystem.ZW, loci));
    }

    public static Genotype Genotype(Random random, Species species)
    {
        var genotype = Genetics.Genotypes.Genotype.Wild(species, random.Next(2) == 0 ? Sex.Male : Sex.Female);
        foreach (var group in species.Groups.Where(_ => random.Next(4) > 0))
        {
            genotype = genotype.With(group, Diplotype(random, group));
        }

        return genotype;
    }

    public static GenotypeBelief Belief(Random random, Species species)
    {
        var belief = GenotypeBelief.Certain(Genotype(random, species));
        foreach (var group in species.Groups.Where(g => g.Loci.Count > 0 && random.Next(2) == 0))
        {
            Probability[] weights = random.Next(4) switch
            {
                0 => [Probability.Ratio(2, 3), Probability.Ratio(1, 3)],
                1 => [Probability.Half, Probability.Half],
                2 => [Probability.Ratio(1, 4), Probability.Ratio(1, 4), Probability.Half],
                _ => [Probability.Ratio(1, 10), Probability.Ratio(9, 10)],
            };
            belief = belief.With(group, weights.Select(w => new Weighted<Diplotype>(Diplotype(random, group), w)));
        }

        return belief;
    }

    private static Diplotype Diplotype(Random random, LinkageGroup group) =>
        new(random.Next(group.HaplotypeCount), random.Next(group.HaplotypeCount));

    private static LocusDefinition Locus(Random random, int number, HashSet<string> names, bool plainNames)
    {
        var alleles = Enumerable.Range(0, random.Next(1, 4))
            .Select(i => new AlleleDefinition($"a{number}-{i}", Name(), (InheritanceMode)random.Next(1, 4)))
            .ToArray();
        Placement placement = random.Next(3) switch
        {
            0 => new Placement.Autosomal(),
            1 => new Placement.Linked($"g{random.Next(2)}", random.Next(50)),
            _ => new Placement.SexLinked(RecombinationFraction.From(random.Next(50) / 100.0), Arm: random.Next(1, 3)),
        };
        var ids = alleles.Select(a => a.Id).Prepend(Allele.WildId).ToArray();
        var pairs = ids.SelectMany((a, i) => ids.Skip(i).Select(b => (a, b))).Skip(1).OrderBy(_ => random.Next()).ToArray();
        var forms = new List<FormDefinition>();
        for (var i = 0; i < random.Next(3) && pairs.Length > 0; i++)
        {
            var take = Math.Min(random.Next(1, 3), pairs.Length);
            forms.Add(new($"f{number}-{i}", Name(), pairs[..take]));
            pairs = pairs[take..];
        }

        return new($"l{number}", $"Locus {number}", placement, alleles) { Forms = forms };

        string Name()
        {
            while (true)
            {
                var name = plainNames
                    ? $"{Words[random.Next(Words.Length)]}{names.Count}"
                    : string.Join(' ', Enumerable.Range(0, random.Next(1, 4)).Select(_ => Words[random.Next(Words.Length)]));
                if (names.Add(Spelling.Key(name)))
                {
                    return name;
                }
            }
        }
    }
}
