using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Looks;

namespace Clutchwright.Catalogue.TradeTexts;

/// <summary>What a name in a trade text stands for.</summary>
internal abstract record Term
{
    private Term()
    {
    }

    /// <summary>A mutant allele.</summary>
    public sealed record OfAllele(Allele Value) : Term;

    /// <summary>One pair of alleles: a form that only this pair shows, or two copies of an allele.</summary>
    public sealed record OfPair(Locus Locus, int First, int Second) : Term;

    /// <summary>A form that several pairs show.</summary>
    public sealed record OfForm(Expression Value) : Term;

    /// <summary>A combination, as its makings in trade text and the claims that these state.</summary>
    public sealed record OfCombination(string Name, string Of, IReadOnlyList<Claim> Claims) : Term;

    /// <summary>The wild type.</summary>
    public sealed record OfNormal : Term;

    /// <summary>The species' own name, which adds nothing.</summary>
    public sealed record OfSpecies : Term;
}
