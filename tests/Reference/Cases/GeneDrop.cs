using Clutchwright.Genetics.Loci;
using Clutchwright.Testing.Pedigrees;

namespace Clutchwright.Reference.Tests.Cases;

/// <summary>Alleles dropped through a family at random.</summary>
/// <param name="random">The chance.</param>
/// <param name="family">The family.</param>
/// <param name="loci">The loci.</param>
/// <param name="isSexLinked">Whether they lie on the X.</param>
/// <param name="recombination">Between two loci.</param>
/// <param name="isEnriched">Whether half of the founders' alleles are drawn evenly: rare ones are then in the family, which would else have
/// nothing to tell.</param>
internal sealed class GeneDrop(
    SplitMix64 random, SamplePedigree family, IReadOnlyList<LocusModel> loci, bool isSexLinked, double recombination, bool isEnriched)
{
    private readonly (int FromSire, int FromDam)[][] _alleles = loci.Select(_ => new (int, int)[family.Count]).ToArray();

    /// <summary>Drops them and gives, by locus and animal, the alleles from sire and dam; that on a Y is 0.</summary>
    public IReadOnlyList<IReadOnlyList<(int FromSire, int FromDam)>> Run()
    {
        for (var animal = 0; animal < family.Count; animal++)
        {
            var fromSire = isSexLinked && family.Sexes[animal] == Sex.Male ? new int[loci.Count] : Receive(family.Sires[animal]);
            var fromDam = Receive(family.Dams[animal]);
            for (var locus = 0; locus < loci.Count; locus++)
            {
                _alleles[locus][animal] = (fromSire[locus], fromDam[locus]);
            }
        }

        return _alleles;
    }

    private int[] Receive(int parent)
    {
        if (parent < 0)
        {
            return [.. loci.Select(Founding)];
        }

        // An X of a male goes on whole.
        var isWhole = isSexLinked && family.Sexes[parent] == Sex.Male;
        var takesSires = !isWhole && random.Below(2) == 0;
        var received = new int[loci.Count];
        for (var locus = 0; locus < loci.Count; locus++)
        {
            takesSires ^= !isWhole && locus > 0 && random.Below(1000) < 1000 * recombination;
            var (fromSire, fromDam) = _alleles[locus][parent];
            received[locus] = takesSires ? fromSire : fromDam;
        }

        return received;
    }

    private int Founding(LocusModel locus)
    {
        if (isEnriched && random.Below(2) == 0)
        {
            return random.Below(locus.AlleleCount);
        }

        var left = random.Below(1_000_000) / 1_000_000.0;
        for (var allele = 0; allele < locus.AlleleCount - 1; allele++)
        {
            left -= locus.Frequencies[allele];
            if (left < 0)
            {
                return allele;
            }
        }

        return locus.AlleleCount - 1;
    }
}
