using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;

namespace Clutchwright.Pedigrees.Beliefs;

/// <summary>What a founder may be at one linkage group before its relatives are heard.</summary>
/// <remarks>
/// Where alleles have a frequency, random union of gametes in linkage equilibrium. Where they have none, what was told of the founder is
/// the start, or else the fewest copies that make what was seen; an allele nobody spoke of is let in only where the records cannot be
/// true without it, at a frequency so small that the answer is the limit at frequency 0.
/// </remarks>
internal sealed class FounderPrior
{
    /// <summary>The frequency of an allele that has none, where it must be let in.</summary>
    public const double Tiny = 1.0 / (1L << 50);

    private readonly GroupModel _model;
    private readonly StateSpace _space;
    private readonly RecordWeights _weights;
    private readonly Sex _heterogametic;
    private readonly double[][] _frequencies;

    /// <summary>Reads the frequencies at the loci of a group.</summary>
    public FounderPrior(Species species, GroupModel model, BeliefSettings settings)
    {
        _model = model;
        _space = model.Space;
        _weights = model.Weights;
        _heterogametic = species.SexSystem.Heterogametic();
        _frequencies = [.. _space.Group.Loci.Select(l => l.Alleles.Select(a => settings.Frequencies.GetValueOrDefault(a)).ToArray())];
        HasFrequencies = Array.Exists(_frequencies, l => Array.Exists(l, f => f > 0.0));
    }

    /// <summary>Gets whether some allele here has a frequency.</summary>
    public bool HasFrequencies { get; }

    /// <summary>The weights by state of a founder drawn at random from those that lived, given its sex.</summary>
    /// <param name="sex">The sex; <c>null</c>: either, equally likely.</param>
    /// <param name="let">The indices of alleles to let in at <see cref="Tiny"/> where they have no frequency, by locus; <c>null</c>: none.</param>
    /// <param name="leastSurvival">The least chance to live that is reckoned with: where records cannot be true otherwise, founders are what hardly lives.</param>
    public double[] AtRandom(Sex? sex, Func<int, int, bool>? let, double leastSurvival = 0.0)
    {
        var haplotypes = new double[_space.Haplotypes.Length];
        var place = new Dictionary<int, int>();
        for (var h = 0; h < haplotypes.Length; h++)
        {
            place.Add(_space.Haplotypes[h], h);
            haplotypes[h] = 1.0;
            for (var locus = 0; locus < _frequencies.Length; locus++)
            {
                haplotypes[h] *= FrequencyOf(locus, _space.Group.AlleleAt(_space.Haplotypes[h], locus), let);
            }
        }

        var result = new double[_space.Count];
        for (var s = 0; s < result.Length; s++)
        {
            var (first, second) = (place[_space.Diplotypes[s].First], place[_space.Diplotypes[s].Second]);
            var ordered = _space.Sexes[s] == _heterogametic;
            result[s] = haplotypes[first] * haplotypes[second] * (ordered || first == second ? 1.0 : 2.0) * SexWeight(_space.Sexes[s], sex);
        }

        return _model.IsSurvivalEven ? result : Scaled(result, [.. _model.SurvivalOf(sex).Select(v => Math.Max(v, leastSurvival))]);
    }

    /// <summary>The weights by state that words of a founder start with.</summary>
    public double[] FromWords(GenotypeBelief reading, Sex? sex)
    {
        var result = new double[_space.Count];
        foreach (var (diplotype, weight) in reading[_space.Group])
        {
            var states = _weights.StatesOf(diplotype, reading.IsHeterogametic).Where(s => SexWeight(_space.Sexes[s], sex) > 0.0).ToArray();
            foreach (var group in states.GroupBy(s => _space.Sexes[s]))
            {
                // Read for the own sex the order of the haplotypes is known; read for the other either order is as likely.
                var own = group.Where(s => group.Key is null || (group.Key == _heterogametic) == reading.IsHeterogametic).Where(s => _space.Diplotypes[s] == diplotype).ToArray();
                var meant = own.Length > 0 ? own : [.. group];
                foreach (var state in meant)
                {
                    result[state] += weight.Value * SexWeight(group.Key, sex) / meant.Length;
                }
            }
        }

        return result;
    }

