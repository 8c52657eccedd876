using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Pedigrees.Charts;

/// <summary>What a chart needs to know of an animal beside its parents.</summary>
/// <param name="Key">The animal's key in the pedigree.</param>
/// <param name="Sex">Its sex, which gives the outline: male a square, female a circle; <c>null</c>, not known: a diamond.</param>
/// <remarks>Compared by reference to the lists it holds; make one for each chart.</remarks>
public sealed record ChartAnimal(string Key, Sex? Sex)
{
    /// <summary>Gets the day it hatched, or the middle of the days it may have; <c>null</c>: not known. Siblings stand in this order.</summary>
    public DateOnly? Hatched { get; init; }

    /// <summary>Gets whether it is dead; the symbol is then struck through.</summary>
    public bool IsDeceased { get; init; }

    /// <summary>Gets the room its label needs under the symbol, in the units of <see cref="ChartMeasures"/>; 0 or more.</summary>
    public double LabelHeight { get; init; }

    /// <summary>Gets what is marked inside the symbol, one band for each gene, in the order of the key.</summary>
    public IReadOnlyList<ChartMark> Marks { get; init; } = [];
}

/// <summary>What is believed of one animal at one gene, as a chart marks it.</summary>
/// <param name="Gene">The gene's name, as the key of the chart gives it.</param>
/// <param name="IsShown">Whether the animal shows it.</param>
/// <param name="ChanceOfCarrying">The probability that it carries at least one copy, in [0, 1].</param>
public readonly record struct ChartMark(string Gene, bool IsShown, Probability ChanceOfCarrying)
{
    /// <summary>Gets the share of the band that is filled, in [0, 1]: all of it where the gene shows, else half the probability of carrying it.
    /// So a certain carrier is half filled and a 50 % possible het a quarter. Where one copy can be hidden and two show, the share is the
    /// expected part of the animal's two alleles that are this one.</summary>
    public double FilledShare => IsShown ? 1 : ChanceOfCarrying.Value / 2;
}
