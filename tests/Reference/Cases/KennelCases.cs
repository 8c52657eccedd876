using Clutchwright.Testing.Pedigrees;

namespace Clutchwright.Reference.Tests.Cases;

/// <summary>Whole kennels: too many mates and loops for FASTLINK.</summary>
internal static class KennelCases
{
    /// <summary>A breeder's stock over seasons; the wild allele and a mutant are dropped through it, and every hatchling is looked at.</summary>
    /// <param name="seasons">How many seasons.</param>
    /// <param name="females">The most females that breed.</param>
    /// <param name="males">The most males that breed.</param>
    /// <param name="share">The frequency of the mutant among founders.</param>
    /// <param name="seed">The seed of the kennel; the alleles are drawn from the one after it.</param>
    public static GeneticCase Recessive(int seasons, int females, int males, double share, ulong seed)
    {
        var family = Kennels.Seasons(seasons, females, males, seed);
        var locus = new LocusModel([1 - share, share], (a, _) => a);
        var dropped = new GeneDrop(new SplitMix64(seed + 1), family, [locus], false, 0.5, isEnriched: false).Run();
        var seen = dropped[0].Select(pair => (int?)locus.LookOf(pair.FromSire, pair.FromDam)).ToArray();
        return new($"kennel of {family.Count} animals, {seasons} seasons, {females} females, {males} males, seed {seed}", family, [locus], false, 0.5, [seen]);
    }
}
