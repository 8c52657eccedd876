using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Pedigrees.Kinship;

/// <summary>Kinship as exact fractions, for showing: the table of all pairs of some animals and their ancestors, from the oldest down.</summary>
/// <remarks>With known parents a denominator is a power of two; with sires in doubt their chances add their own. Cannot change and is safe to
/// read from many threads. Source: docs/references.md [EmikTerrill1949].</remarks>
public sealed class ExactKinship
{
    /// <summary>The most animals, ancestors included, that fractions are worked out for.</summary>
    public const int MostAnimals = 1000;

    private readonly Descent _descent;
    private readonly AncestorPairs _pairs;
    private readonly Fraction[] _values;

    private ExactKinship(Descent descent, AncestorPairs pairs, Fraction[] values)
    {
        _descent = descent;
        _pairs = pairs;
        _values = values;
    }

    /// <summary>Works out the kinships of some animals.</summary>
    /// <param name="descent">Who descends from whom.</param>
    /// <param name="animals">Positions of animals.</param>
    /// <returns>Null if they have more ancestors than <see cref="MostAnimals"/>, or a chance or a founder's figure is no exact ratio.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There is no such animal.</exception>
    /// <remarks>Cost: grows with the square of the number of animals, ancestors included.</remarks>
    public static ExactKinship? Of(Descent descent, IReadOnlyList<int> animals)
    {
        ArgumentNullException.ThrowIfNull(descent);
        ArgumentNullException.ThrowIfNull(animals);
        var pairs = new AncestorPairs(descent.Graph, [.. animals.Select(descent.NodeOf)], MostAnimals);
        if (!pairs.IsComplete)
        {
            return null;
        }

        var values = new Fraction[pairs.Count * (pairs.Count + 1) / 2];
        for (var one = 0; one < pairs.Count; one++)
        {
            for (var other = 0; other <= one; other++)
            {
                var value = one == other ? SelfOf(pairs, values, one) : PairOf(pairs, values, one, other);
                if (value is not { } exact)
                {
                    return null;
                }

                values[AncestorPairs.At(one, other)] = exact;
            }
        }

        return new ExactKinship(descent, pairs, values);
    }

    /// <summary>The kinship of two of the animals; of one with itself (1 + F) / 2.</summary>
    /// <param name="first">An animal's position.</param>
    /// <param name="second">An animal's position.</param>
    /// <exception cref="ArgumentOutOfRangeException">An animal is not among those worked out.</exception>
    public Fraction Between(int first, int second) => _values[AncestorPairs.At(IndexOf(first), IndexOf(second))];

    /// <summary>The inbreeding coefficient of one of the animals.</summary>
    /// <param name="animal">The animal's position.</param>
    /// <exception cref="ArgumentOutOfRangeException">The animal is not among those worked out.</exception>
    public Fraction InbreedingOf(int animal) => (Between(animal, animal) * 2) - Fraction.One;

    private static Fraction? SelfOf(AncestorPairs pairs, Fraction[] values, int node)
    {
        if (pairs.IsFounder[node])
        {
            return (Fraction.One + pairs.Graph.FounderInbreeding(pairs.Nodes[node]).Exact) * Fraction.Half;
        }

        var parents = pairs.Parents[node];
        return pairs.ChancesOf(node) is { } chances
            ? Sum(chances, i => values[AncestorPairs.At(parents[i], parents[i])])
            : parents.Length == 1 ? Fraction.Half : (Fraction.One + values[AncestorPairs.At(parents[0], parents[1])]) * Fraction.Half;
    }

    private static Fraction? PairOf(AncestorPairs pairs, Fraction[] values, int one, int other)
    {
        if (pairs.IsFounder[one] && pairs.IsFounder[other])
        {
            return pairs.FoundersKinship(one, other).Exact;
        }

        var (younger, fixedNode) = pairs.FirstStepsBack(one, other) ? (one, other) : (other, one);
        var parents = pairs.Parents[younger];
        return pairs.ChancesOf(younger) is { } chances
            ? Sum(chances, i => values[AncestorPairs.At(parents[i], fixedNode)])
            : parents.Aggregate(Fraction.Zero, (sum, parent) => sum + values[AncestorPairs.At(parent, fixedNode)]) * Fraction.Half;
    }

    private static Fraction? Sum(Probability[] chances, Func<int, Fraction> value)
    {
        var sum = Fraction.Zero;
        for (var i = 0; i < chances.Length; i++)
        {
            if (chances[i].Exact is not { } chance)
            {
                return null;
            }

            sum += chance * value(i);
        }

        return sum;
    }

    private int IndexOf(int animal) => _pairs.IndexOf(_descent.NodeOf(animal)) is >= 0 and var index
        ? index
        : throw new ArgumentOutOfRangeException(nameof(animal), animal, "The animal is not among those worked out.");
}
