using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Proofs.Allelisms;

/// <summary>Do two mutant alleles lie at one locus? The complementation test, with what each egg adds.</summary>
/// <remarks>Two loci are taken as free of each other: two loci close together are told apart from one only by the recessive crosses.
/// Source: complementation [Benzer1957]; docs/references.md. Immutable.</remarks>
public sealed class AllelismTest
{
    /// <summary>The most young taken for one pair.</summary>
    public const int MostYoung = 10_000;

    private AllelismTest(Probability prior, IReadOnlyList<AllelismClutch> clutches, Probability misread)
    {
        Prior = prior;
        Clutches = [.. clutches];
        Misread = misread;
        IfOneLocus = clutches.Aggregate(Probability.Certain, (product, c) => product * c.Chance(isOneLocus: true, misread));
        IfTwoLoci = clutches.Aggregate(Probability.Certain, (product, c) => product * c.Chance(isOneLocus: false, misread));
        var (one, two) = (prior * IfOneLocus, prior.Complement * IfTwoLoci);
        IsContradiction = one.IsImpossible && two.IsImpossible;
        Posterior = IsContradiction ? prior : one.Given(one + two);
    }

    /// <summary>Gets the chance of one locus before counting.</summary>
    public Probability Prior { get; }

    /// <summary>Gets the pairs with their young.</summary>
    public IReadOnlyList<AllelismClutch> Clutches { get; }

    /// <summary>Gets the chance that an egg is read as the other kind.</summary>
    public Probability Misread { get; }

    /// <summary>Gets the chance of exactly these young if the alleles lie at one locus.</summary>
    public Probability IfOneLocus { get; }

    /// <summary>Gets the chance of exactly these young if they lie at two free loci.</summary>
    public Probability IfTwoLoci { get; }

    /// <summary>Gets the chance of one locus, the young counted; the prior where <see cref="IsContradiction"/>.</summary>
    public Probability Posterior { get; }

    /// <summary>Gets whether neither one locus nor two can give these young from these parents.</summary>
    public bool IsContradiction { get; }

    /// <summary>Gets the Bayes factor for one locus against two; infinite or 0 where one of them cannot give the young; <c>null</c> where neither can.</summary>
    public double? BayesFactor => (IfOneLocus.IsImpossible, IfTwoLoci.IsImpossible) switch
    {
        (true, true) => null,
        (true, false) => 0.0,
        (false, true) => double.PositiveInfinity,
        _ => IfOneLocus.Exact is { } one && IfTwoLoci.Exact is { } two ? (one / two).ToDouble() : IfOneLocus.Value / IfTwoLoci.Value,
    };

    /// <summary>Counts the young.</summary>
    /// <param name="prior">The chance of one locus before counting.</param>
    /// <param name="clutches">The pairs, each once.</param>
    /// <param name="misread">The chance that an egg is read as the other kind, at most 1/2; 0: no misreading, and one telling egg settles it.</param>
    /// <exception cref="ArgumentException">A count is negative or above <see cref="MostYoung"/>, or the misreading passes 1/2.</exception>
    public static AllelismTest Of(Probability prior, IReadOnlyList<AllelismClutch> clutches, Probability misread)
    {
        if (clutches.Any(c => c.Telling is < 0 or > MostYoung || c.Others is < 0 or > MostYoung) || misread > Probability.Half)
        {
            throw new ArgumentException($"Counts lie in 0 to {MostYoung}, misreading in 0 to 1/2.", nameof(clutches));
        }

        return new(prior, clutches, misread);
    }

    /// <summary>What one egg multiplies the odds of one locus by.</summary>
    /// <param name="pairing">The cross, its parents certain.</param>
    /// <param name="isTelling">Which kind of egg.</param>
    /// <param name="misread">The chance of misreading.</param>
    /// <returns>The likelihood ratio; infinite or 0 where one hypothesis cannot give the egg.</returns>
    public static double PerEgg(AllelismPairing pairing, bool isTelling, Probability misread)
    {
        var clutch = new AllelismClutch(pairing, isTelling ? 1 : 0, isTelling ? 0 : 1);
        return clutch.Chance(isOneLocus: true, misread).Value / clutch.Chance(isOneLocus: false, misread).Value;
    }

    /// <summary>The fewest eggs in which a telling one hatches with a confidence, if the truth is the hypothesis that can give it.</summary>
    /// <param name="pairing">The cross, its parents certain.</param>
    /// <param name="confidence">Inside (0, 1).</param>
    /// <returns>1 or more: visual by visual takes 1, by het as a het proof does.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The confidence is not inside (0, 1).</exception>
    public static int EggsFor(AllelismPairing pairing, Probability confidence)
    {
        var telling = AllelismClutch.TellingPerEgg(pairing, pairing != AllelismPairing.BothByNeither);
        return Genetics.Clutches.SharedChance.Certain(telling).EggsFor(confidence)!.Value;
    }
}
