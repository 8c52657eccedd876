using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Looks;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Catalogue.TradeTexts;

/// <summary>A stretch of a text, from 0.</summary>
internal readonly record struct TextSpan(int Start, int Length)
{
    public int End => Start + Length;

    public TextSpan To(TextSpan other) => new(Start, other.End - Start);
}

/// <summary>The sex chromosome an allele is said to ride on.</summary>
/// <param name="OnUnshared">Whether on the one that only one sex has (Y, W).</param>
/// <param name="Chance">How sure that is.</param>
internal sealed record Side(bool OnUnshared, Probability Chance);

/// <summary>One thing a trade text says of a genotype.</summary>
/// <param name="Span">Where it says so.</param>
internal abstract record Claim(TextSpan Span)
{
    /// <summary>The locus concerned; <c>null</c> where it is not one locus.</summary>
    public virtual Locus? Locus => null;

    /// <summary>An allele named bare: one copy, or two of a recessive one.</summary>
    public sealed record Shown(Allele Allele, TextSpan Span) : Claim(Span)
    {
        public Side? Side { get; init; }

        public override Locus Locus => Allele.Locus;
    }

    /// <summary>One copy, unseen or by genetics' notation, certain or with a chance.</summary>
    public sealed record Carried(Allele Allele, Probability Chance, TextSpan Span) : Claim(Span)
    {
        public Side? Side { get; init; }

        public override Locus Locus => Allele.Locus;
    }

    /// <summary>A pair of alleles, certain or with a chance.</summary>
    public sealed record Pair(Locus At, int First, int Second, Probability Chance, TextSpan Span) : Claim(Span)
    {
        public override Locus Locus => At;
    }

    /// <summary>A form that several pairs show.</summary>
    public sealed record Form(Expression Expression, TextSpan Span) : Claim(Span)
    {
        public override Locus Locus => Expression.Locus;
    }

    /// <summary>The alleles of a linkage group by strand.</summary>
    /// <param name="Group">The group.</param>
    /// <param name="Strands">In the order written.</param>
    /// <param name="BySexChromosome">Whether the first is said to be on X or Z and the second on Y or W.</param>
    /// <param name="Chance">How sure.</param>
    /// <param name="Span">Where.</param>
    public sealed record Strand(LinkageGroup Group, Diplotype Strands, bool BySexChromosome, Probability Chance, TextSpan Span)
        : Claim(Span);

    /// <summary>That nothing shows.</summary>
    public sealed record Normal(TextSpan Span) : Claim(Span);
}
