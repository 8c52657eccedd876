namespace Clutchwright.Planning.Schemes;

/// <summary>A bound on what is still to pay for a homozygous target: wanted alleles that no haplotype has side by side must be brought together.</summary>
/// <remarks>A crossing that first joins two neighbouring wanted alleles needs a crossing-over in their very interval, from a parent heterozygous at
/// both, so it has at most half the chance of recombination; one that first joins several, half their product. Where that product needs as
/// many plants as the single ones together, which is tried for every set, the plants for all unjoined
/// neighbours add up. The last crossing has a chance of 1/4 at most and adds its own. Derived from the population bound of
/// docs/references.md [CanzarElKebir2011].</remarks>
internal sealed class JunctionBound
{
    private readonly HaplotypePair _target;
    private readonly int[] _plants;
    private readonly int _last;

    public JunctionBound(SchemeProblem problem)
    {
        _target = problem.Target;
        var junctions = problem.Loci.Count - 1;
        _plants = new int[1 << junctions];
        if (!problem.Target.IsHomozygous)
        {
            return;
        }

        var chance = new double[_plants.Length];
        chance[0] = 0.5;
        var one = problem.Target.Low;
        _last = Dear(0.25);
        for (var set = 1; set < _plants.Length; set++)
        {
            var first = int.TrailingZeroCount(set);
            var rest = set & (set - 1);
            var both = 3 << first;
            var r = 2.0 * problem.Loci.GameteChance(new(one & both, ~one & both), (one & (1 << first)) | (~one & (2 << first)));
            chance[set] = chance[rest] * r;
            var alone = rest == 0 ? Dear(chance[set]) : _plants[1 << first];
            _plants[set] = _plants[rest] + alone;
            if (_plants[set] > Dear(chance[set]) || _plants[set] + _last > Dear(chance[set] * chance[set]))
            {
                Array.Clear(_plants);
                _last = 0;
                return;
            }
        }

        int Dear(double p) => p <= 0.0 ? SchemeCosts.Never : problem.Offspring(p);
    }

    /// <summary>The neighbours that a genotype has joined, a bit each.</summary>
    public int JoinedBy(HaplotypePair pair)
    {
        var (low, high) = (~(pair.Low ^ _target.Low), ~(pair.High ^ _target.Low));
        return ((low & (low >> 1)) | (high & (high >> 1))) & (_plants.Length - 1);
    }

    /// <summary>The plants still to raise where these neighbours are joined and the target is not made yet.</summary>
    public int Of(int joined) => _plants[~joined & (_plants.Length - 1)] + _last;
}