    /// <summary>The weights by state after a look, where the alleles it speaks of have no frequency: the fewest copies that make it.</summary>
    /// <returns><c>null</c> where nothing needs to be let in: the look then weighs like any other record.</returns>
    public double[]? FromLook(Observation.Seen seen, Sex? sex)
    {
        var spoken = Spoken(seen.Reading);
        var match = _weights.OfTrueLook(seen);
        var survival = _model.SurvivalOf(sex);
        var result = new double[_space.Count];
        var fewest = int.MaxValue;
        for (var s = 0; s < result.Length; s++)
        {
            var weight = match[s] * survival[s] * SexWeight(_space.Sexes[s], sex);
            if (weight == 0.0 || Rarity(_space.Diplotypes[s], spoken, out var common) is not { } copies || copies > fewest)
            {
                continue;
            }

            if (copies < fewest)
            {
                fewest = copies;
                Array.Clear(result);
            }

            var ordered = _space.Sexes[s] == _heterogametic;
            result[s] = weight * common * (ordered || _space.Diplotypes[s].First == _space.Diplotypes[s].Second ? 1.0 : 2.0);
        }

        if (fewest is 0 or int.MaxValue)
        {
            return null;
        }

        return Scaled(result, null);
    }

    /// <summary>The weights by state before a DNA test of a founder of which nothing else is known: having what it found and having none of it
    /// equally likely, other loci of the group at random.</summary>
    /// <returns><c>null</c> where the allele has a frequency or was not found.</returns>
    public double[]? BeforeTest(Observation.DnaTest test, Sex? sex)
    {
        var tested = test.Allele.Locus.IndexInGroup;
        if (test.Copies == 0 || _frequencies[tested][test.Allele.Index] > 0.0)
        {
            return null;
        }

        var result = new double[_space.Count];
        for (var s = 0; s < result.Length; s++)
        {
            var (first, second) = _space.Diplotypes[s];
            var ordered = _space.Sexes[s] == _heterogametic;
            result[s] = (Before(first, second) + (ordered || first == second ? 0.0 : Before(second, first))) * SexWeight(_space.Sexes[s], sex);
        }

        return result;

        double Before(int first, int second)
        {
            var (a, b) = (_space.Group.AlleleAt(first, tested), _space.Group.AlleleAt(second, tested));
            var found = (a == test.Allele.Index ? 1 : 0) + (b == test.Allele.Index ? 1 : 0);
            var weight = a == 0 && b == 0 ? 0.5
                : found != test.Copies || (found == 1 && a != 0 && b != 0) ? 0.0
                : found == 1 ? 0.25 : 0.5;
            for (var locus = 0; locus < _frequencies.Length && weight > 0.0; locus++)
            {
                weight *= locus == tested ? 1.0
                    : FrequencyOf(locus, _space.Group.AlleleAt(first, locus), null) * FrequencyOf(locus, _space.Group.AlleleAt(second, locus), null);
            }

            return weight;
        }
    }

    /// <summary>Which alleles words speak of, by locus of the group and index.</summary>
    public Func<int, int, bool> Spoken(GenotypeBelief reading)
    {
        var group = _space.Group;
        var spoken = reading[group]
            .SelectMany(w => new[] { w.Value.First, w.Value.Second })
            .SelectMany(h => group.Loci.Select((_, i) => (i, group.AlleleAt(h, i))))
            .ToHashSet();
        return (locus, allele) => spoken.Contains((locus, allele));
    }

    /// <summary>Weights times chances, scaled to a sum of 1 where something is left.</summary>
    internal static double[] Scaled(double[] weights, double[]? chances)
    {
        var total = 0.0;
        for (var s = 0; s < weights.Length; s++)
        {
            weights[s] *= chances is null ? 1.0 : chances[s];
            total += weights[s];
        }

        for (var s = 0; s < weights.Length && total > 0.0; s++)
        {
            weights[s] /= total;
        }

        return weights;
    }

    private static double SexWeight(Sex? own, Sex? sex) => own is null ? 1.0 : sex is null ? 0.5 : own == sex ? 1.0 : 0.0;

    private double FrequencyOf(int locus, int allele, Func<int, int, bool>? let)
    {
        if (allele == 0)
        {
            var mutant = 0.0;
            foreach (var other in _space.Alleles[locus])
            {
                mutant += other == 0 ? 0.0 : FrequencyOf(locus, other, let);
            }

            return Math.Max(0.0, 1.0 - mutant);
        }

        var own = _frequencies[locus][allele];
        return own > 0.0 ? own : let is not null && let(locus, allele) ? Tiny : 0.0;
    }

    // How many alleles without a frequency a diplotype has; null: one that was not spoken of.
    private int? Rarity(Diplotype diplotype, Func<int, int, bool> spoken, out double common)
    {
        common = 1.0;
        var copies = 0;
        for (var locus = 0; locus < _frequencies.Length; locus++)
        {
            foreach (var haplotype in new[] { diplotype.First, diplotype.Second })
            {
                var allele = _space.Group.AlleleAt(haplotype, locus);
                var frequency = FrequencyOf(locus, allele, null);
                if (frequency > 0.0)
                {
                    common *= frequency;
                }
                else if (spoken(locus, allele))
                {
                    copies++;
                }
                else
                {
                    return null;
                }
            }
        }

        return copies;
    }
}
