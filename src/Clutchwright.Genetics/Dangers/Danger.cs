using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Genetics.Dangers;

/// <summary>A genotype over one or more loci that hurts or kills.</summary>
public sealed class Danger
{
    internal Danger(Species species, DangerDefinition definition)
    {
        Definition = definition;
        var sites = new List<(Locus Locus, bool[,] Pairs)>();
        foreach (var condition in definition.When)
        {
            var (locus, pairs) = Site(species, definition.Id, condition);
            if (sites.Exists(s => s.Locus == locus))
            {
                throw new SpeciesException($"The danger '{definition.Id}' names the locus {locus.Id} twice.");
            }

            sites.Add((locus, pairs));
        }

        if (sites.Count == 0 && definition.Sex is null)
        {
            throw new SpeciesException($"The danger '{definition.Id}' has no condition.");
        }

        Sites = sites;
    }

    /// <summary>Gets the id.</summary>
    public string Id => Definition.Id;

    /// <summary>Gets the sex concerned; <c>null</c>: both.</summary>
    public Sex? Sex => Definition.Sex;

    /// <summary>Gets how grave it is.</summary>
    public Severity Severity => Definition.Severity;

    /// <summary>Gets what it does to survival.</summary>
    public Viability Viability => Definition.Viability;

    /// <summary>Gets one plain sentence.</summary>
    public string Text => Definition.Text;

    /// <summary>Gets on what grounds it stands.</summary>
    public Evidence Evidence => Definition.Evidence;

    /// <summary>Gets the description it was made from.</summary>
    public DangerDefinition Definition { get; }

    /// <summary>Gets for each locus concerned which pairs of allele indices meet the condition.</summary>
    internal IReadOnlyList<(Locus Locus, bool[,] Pairs)> Sites { get; }

    /// <summary>Gets the linkage groups at which it is decided.</summary>
    public IReadOnlyList<LinkageGroup> Groups => [.. Sites.Select(s => s.Locus.Group).Distinct()];

    /// <summary>Whether what the danger asks of one linkage group is met there.</summary>
    /// <param name="group">One of <see cref="Groups"/>; at another nothing is asked.</param>
    /// <param name="diplotype">What the animal is there.</param>
    public bool IsMetAt(LinkageGroup group, Diplotype diplotype) => Sites
        .Where(s => s.Locus.Group == group)
        .All(s => s.Locus.PairOf(diplotype) is var (first, second) && s.Pairs[first, second]);

    /// <summary>Gets the loci whose alleles the danger asks for.</summary>
    public IReadOnlyList<Locus> Loci => [.. Sites.Select(s => s.Locus).Distinct()];

    /// <summary>Whether what the danger asks of one locus is met by a pair of alleles.</summary>
    /// <param name="locus">One of <see cref="Loci"/>; at another nothing is asked.</param>
    /// <param name="first">An allele index.</param>
    /// <param name="second">The other allele index.</param>
    public bool IsMetAt(Locus locus, int first, int second) => Sites.Where(s => s.Locus == locus).All(s => s.Pairs[first, second]);

    /// <summary>The chance that an animal itself has this genotype.</summary>
    /// <param name="belief">What is believed of the animal.</param>
    public Probability ChanceIn(GenotypeBelief belief)
    {
        if (Sex is { } sex && sex != belief.Sex)
        {
            return Probability.Impossible;
        }

        var product = Probability.Certain;
        foreach (var group in Groups)
        {
            product *= belief[group]
                .Where(w => IsMetAt(group, w.Value))
                .Aggregate(Probability.Impossible, (sum, w) => sum + w.Weight);
        }

        return product;
    }

    /// <inheritdoc/>
    public override string ToString() => Id;

    private static (Locus Locus, bool[,] Pairs) Site(Species species, string dangerId, GenotypeCondition condition)
    {
        switch (condition)
        {
            case GenotypeCondition.Carries carries:
            {
                var allele = Find(carries.AlleleId);
                var pairs = Empty(allele.Locus);
                for (var i = 0; i < allele.Locus.Alleles.Count; i++)
                {
                    pairs[i, allele.Index] = pairs[allele.Index, i] = true;
                }

                return (allele.Locus, pairs);
            }

            case GenotypeCondition.IsPair pair:
            {
                var named = Find(string.Equals(pair.FirstId, Allele.WildId, StringComparison.Ordinal) ? pair.SecondId : pair.FirstId);
                var pairs = Empty(named.Locus);
                var (first, second) = (At(named.Locus, pair.FirstId), At(named.Locus, pair.SecondId));
                pairs[first, second] = pairs[second, first] = true;
                return (named.Locus, pairs);
            }

            default:
                throw new SpeciesException($"The danger '{dangerId}' has a condition of an unknown kind.");
        }

        Allele Find(string id) => species.FindAllele(id)
            ?? throw new SpeciesException($"The danger '{dangerId}' names an unknown allele '{id}'.");

        int At(Locus locus, string id) => locus.Alleles.FirstOrDefault(a => string.Equals(a.Id, id, StringComparison.Ordinal))?.Index
            ?? throw new SpeciesException($"The danger '{dangerId}' pairs alleles of two loci.");

        static bool[,] Empty(Locus locus) => new bool[locus.Alleles.Count, locus.Alleles.Count];
    }
}
