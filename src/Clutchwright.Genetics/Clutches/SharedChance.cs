using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Genetics.Clutches;

/// <summary>The chance per egg of something, as a mixture over what the parents may be. The eggs of one pair share that doubt: it does not
/// average out over eggs, so every figure for a clutch is a mixture over the cases, never a power of the mean.</summary>
/// <remarks>Immutable. Equal chances are kept as one case.</remarks>
public sealed class SharedChance
{
    /// <summary>Makes a mixture.</summary>
    /// <param name="cases">The chance per egg in each case of the parents, with the case's weight; weights sum to 1.</param>
    /// <exception cref="ArgumentException">The weights do not sum to 1.</exception>
    public SharedChance(IEnumerable<Weighted<Probability>> cases)
    {
        Cases = cases
            .GroupBy(c => c.Value)
            .Select(g => new Weighted<Probability>(g.Key, g.Aggregate(Probability.Impossible, (sum, c) => sum + c.Weight)))
            .Where(c => !c.Weight.IsImpossible)
            .OrderByDescending(c => c.Value)
            .ToArray();
        if (Math.Abs(Cases.Sum(c => c.Weight.Value) - 1.0) > 1e-9)
        {
            throw new ArgumentException("The weights of the cases do not sum to 1.", nameof(cases));
        }
    }

    private SharedChance(Weighted<Probability> only) => Cases = [only];

    private SharedChance(Weighted<Probability>[] distinct)
    {
        Array.Sort(distinct, (a, b) => b.Value.CompareTo(a.Value));
        Cases = distinct;
    }

    /// <summary>Gets the chance per egg in each case, highest first, with the case's weight.</summary>
    public IReadOnlyList<Weighted<Probability>> Cases { get; }

    /// <summary>Gets the chance per egg over all cases.</summary>
    public Probability PerEgg => Sum(c => c);

    /// <summary>Gets what the chance of at least one can never pass, however many eggs: the weight of the cases in which it is possible.</summary>
    public Probability Ceiling => Sum(c => c.IsImpossible ? Probability.Impossible : Probability.Certain);

    /// <summary>Gets the chance of what can never be.</summary>
    public static SharedChance Never { get; } = Certain(Probability.Impossible);

    /// <summary>A chance without doubt about the parents.</summary>
    public static SharedChance Certain(Probability perEgg) => new(new Weighted<Probability>(perEgg, Probability.Certain));

    /// <summary>The chance of at least one in a number of eggs that would hatch if their genotype let them.</summary>
    /// <param name="eggs">0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="eggs"/> is negative.</exception>
    public Probability AtLeastOne(int eggs) => Sum(c => c.Complement.Power(eggs).Complement);

    /// <summary>The chance of at least one in a number of clutches of the same pair.</summary>
    /// <param name="clutch">How many good eggs a clutch holds.</param>
    /// <param name="clutches">0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="clutches"/> is negative.</exception>
    public Probability AtLeastOne(GoodEggs clutch, int clutches = 1) =>
        Sum(c => clutch.NoneOf(c).Power(clutches).Complement);

    /// <summary>The chance of at least <paramref name="count"/> in one clutch.</summary>
    public Probability AtLeast(int count, GoodEggs clutch) => Sum(c => clutch.AtLeast(count, c));

    /// <summary>The distribution of the number in one clutch: index n holds the chance of exactly n.</summary>
    public IReadOnlyList<double> NumberIn(GoodEggs clutch)
    {
        var result = new double[clutch.Most + 1];
        foreach (var (chance, weight) in Cases)
        {
            var number = clutch.NumberOf(chance);
            for (var n = 0; n < result.Length; n++)
            {
                result[n] += weight.Value * number[n];
            }
        }

        return result;
    }

    /// <summary>The fewest eggs that give at least one with a confidence.</summary>
    /// <param name="confidence">In (0, 1).</param>
    /// <returns>The number of eggs, or <c>null</c> where no number of eggs does, because the parents may be unable to.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="confidence"/> is not inside (0, 1).</exception>
    public int? EggsFor(Probability confidence) => Fewest(confidence, c => c.Complement);

    /// <summary>The fewest clutches of the same pair that give at least one with a confidence; <c>null</c> as for eggs.</summary>
    /// <param name="confidence">In (0, 1).</param>
    /// <param name="clutch">How many good eggs a clutch holds.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="confidence"/> is not inside (0, 1).</exception>
    public int? ClutchesFor(Probability confidence, GoodEggs clutch) =>
        clutch.IsAlwaysEmpty ? null : Fewest(confidence, clutch.NoneOf);

    /// <summary>Takes cases that are known to be distinct, possible and whole.</summary>
    internal static SharedChance OfDistinct(Weighted<Probability>[] cases) => new(cases);

    // Repeats of one trial that misses with a chance by case: the fewest so that one hits.
    private int? Fewest(Probability confidence, Func<Probability, Probability> missOf)
    {
        if (confidence.IsImpossible || confidence.IsCertain)
        {
            throw new ArgumentOutOfRangeException(nameof(confidence), confidence, "A confidence lies inside (0, 1).");
        }

        // At a ceiling that equals the confidence it is only approached, unless every case that can give it gives it in every trial.
        var misses = Cases.Select(c => new Weighted<Probability>(missOf(c.Value), c.Weight)).ToArray();
        var ceiling = Ceiling;
        if (ceiling < confidence || (ceiling <= confidence && Array.Exists(misses, m => !m.Value.IsImpossible && !m.Value.IsCertain)))
        {
            return null;
        }

        var high = 1;
        while (!Reaches(confidence, misses, high))
        {
            if (high > 1 << 28)
            {
                return null; // so rare that the number has no meaning for a keeper
            }

            high *= 2;
        }

        var low = high / 2;
        while (high - low > 1)
        {
            var middle = low + ((high - low) / 2);
            (low, high) = Reaches(confidence, misses, middle) ? (low, middle) : (middle, high);
        }

        return high;
    }

    // Powers of exact ratios grow with the exponent, so doubles decide wherever they can.
    private static bool Reaches(Probability confidence, Weighted<Probability>[] misses, int trials)
    {
        const double Undecided = 1e-11;
        const long MostBits = 1 << 17;
        var missed = misses.Sum(m => m.Weight.Value * Math.Exp(trials * LogOfComplement(m.Value.Complement.Value)));
        var above = 1.0 - missed - confidence.Value;
        if (Math.Abs(above) > Undecided
            || Array.Exists(misses, m => m.Value.Exact is not { } exact || exact.Denominator.GetBitLength() * trials > MostBits))
        {
            return above >= 0.0;
        }

        var reached = misses.Aggregate(
            Probability.Impossible, (sum, m) => sum + (m.Weight * m.Value.Power(trials).Complement));
        return reached >= confidence;
    }

    // log(1 - x), also where x is too small to be seen beside 1.
    private static double LogOfComplement(double x) =>
        x < 1e-4 ? -x * (1.0 + (x * ((1.0 / 2.0) + (x * ((1.0 / 3.0) + (x / 4.0)))))) : Math.Log(1.0 - x);

    private Probability Sum(Func<Probability, Probability> figure) =>
        Cases.Aggregate(Probability.Impossible, (sum, c) => sum + (c.Weight * figure(c.Value)));
}
