using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Looks;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Catalogue.TradeTexts;

/// <summary>What a part of a written trade text tells.</summary>
public enum TradeWordKind
{
    /// <summary>1.0 or 0.1.</summary>
    Sex = 1,

    /// <summary>What can be seen; shown bold.</summary>
    Seen = 2,

    /// <summary>What is or may be carried; shown italic.</summary>
    Carried = 3,

    /// <summary>Which alleles lie on one strand, where the words before leave it open.</summary>
    Strands = 4,
}

/// <summary>A part of a written trade text.</summary>
/// <param name="Kind">What it tells.</param>
/// <param name="Text">The words.</param>
/// <param name="Chance">How likely it holds, exactly; the words give it rounded as the trade does, 66 % for 2/3.</param>
public sealed record TradeWord(TradeWordKind Kind, string Text, Probability Chance)
{
    /// <summary>Gets the allele that is or may be carried in one copy; <c>null</c> where the words tell another thing.</summary>
    public Allele? Allele { get; init; }

    /// <summary>Gets the form that shows, or would, of the pair of alleles that the words tell; <c>null</c> where they tell another thing.</summary>
    public Expression? Form { get; init; }

    /// <summary>Gets whether it can be seen, unless a form of another locus hides it.</summary>
    public bool IsSeen => Kind == TradeWordKind.Seen;

    /// <summary>Gets whether it is or may be carried unseen.</summary>
    public bool IsCarried => Kind == TradeWordKind.Carried;

    /// <summary>Gets the percentage as the trade writes it, without the sign; <c>null</c> for what is certain.</summary>
    public string? Percent => Chance.IsCertain ? null : Percentages.Write(Chance);
}
