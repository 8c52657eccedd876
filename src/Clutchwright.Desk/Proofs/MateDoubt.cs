using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Proofs.TestPairings;

namespace Clutchwright.Desk.Proofs;

/// <summary>What a mate of the stock may be for a het proof: the doubts that it shares with the animal, as its kin, are taken together.</summary>
/// <param name="Mate">The mate.</param>
/// <param name="Allele">The recessive allele.</param>
/// <param name="Alone">What the mate may be, whatever the animal is.</param>
/// <param name="IfHet">The same if the animal has one copy.</param>
internal sealed record MateDoubt(StockAnimal Mate, Allele Allele, Copies Alone, Copies IfHet)
{
    /// <summary>Reckons it.</summary>
    /// <param name="stock">The stock.</param>
    /// <param name="animal">The animal whose het is in doubt; it has two copies in no case.</param>
    /// <param name="mate">The mate.</param>
    /// <param name="allele">The recessive allele; on no sex chromosome.</param>
    /// <param name="cancel">Stops the work.</param>
    public static MateDoubt Of(StockState stock, StockAnimal animal, StockAnimal mate, Allele allele, CancellationToken cancel)
    {
        var alone = Copies.Of(mate.Belief.Genotype, allele);
        var group = allele.Locus.Group;
        if (alone.IsKnown || !stock.Beliefs.AreTied(animal.Key, mate.Key, [group]))
        {
            return new(mate, allele, alone, alone);
        }

        var (het, together) = (Probability.Impossible, default(Copies));
        foreach (var ((first, second), weight) in stock.Beliefs.Together(group, animal.Key, mate.Key, cancel))
        {
            if (Copies.In(first, allele) == 1)
            {
                het += weight;
                together = together.With(Copies.In(second, allele), weight);
            }
        }

        return new(mate, allele, alone, het.IsImpossible ? alone : new(together.Two.Given(het), together.One.Given(het)));
    }

    /// <summary>Gets whether the mate can tell anything.</summary>
    public bool MayTell => !IfHet.Two.IsImpossible || !IfHet.One.IsImpossible;

    /// <summary>The pairing with the mate: if the animal is not het, no egg is visual, whatever the mate is.</summary>
    public TestPairing Pairing() => TestPairing.OfHet(Mate.Animal.Tag, IfHet.Two, IfHet.One);

    /// <summary>What the mate is, in words.</summary>
    public string Words()
    {
        var (alone, ifHet) = (Words(Alone), Words(IfHet));
        return alone == ifHet ? alone : $"{alone}; if the animal is het, {ifHet}";
    }

    private string Words(Copies copies) => (copies.Two, copies.One) switch
    {
        ({ IsCertain: true }, _) => Allele.Name,
        (_, { IsCertain: true }) => $"het {Allele.Name}",
        ({ IsImpossible: true }, _) => $"{OddsText.Percent(copies.One)} het {Allele.Name}",
        _ => $"{OddsText.Percent(copies.Two)} {Allele.Name}, {OddsText.Percent(copies.One)} het",
    };
}

/// <summary>How many copies of just one allele an animal may have.</summary>
/// <param name="Two">The chance of two.</param>
/// <param name="One">The chance of one.</param>
internal readonly record struct Copies(Probability Two, Probability One)
{
    /// <summary>Gets whether there is no doubt.</summary>
    public bool IsKnown => Two.IsCertain || One.IsCertain || (Two.IsImpossible && One.IsImpossible);

    /// <summary>The chances of a belief.</summary>
    public static Copies Of(GenotypeBelief belief, Allele allele)
    {
        var copies = default(Copies);
        foreach (var (diplotype, weight) in belief[allele.Locus.Group])
        {
            copies = copies.With(In(diplotype, allele), weight);
        }

        return copies;
    }

    /// <summary>The copies in a diplotype.</summary>
    public static int In(Diplotype diplotype, Allele allele)
    {
        var (first, second) = allele.Locus.PairOf(diplotype);
        return (first == allele.Index ? 1 : 0) + (second == allele.Index ? 1 : 0);
    }

    /// <summary>The chances with those of one more case.</summary>
    public Copies With(int copies, Probability weight) => copies switch
    {
        2 => this with { Two = Two + weight },
        1 => this with { One = One + weight },
        _ => this,
    };
}
