namespace Clutchwright.Planning.Seasons;

/// <summary>A goal of the season: what it counts, and how much that weighs.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="Weight">How much one unit of its figure weighs; 0 or more, and of any sign for <see cref="Sum"/>.</param>
public abstract record SeasonGoal(string Name, double Weight)
{
    /// <summary>Gets the least figure that is accepted; <c>null</c>: none.</summary>
    public double? Least { get; init; }

    /// <summary>At least so many of a want, over all clutches of the season. Figure: its chance, in [0, 1].</summary>
    /// <param name="Name">What it is called.</param>
    /// <param name="Weight">What certainty weighs.</param>
    /// <param name="Count">How many, 1 or more.</param>
    /// <param name="SireCases">For each male the weights of what he may be; each sums to 1. All his clutches share it.</param>
    /// <param name="Yields">For each pair what its clutch gives; <c>null</c>: the pair cannot give the want.</param>
    public sealed record AtLeast(
        string Name, double Weight, int Count, IReadOnlyList<IReadOnlyList<double>> SireCases, IReadOnlyList<SeasonYield?> Yields)
        : SeasonGoal(Name, Weight);

    /// <summary>A doubt that clutches help to settle: a claim that one seen egg proves, such as that an animal is het. Figure: the
    /// expected drop of the doubt's entropy by all clutches of the season together, in bits; [0, 1].</summary>
    /// <param name="Name">What it is called.</param>
    /// <param name="Weight">What a bit weighs.</param>
    /// <param name="Prior">The chance of the claim, in [0, 1].</param>
    /// <param name="Silences">For each pair how its clutch may keep silent; <c>null</c>: it tells nothing. If the claim does not hold no clutch shows
    /// anything.</param>
    public sealed record Doubt(string Name, double Weight, double Prior, IReadOnlyList<SeasonSilence?> Silences) : SeasonGoal(Name, Weight);

    /// <summary>Something that adds up over clutches, such as hatchlings of a kind or their value. Figure: the sum.</summary>
    /// <param name="Name">What it is called.</param>
    /// <param name="Weight">What one unit weighs; may be below 0.</param>
    /// <param name="Values">For each pair what it adds.</param>
    public sealed record Sum(string Name, double Weight, IReadOnlyList<double> Values) : SeasonGoal(Name, Weight);
}

/// <summary>How many of a want the clutch of a pair holds.</summary>
/// <param name="Numbers">For each case of the male, in the order of <see cref="SeasonGoal.AtLeast.SireCases"/>, the chance of each number: index
/// n holds the chance of exactly n. What the female may be is counted in: she has one clutch.</param>
public sealed record SeasonYield(IReadOnlyList<IReadOnlyList<double>> Numbers)
{
    /// <summary>Gets the expected number in one case of the male.</summary>
    internal double Mean(int sireCase) => Numbers[sireCase].Select((p, n) => p * n).Sum();

    /// <summary>The mean of z to the power of the number, in one case of the male; at 0 the chance of none.</summary>
    internal double Generating(int sireCase, double z)
    {
        var (sum, power) = (0.0, 1.0);
        foreach (var chance in Numbers[sireCase])
        {
            sum += chance * power;
            power *= z;
        }

        return sum;
    }
}

/// <summary>How the clutch of a pair may show nothing of a claim that holds.</summary>
/// <param name="Chances">The chance of each circumstance that is seen whatever the claim, such as how many eggs there are; sums to 1.</param>
/// <param name="Silent">For each of these the chance that the clutch shows nothing although the claim holds, in [0, 1].</param>
public sealed record SeasonSilence(IReadOnlyList<double> Chances, IReadOnlyList<double> Silent);
