using Clutchwright.Genetics.Dangers;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Looks;

namespace Clutchwright.Catalogue.Looks;

/// <summary>A visible form of a making, and the pair of alleles that makes it with the fewest and nearest.</summary>
/// <param name="Form">The form.</param>
/// <param name="First">An allele's index, from 0.</param>
/// <param name="Second">The other's.</param>
/// <param name="Missing">The alleles of the pair that are not at hand.</param>
public sealed record MadeForm(Expression Form, int First, int Second, IReadOnlyList<Allele> Missing)
{
    /// <summary>Gets the copies of mutant alleles in the pair.</summary>
    public int Copies => (First == 0 ? 0 : 1) + (Second == 0 ? 0 : 1);
}

/// <summary>A making that shows a look that was looked for.</summary>
public sealed class LookMatch
{
    internal LookMatch(IReadOnlyList<MadeForm> made, double? distance, LookSteps steps, IReadOnlyList<Danger> dangers)
    {
        Made = made;
        Distance = distance;
        Steps = steps;
        Dangers = dangers;
    }

    /// <summary>Gets what it is made of, in the catalogue's order; none: the normal animal.</summary>
    public IReadOnlyList<MadeForm> Made { get; }

    /// <summary>Gets the visible forms.</summary>
    public IEnumerable<Expression> Forms => Made.Select(m => m.Form);

    /// <summary>Gets the greatest CIEDE2000 difference between a tone asked for and the making's; of a look that is to hold, at the age
    /// where it is greatest; <c>null</c>: no tone was asked for.</summary>
    public double? Distance { get; }

    /// <summary>Gets what its place in the answer comes from.</summary>
    public LookSteps Steps { get; }

    /// <summary>Gets the dangers of its genotype, gravest first.</summary>
    public IReadOnlyList<Danger> Dangers { get; }
}

/// <summary>What a making's place comes from, in steps of CIEDE2000; the least sum is the first.</summary>
/// <param name="Distance">How far its tones are from those asked for.</param>
/// <param name="Doubt">How unsure the look is: grade, composed or recorded, variability.</param>
/// <param name="Alleles">How many copies of alleles it takes.</param>
/// <param name="Missing">What is not at hand.</param>
/// <param name="Harm">What the animal suffers.</param>
public sealed record LookSteps(double Distance, double Doubt, double Alleles, double Missing, double Harm)
{
    /// <summary>Gets the sum.</summary>
    public double Sum => Distance + Doubt + Alleles + Missing + Harm;
}
