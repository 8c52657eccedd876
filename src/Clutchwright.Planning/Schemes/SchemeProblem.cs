namespace Clutchwright.Planning.Schemes;

/// <summary>A pyramiding problem of plants: from given parents to one plant with the wanted genotype, by crossings and selfings.</summary>
/// <remarks>The cost of a scheme is the plants raised, plus <see cref="PerCrossing"/> a crossing, plus <see cref="PerGeneration"/> a
/// generation. Source: docs/references.md [Servin2004], [CanzarElKebir2011].</remarks>
public sealed class SchemeProblem
{
    /// <summary>States a problem.</summary>
    /// <param name="loci">The loci and their map.</param>
    /// <param name="parents">The plants to begin with; each can be crossed as often as wanted.</param>
    /// <param name="target">The wanted genotype.</param>
    /// <param name="success">The chance, in (0, 1), with which each crossing shall give its wanted child.</param>
    /// <exception cref="ArgumentException">There is no parent, or a genotype has loci that <paramref name="loci"/> has not.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="success"/> is not between 0 and 1.</exception>
    public SchemeProblem(LinkedLoci loci, IReadOnlyList<HaplotypePair> parents, HaplotypePair target, double success)
    {
        if (success is not (> 0.0 and < 1.0))
        {
            throw new ArgumentOutOfRangeException(nameof(success), success, "The chance of success lies between 0 and 1.");
        }

        if (parents.Count == 0)
        {
            throw new ArgumentException("A scheme begins with at least one parent.", nameof(parents));
        }

        if (parents.Append(target).Any(g => g.High >= loci.Haplotypes))
        {
            throw new ArgumentException($"A genotype has more than {loci.Count} loci.", nameof(parents));
        }

        Loci = loci;
        Parents = [.. parents.Distinct()];
        Target = target;
        Success = success;
    }

    /// <summary>Gets the loci and their map.</summary>
    public LinkedLoci Loci { get; }

    /// <summary>Gets the plants to begin with, each genotype once.</summary>
    public IReadOnlyList<HaplotypePair> Parents { get; }

    /// <summary>Gets the wanted genotype.</summary>
    public HaplotypePair Target { get; }

    /// <summary>Gets the chance with which each crossing shall give its wanted child, in (0, 1).</summary>
    public double Success { get; }

    /// <summary>Gets what a crossing costs, in plants.</summary>
    public int PerCrossing { get; init; }

    /// <summary>Gets what a generation costs, in plants.</summary>
    public int PerGeneration { get; init; }

    /// <summary>Gets the most plants that one crossing may raise.</summary>
    public int MostPlants { get; init; } = 100_000;

    /// <summary>How many offspring a crossing needs so that the wanted child is among them with the chance of success.</summary>
    /// <param name="chance">The chance of the child in one offspring.</param>
    /// <returns>ceil(ln(1 - success) / ln(1 - chance)); 1 for a certain child; <c>null</c> where more than <see cref="MostPlants"/> are needed.</returns>
    public int? OffspringFor(double chance) => Offspring(chance) is var n && n <= MostPlants ? n : null;

    // A number beyond every limit where it cannot be.
    internal int Offspring(double chance)
    {
        if (chance >= 1.0 - 1e-12)
        {
            return 1;
        }

        // The ratio is a whole number only by chance of rounding; a hair above one still means that one.
        var needed = Math.Ceiling((Math.Log(1.0 - Success) / LogOfMiss(chance)) - 1e-9);
        return needed <= MostPlants ? Math.Max(1, (int)needed) : int.MaxValue / 4;
    }

    // ln(1 - p) to full precision for small p as well (a known trick of floating-point practice: the rounding of 1 - p cancels).
    internal static double LogOfMiss(double chance)
    {
        var miss = 1.0 - chance;
        return miss == 1.0 ? -chance : Math.Log(miss) * chance / (1.0 - miss);
    }
}
