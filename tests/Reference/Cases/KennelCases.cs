using Clutchwright.Testing.Pedigrees;

namespace Clutchwright.Reference.Tests.Cases;

/// <summary>Whole kennels: too many mates and loops for FASTLINK.</summary>
internal static class KennelCases
{
    /// <summary>A recessive in a breeder's stock over seasons.</summary>
    /// <param name="seasons">How many seasons.</param>
    /// <param name="females">The most females that breed.</param>
    /// <param name="males">The most males that breed.</param>
    /// <param name="share">The frequency of the mutant among founders.</param>
    /// <param name="seed">The seed of the kennel.</param>
    public static GeneticCase Recessive(int seasons, int females, int males, double share, ulong seed) =>
        Of(Kennels.Seasons(seasons, females, males, seed), new([1 - share, share], (a, _) => a), isSexLinked: false, seed);

    /// <summary>A locus in a kennel: its alleles are dropped from the founders, and every animal is looked at.</summary>
    /// <param name="family">The kennel.</param>
    /// <param name="locus">The locus.</param>
    /// <param name="isSexLinked">Whether it lies on the X.</param>
    /// <param name="seed">The alleles are drawn from the seed after this.</param>
    public static GeneticCase Of(SamplePedigree family, LocusModel locus, bool isSexLinked, ulong seed)
    {
        var dropped = new GeneDrop(new SplitMix64(seed + 1), family, [locus], isSexLinked, 0.5, isEnriched: false).Run();
        var seen = dropped[0].Select(pair => (int?)locus.LookOf(pair.FromSire, pair.FromDam)).ToArray();
        return new($"kennel of {family.Count} animals, seed {seed}", family, [locus], isSexLinked, 0.5, [seen]);
    }
}
