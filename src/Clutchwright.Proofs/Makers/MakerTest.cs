using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Proofs.Distributions;
using Clutchwright.Proofs.Linkages;

namespace Clutchwright.Proofs.Makers;

/// <summary>Does an allele ride on the sex chromosomes, how tightly, and is this carrier a male maker or a female maker?</summary>
/// <remarks>Every young of the carrier is one meiosis between the locus and the sex-determining region. Assumes that the mate does not carry the
/// allele, that all young were sexed and read rightly, and that both classes live alike. Source: docs/references.md [Morton1955];
/// in this species [Mallery2016]. Immutable.</remarks>
public sealed class MakerTest
{
    private MakerTest(IReadOnlyList<(MakerCounts Counts, MakerPhase Phase)> carriers, SexSystem system, Probability? confidence)
    {
        Linkage = LinkageTest.Of([.. carriers.Select(c => Family(c.Counts, c.Phase, system))], confidence);
        OnDiffering = [.. carriers.Select(c => c.Phase switch
        {
            MakerPhase.OnDiffering => 1.0,
            MakerPhase.OnShared => 0.0,
            _ => Differing(c.Counts, system),
        })];
    }

    /// <summary>Gets the test of linkage to the sex-determining region: its LOD is against r = 1/2, a locus that does not ride with sex.</summary>
    public LinkageTest Linkage { get; }

    /// <summary>Gets, for each carrier, the chance that it holds the allele on the Y (or W): for a male, that he is a male maker.</summary>
    /// <remarks>Where the phase is not told: from its own young, every recombination fraction from 0 to 0.5 held equally likely before.</remarks>
    public IReadOnlyList<double> OnDiffering { get; }

    /// <summary>Tests carriers of one allele.</summary>
    /// <param name="carriers">At least one, each with its young and what is known of its phase.</param>
    /// <param name="system">Which sex has two different sex chromosomes; the carriers are of that sex.</param>
    /// <param name="confidence">Inside (0, 1), for the intervals; <c>null</c> for 0.95.</param>
    /// <exception cref="ArgumentException">There is no carrier, or a count is negative.</exception>
    public static MakerTest Of(
        IReadOnlyList<(MakerCounts Counts, MakerPhase Phase)> carriers, SexSystem system, Probability? confidence = null)
    {
        if (carriers.Any(c => Math.Min(Math.Min(c.Counts.MalesWith, c.Counts.MalesWithout), Math.Min(c.Counts.FemalesWith, c.Counts.FemalesWithout)) < 0))
        {
            throw new ArgumentException("Counts are 0 or more.", nameof(carriers));
        }

        return new(carriers, system, confidence);
    }

    private static LinkageFamily Family(MakerCounts counts, MakerPhase phase, SexSystem system)
    {
        var recombinants = counts.RecombinantsOnDiffering(system);
        return phase == MakerPhase.OnShared
            ? new(counts.Number - recombinants, counts.Number, LinkagePhase.Known)
            : new(recombinants, counts.Number, phase == MakerPhase.Unknown ? LinkagePhase.Unknown : LinkagePhase.Known);
    }

    // The half of the beta function in which the young counted as recombinants on the Y are the rarer kind.
    private static double Differing(MakerCounts counts, SexSystem system)
    {
        var k = counts.RecombinantsOnDiffering(system);
        return BinomialDistribution.IncompleteBeta(k + 1.0, counts.Number - k + 1.0, 0.5, 0.5);
    }
}
