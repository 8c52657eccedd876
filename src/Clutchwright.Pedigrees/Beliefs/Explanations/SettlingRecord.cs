using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Pedigrees.Beliefs.Explanations;

/// <summary>A record that is missing, and how much it would tell of a claim.</summary>
/// <param name="Kind">What would have to be done.</param>
/// <param name="Animal">The animal it would be done with.</param>
/// <param name="Allele">The allele tested for or shown by the mate; <c>null</c> for a look.</param>
/// <param name="Mates">Of a test pairing the animals of the record that are surely homozygous and of the other sex, related ones among them; may be empty.</param>
/// <param name="Young">Of a test pairing how many young would be looked at.</param>
/// <param name="Bits">The expected drop in the entropy of the claim, in bits, from 0 to 1.</param>
/// <param name="Settles">The chance that it leaves a chance below the lower or above the upper bound.</param>
public sealed record SettlingRecord(
    SettlingKind Kind, string Animal, Allele? Allele, IReadOnlyList<string> Mates, int Young, double Bits, Probability Settles)
{
    /// <summary>Lists what would tell something of a claim.</summary>
    /// <param name="beliefs">The beliefs of the whole record.</param>
    /// <param name="key">The animal.</param>
    /// <param name="claim">What is believed or not of it.</param>
    /// <param name="options">What to reckon with.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <returns>The most telling first; empty where the claim is settled.</returns>
    /// <exception cref="ArgumentException">There is no such animal.</exception>
    /// <remarks>Cost: the part concerned is solved once for each state of the animal. Source: docs/model/explanations.md.</remarks>
    public static IReadOnlyList<SettlingRecord> For(
        PedigreeBeliefs beliefs, string key, GenotypeClaim claim, SettlingOptions options, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(beliefs);
        ArgumentNullException.ThrowIfNull(claim);
        ArgumentNullException.ThrowIfNull(options);
        return new SettlingSearch(beliefs, key, claim, options, cancel).Find();
    }
}

/// <summary>What could be done to learn more.</summary>
public enum SettlingKind
{
    /// <summary>Look at an animal that was not looked at.</summary>
    Look = 1,

    /// <summary>Have the animal's DNA tested.</summary>
    DnaTest = 2,

    /// <summary>Put it to an unrelated animal with two copies, and look at the young.</summary>
    TestPairing = 3,
}

/// <summary>What missing records are weighed with.</summary>
public sealed record SettlingOptions
{
    /// <summary>Gets what holds where nothing else is said.</summary>
    public static SettlingOptions Default { get; } = new();

    /// <summary>Gets how many young of a test pairing would be looked at, from 1 to 20.</summary>
    public int Young { get; init; } = 6;

    /// <summary>Gets the chance that a DNA test says how many copies a carrier has.</summary>
    public Probability Sensitivity { get; init; } = Probability.Certain;

    /// <summary>Gets the chance that a DNA test says "none" of an animal without.</summary>
    public Probability Specificity { get; init; } = Probability.Certain;

    /// <summary>Gets the chance below which, and above whose complement, a claim counts as settled.</summary>
    public Probability Bound { get; init; } = Probability.Ratio(1, 100);
}
