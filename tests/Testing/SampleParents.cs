using System.Text;
using Clutchwright.Genetics.Crosses;
using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Testing;

/// <summary>A sire and a dam, with every case of what the two may be written out.</summary>
public sealed class SampleParents
{
    private SampleParents(Mating mating, IReadOnlyList<Weighted<(Genotype Sire, Genotype Dam)>> cases)
    {
        Mating = mating;
        Cases = cases;
    }

    /// <summary>Gets the mating.</summary>
    public Mating Mating { get; }

    /// <summary>Gets every case; weights sum to 1. Equal cases may stand more than once.</summary>
    public IReadOnlyList<Weighted<(Genotype Sire, Genotype Dam)>> Cases { get; }

    /// <summary>Two parents with independent doubts.</summary>
    public static SampleParents Of(GenotypeBelief sire, GenotypeBelief dam) => new(
        Mating.Of(sire, dam),
        CasesOf(sire)
            .SelectMany(_ => CasesOf(dam), (s, d) => new Weighted<(Genotype, Genotype)>((s.Value, d.Value), s.Weight * d.Weight))
            .ToArray());

    /// <summary>Two parents whose doubts belong together.</summary>
    public static SampleParents Jointly(IReadOnlyList<Weighted<(Genotype Sire, Genotype Dam)>> cases) =>
        new(Mating.Jointly(cases), cases);

    /// <summary>Every genotype a belief allows.</summary>
    public static IReadOnlyList<Weighted<Genotype>> CasesOf(GenotypeBelief belief)
    {
        IReadOnlyList<Weighted<Genotype>> cases = [new(Genotype.Wild(belief.Species, belief.Sex), Probability.Certain)];
        foreach (var group in belief.Species.Groups)
        {
            cases = cases
                .SelectMany(_ => belief[group], (c, d) => new Weighted<Genotype>(c.Value.With(group, d.Value), c.Weight * d.Weight))
                .ToArray();
        }

        return cases;
    }

    /// <summary>The alleles on an animal's first and second strand, by the species' loci: X or Z is the first where the two differ.</summary>
    public static (int[] First, int[] Second) Strands(Genotype genotype)
    {
        var loci = genotype.Species.Loci;
        var (first, second) = (new int[loci.Count], new int[loci.Count]);
        foreach (var locus in loci)
        {
            var diplotype = genotype[locus.Group];
            first[locus.Index] = locus.Group.AlleleAt(diplotype.First, locus.IndexInGroup);
            second[locus.Index] = locus.Group.AlleleAt(diplotype.Second, locus.IndexInGroup);
        }

        return (first, second);
    }

    /// <inheritdoc/>
    public override string ToString()
    {
        var text = new StringBuilder();
        foreach (var (value, weight) in Cases)
        {
            text.AppendLine($"  {weight}: {value.Sire}  x  {value.Dam}");
        }

        return text.ToString();
    }
}
