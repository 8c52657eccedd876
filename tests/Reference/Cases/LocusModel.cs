namespace Clutchwright.Reference.Tests.Cases;

/// <summary>One locus: how common its alleles are and what each pair of them looks like. Allele 0 is the wild one.</summary>
internal sealed class LocusModel
{
    private readonly double[,] _chances;

    /// <summary>Makes a locus.</summary>
    /// <param name="frequencies">The frequency of each allele among founders; they sum to 1.</param>
    /// <param name="lookOf">The look that a pair of alleles (first ≤ second) has, from 0.</param>
    /// <param name="misread">The chance that the look recorded is another one, each of the others as likely.</param>
    public LocusModel(IReadOnlyList<double> frequencies, Func<int, int, int> lookOf, double misread = 0)
    {
        Frequencies = frequencies;
        Misread = misread;
        LookOf = (a, b) => lookOf(Math.Min(a, b), Math.Max(a, b));
        LookCount = GenotypesOf(frequencies.Count).Max(g => LookOf(g.First, g.Second)) + 1;
        _chances = new double[LookCount, LookCount];
        for (var shown = 0; shown < LookCount; shown++)
        {
            for (var read = 0; read < LookCount; read++)
            {
                _chances[shown, read] = shown == read ? 1 - misread : misread / (LookCount - 1);
            }
        }
    }

    /// <summary>Gets the frequency of each allele among founders.</summary>
    public IReadOnlyList<double> Frequencies { get; }

    /// <summary>Gets how many alleles there are.</summary>
    public int AlleleCount => Frequencies.Count;

    /// <summary>Gets how many looks there are.</summary>
    public int LookCount { get; }

    /// <summary>Gets the chance that a look is read as another one.</summary>
    public double Misread { get; }

    /// <summary>Gets the look that a pair of alleles has, in any order.</summary>
    public Func<int, int, int> LookOf { get; }

    /// <summary>Gets the pairs of alleles, the first not above the second, ordered by the first.</summary>
    public IEnumerable<(int First, int Second)> Genotypes => GenotypesOf(AlleleCount);

    /// <summary>The chance that an animal with two alleles is recorded with a look.</summary>
    public double Chance(int a, int b, int look) => _chances[LookOf(a, b), look];

    private static IEnumerable<(int First, int Second)> GenotypesOf(int alleles) =>
        from first in Enumerable.Range(0, alleles)
        from second in Enumerable.Range(first, alleles - first)
        select (first, second);
}
