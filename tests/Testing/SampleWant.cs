using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Wants;

namespace Clutchwright.Testing;

/// <summary>A want, with its conditions kept in the open so that they can be judged anew.</summary>
public sealed class SampleWant
{
    /// <summary>Makes the want.</summary>
    /// <param name="species">The species.</param>
    /// <param name="alternatives">The alternatives.</param>
    public SampleWant(Species species, IReadOnlyList<Alternative> alternatives)
    {
        Alternatives = alternatives;
        Want = new(alternatives.Select(a => new WantedGenotype(a.Sex, a.Conditions.Select(c => Pairs(species, c)).ToArray())).ToArray());
    }

    /// <summary>Gets the want.</summary>
    public Want Want { get; }

    /// <summary>Gets the alternatives.</summary>
    public IReadOnlyList<Alternative> Alternatives { get; }

    /// <summary>Says whether an animal is wanted.</summary>
    /// <param name="sex">Its sex.</param>
    /// <param name="heterogametic">Whether it has two different sex chromosomes.</param>
    /// <param name="pair">The alleles on its first and second strand at a locus.</param>
    public bool IsMet(Sex sex, bool heterogametic, Func<int, (int First, int Second)> pair) =>
        Alternatives.Any(a => (a.Sex is null || a.Sex == sex) && a.Conditions.All(c =>
        {
            var (first, second) = pair(c.Locus);
            return c.ByStrand
                ? heterogametic && c.Pairs.Contains((first, second))
                : c.Pairs.Contains((first, second)) || c.Pairs.Contains((second, first));
        }));

    /// <inheritdoc/>
    public override string ToString() => "  wanted " + string.Join(" or ", Alternatives.Select(a =>
        $"({a.Sex?.ToString() ?? "either sex"}{string.Concat(a.Conditions.Select(c =>
            $" & locus {c.Locus}{(c.ByStrand ? " by strand" : "")} {string.Join(' ', c.Pairs.Select(p => $"{p.First}/{p.Second}"))}"))})"));

    private static WantedPairs Pairs(Species species, Condition condition) => condition.ByStrand
        ? WantedPairs.ByStrand(species.Loci[condition.Locus], condition.Pairs[0].First, condition.Pairs[0].Second)
        : WantedPairs.Of(species.Loci[condition.Locus], condition.Pairs);

    /// <summary>One alternative.</summary>
    /// <param name="Sex">The sex wanted, or either.</param>
    /// <param name="Conditions">At different loci; all must hold.</param>
    public sealed record Alternative(Sex? Sex, IReadOnlyList<Condition> Conditions);

    /// <summary>A condition at one locus.</summary>
    /// <param name="Locus">The index of the locus in the species.</param>
    /// <param name="ByStrand">Whether the pair is that on X and Y (Z and W), in this order.</param>
    /// <param name="Pairs">Pairs of allele indices; one only if by strand.</param>
    public sealed record Condition(int Locus, bool ByStrand, IReadOnlyList<(int First, int Second)> Pairs);
}
