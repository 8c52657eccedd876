using Clutchwright.Reference.Tests.Cases;

namespace Clutchwright.Reference.Tests.Truth;

/// <summary>The answers by the definition: every assignment of ordered haplotypes to every animal of a small family is written out and weighed.</summary>
/// <remarks>A state is the haplotype from the sire and the one from the dam. A haplotype of two loci is allele of the first + alleles of the first
/// locus × allele of the second. The haplotype on the Y is 0, wild at every locus. Cost: grows as states to the power of animals, less what cannot be.</remarks>
internal sealed class Enumeration
{
    private readonly GeneticCase _case;
    private readonly double _recombination;
    private readonly int _haplotypes;
    private readonly double[][,] _weights;
    private readonly (int FromSire, int FromDam)[] _now;

    private Enumeration(GeneticCase genetic, double recombination)
    {
        _case = genetic;
        _recombination = recombination;
        _haplotypes = genetic.Loci.Aggregate(1, (n, l) => n * l.AlleleCount);
        _weights = Enumerable.Range(0, genetic.Family.Count).Select(_ => new double[_haplotypes, _haplotypes]).ToArray();
        _now = new (int, int)[genetic.Family.Count];
        Likelihood = Visit(0, 1.0);
    }

    /// <summary>Gets the chance of everything that was seen.</summary>
    public double Likelihood { get; }

    /// <summary>Writes a case out.</summary>
    /// <param name="genetic">The case; a small one.</param>
    /// <param name="recombination">The recombination fraction in place of the case's own.</param>
    public static Enumeration Of(GeneticCase genetic, double? recombination = null) => new(genetic, recombination ?? genetic.Recombination);

    /// <summary>How likely an animal has each number of copies of an allele, given everything that was seen.</summary>
    public AlleleCopies Copies(int animal, int locus, int allele)
    {
        double two = 0, one = 0, none = 0;
        for (var a = 0; a < _haplotypes; a++)
        {
            for (var b = 0; b < _haplotypes; b++)
            {
                var share = _weights[animal][a, b] / Likelihood;

                // Of a hemizygous animal the haplotype from the dam counts, the one on its X.
                var copies = (AlleleAt(b, locus) == allele ? 1 : 0)
                    + (AlleleAt(a, locus) == allele && !_case.IsHemizygous(animal) ? 1 : 0);
                _ = copies == 2 ? two += share : copies == 1 ? one += share : none += share;
            }
        }

        return new(two, one, none);
    }

    // The sum over all states of this animal and those after it, times what was chosen before.
    private double Visit(int animal, double before)
    {
        if (animal == _now.Length)
        {
            return before;
        }

        var sum = 0.0;
        for (var fromSire = 0; fromSire < _haplotypes; fromSire++)
        {
            for (var fromDam = 0; fromDam < _haplotypes; fromDam++)
            {
                var chance = Received(animal, fromSire, isFromSire: true) * Received(animal, fromDam, isFromSire: false);
                for (var locus = 0; locus < _case.Loci.Count && chance > 0; locus++)
                {
                    chance *= _case.SeenChance(locus, animal, AlleleAt(fromSire, locus), AlleleAt(fromDam, locus));
                }

                if (chance > 0)
                {
                    _now[animal] = (fromSire, fromDam);
                    var share = Visit(animal + 1, before * chance);
                    _weights[animal][fromSire, fromDam] += share;
                    sum += share;
                }
            }
        }

        return sum;
    }

    private double Received(int animal, int haplotype, bool isFromSire)
    {
        if (isFromSire && _case.IsHemizygous(animal))
        {
            return haplotype == 0 ? 1 : 0;
        }

        var parent = isFromSire ? _case.Family.Sires[animal] : _case.Family.Dams[animal];
        if (parent < 0)
        {
            return Enumerable.Range(0, _case.Loci.Count).Aggregate(1.0, (p, l) => p * _case.Loci[l].Frequencies[AlleleAt(haplotype, l)]);
        }

        var (first, second) = _now[parent];
        return _case.IsHemizygous(parent) ? One(second == haplotype) : Gamete(first, second, haplotype);
    }

    private double Gamete(int first, int second, int haplotype)
    {
        if (_case.Loci.Count == 1)
        {
            return 0.5 * (One(first == haplotype) + One(second == haplotype));
        }

        var sum = 0.0;
        foreach (var (one, other) in new[] { (first, second), (second, first) })
        {
            var starts = AlleleAt(one, 0) == AlleleAt(haplotype, 0);
            sum += !starts ? 0 : 0.5 * (
                (1 - _recombination) * One(AlleleAt(one, 1) == AlleleAt(haplotype, 1))
                + _recombination * One(AlleleAt(other, 1) == AlleleAt(haplotype, 1)));
        }

        return sum;
    }

    private int AlleleAt(int haplotype, int locus) =>
        locus == 0 ? haplotype % _case.Loci[0].AlleleCount : haplotype / _case.Loci[0].AlleleCount;

    private static double One(bool holds) => holds ? 1 : 0;
}
