using Clutchwright.Genetics.Clutches;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Looks;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Genetics.Crosses;

/// <summary>One look that can hatch: everything that cannot be told apart by eye, put together.</summary>
public sealed class LookOutcome
{
    private readonly Func<SharedChance> _shared;
    private readonly Lazy<IReadOnlyList<HiddenChance>> _hidden;

    internal LookOutcome(
        IReadOnlyList<Expression> seen,
        IReadOnlyList<Expression> faint,
        Sex? sex,
        Probability chance,
        Probability survival,
        Func<SharedChance> shared,
        Func<IReadOnlyList<HiddenChance>> hidden)
    {
        Seen = seen;
        Faint = faint;
        Sex = sex;
        Chance = chance;
        ChanceOfHatchling = chance.Given(survival);
        _shared = shared;
        _hidden = new(hidden);
    }

    /// <summary>Gets what is seen, one form a locus, in the order of the species' loci; empty: looks normal.</summary>
    public IReadOnlyList<Expression> Seen { get; }

    /// <summary>Gets forms that some animals of this look have and that may show faintly through what hides them.</summary>
    public IReadOnlyList<Expression> Faint { get; }

    /// <summary>Gets the sex; <c>null</c> where both are put together.</summary>
    public Sex? Sex { get; }

    /// <summary>Gets the chance of eggs laid that would hatch if their genotype let them.</summary>
    public Probability Chance { get; }

    /// <summary>Gets the chance of live hatchlings.</summary>
    public Probability ChanceOfHatchling { get; }

    /// <summary>Gets what hatchlings of this look may carry unseen, by locus, likeliest first; pairs of alleles that are
    /// just what the look says are left out. Chances are among hatchlings of this look. Computed when first asked for.</summary>
    public IReadOnlyList<HiddenChance> Hidden => _hidden.Value;

    /// <summary>The chance per egg as it depends on what the parents are: for figures of a whole clutch.</summary>
    public SharedChance Shared() => _shared();
}

/// <summary>A pair of alleles that an animal of a look may have.</summary>
/// <param name="Locus">The locus.</param>
/// <param name="First">An allele index: the smaller, or that on X or Z where <paramref name="IsOrdered"/>.</param>
/// <param name="Second">The other allele index.</param>
/// <param name="IsOrdered">Whether the pair rides on two different sex chromosomes.</param>
/// <param name="Chance">Among hatchlings of the look.</param>
public sealed record HiddenChance(Locus Locus, int First, int Second, bool IsOrdered, Probability Chance);
