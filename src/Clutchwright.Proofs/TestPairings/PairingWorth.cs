using Clutchwright.Genetics.Clutches;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Proofs.TestPairings;

/// <summary>How much a test pairing is worth for a doubt: what one clutch is expected to tell, and how soon the doubt is settled.</summary>
/// <remarks>
/// Every outcome of the clutch is reckoned through; nothing is simulated. A posterior may be looked at after every egg and every clutch:
/// stopping when it is clear does not spoil it, as it would spoil a p value. Source: expected information [Lindley1956],
/// docs/references.md. Immutable.
/// </remarks>
public sealed class PairingWorth
{
    /// <summary>How many eggs, one after the other, are reckoned through for <see cref="SettledBy"/>.</summary>
    public const int MostEggs = 60;

    private const double Negligible = 1e-15;

    private PairingWorth(TestPairing pairing, Probability prior, GoodEggs clutch, Probability sureness)
    {
        Pairing = pairing;
        var (so, not) = (prior.Value, prior.Complement.Value);
        var expected = 0.0;
        for (var n = 0; n <= clutch.Most; n++)
        {
            var size = clutch.Chances[n].Value;
            if (size <= 0.0)
            {
                continue;
            }

            foreach (var (ifSo, ifNot) in Outcomes(pairing, n))
            {
                var (a, b) = (so * ifSo, not * ifNot);
                var chance = size * (a + b);
                if (chance <= 0.0)
                {
                    continue;
                }

                var posterior = a / (a + b);
                expected += chance * Entropy(posterior);
                ChanceOfYes += posterior >= sureness.Value ? chance : 0.0;
                ChanceOfNo += 1.0 - posterior >= sureness.Value ? chance : 0.0;
            }
        }

        EntropyDrop = Math.Max(0.0, Entropy(so) - expected);
        SettledBy = Settling(pairing, so, not, sureness.Value);
    }

    /// <summary>Gets the pairing.</summary>
    public TestPairing Pairing { get; }

    /// <summary>Gets the expected drop of the doubt's entropy by one clutch, in bits; from 0 to the entropy of the prior, at most 1.</summary>
    public double EntropyDrop { get; }

    /// <summary>Gets the chance that one clutch makes the claim as sure as asked.</summary>
    public double ChanceOfYes { get; }

    /// <summary>Gets the chance that one clutch makes the opposite as sure as asked.</summary>
    public double ChanceOfNo { get; }

    /// <summary>Gets the chance that one clutch gives an answer.</summary>
    public double ChanceOfAnswer => ChanceOfYes + ChanceOfNo;

    /// <summary>Gets the chance that the doubt is settled by so many eggs at the latest; index n from 0 to <see cref="MostEggs"/>.</summary>
    public IReadOnlyList<double> SettledBy { get; }

    /// <summary>Gets the mean number of eggs until the doubt is settled; <c>null</c> where 1 in 1000 or more is not settled by
    /// <see cref="MostEggs"/>.</summary>
    public double? MeanEggs => SettledBy[^1] > 0.999 ? SettledBy.Take(MostEggs).Sum(s => 1.0 - s) : null;

    /// <summary>Weighs a pairing.</summary>
    /// <param name="pairing">The pairing.</param>
    /// <param name="prior">The chance of the claim before.</param>
    /// <param name="clutch">How many good eggs a clutch holds.</param>
    /// <param name="sureness">What counts as an answer, for example 0.95: the claim, or its opposite, has at least so much. Above 1/2.</param>
    /// <remarks>Cost: (n choose classes) outcomes for each clutch size n.</remarks>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="sureness"/> is not above 1/2.</exception>
    public static PairingWorth Of(TestPairing pairing, Probability prior, GoodEggs clutch, Probability sureness) => sureness > Probability.Half
        ? new(pairing, prior, clutch, sureness)
        : throw new ArgumentOutOfRangeException(nameof(sureness), sureness, "An answer is surer than 1/2.");

    /// <summary>Weighs pairings, best first: by the chance of an answer from one clutch, then by the drop in entropy, then by name.</summary>
    /// <param name="pairings">Each with the good eggs of its clutch.</param>
    /// <param name="prior">The chance of the claim before.</param>
    /// <param name="sureness">What counts as an answer. Above 1/2.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="sureness"/> is not above 1/2.</exception>
    public static IReadOnlyList<PairingWorth> Rank(
        IEnumerable<(TestPairing Pairing, GoodEggs Clutch)> pairings, Probability prior, Probability sureness) =>
    [
        .. pairings.Select(p => Of(p.Pairing, prior, p.Clutch, sureness))
            .OrderByDescending(w => Math.Round(w.ChanceOfAnswer, 9))
            .ThenByDescending(w => w.EntropyDrop)
            .ThenBy(w => w.Pairing.Name, StringComparer.Ordinal),
    ];

    /// <summary>The entropy of a doubt, in bits.</summary>
    internal static double Entropy(double p) => p is <= 0.0 or >= 1.0
        ? 0.0
        : -((p * Math.Log2(p)) + ((1.0 - p) * Math.Log2(1.0 - p)));

    // The chance of every outcome of n eggs under both hypotheses, the order of eggs left out.
    private static IEnumerable<(double IfSo, double IfNot)> Outcomes(TestPairing pairing, int n)
    {
        foreach (var counts in Compositions(n, pairing.Classes.Count))
        {
            var ways = 1.0;
            var placed = 0;
            foreach (var count in counts)
            {
                for (var i = 1; i <= count; i++)
                {
                    ways *= (double)++placed / i;
                }
            }

            yield return (ways * Chance(pairing.IfSo, counts), ways * Chance(pairing.IfNot, counts));
        }
    }

    private static double Chance(IReadOnlyList<PairingCase> cases, int[] counts)
    {
        var sum = 0.0;
        foreach (var c in cases)
        {
            var product = c.Weight;
            for (var i = 0; i < counts.Length; i++)
            {
                product *= Math.Pow(c.Classes[i], counts[i]);
            }

            sum += product;
        }

        return sum;
    }

    private static IEnumerable<int[]> Compositions(int n, int classes)
    {
        if (classes == 1)
        {
            yield return [n];
            yield break;
        }

        for (var first = 0; first <= n; first++)
        {
            foreach (var rest in Compositions(n - first, classes - 1))
            {
                yield return [first, .. rest];
            }
        }
    }

    // Egg by egg over the counts so far, those that are settled taken out: how many orders lead to a count without an answer before.
    private static double[] Settling(TestPairing pairing, double so, double not, double sureness)
    {
        var settled = new double[MostEggs + 1];
        var orders = new Dictionary<Counts, double> { [new(new int[pairing.Classes.Count])] = 1.0 };
        for (var egg = 0; egg <= MostEggs; egg++)
        {
            var open = new Dictionary<Counts, double>();
            var found = 0.0;
            foreach (var (counts, ways) in orders)
            {
                var (a, b) = (so * Chance(pairing.IfSo, counts.Values), not * Chance(pairing.IfNot, counts.Values));
                var chance = ways * (a + b);
                if (chance <= Negligible)
                {
                    continue;
                }

                if (Math.Max(a, b) >= sureness * (a + b))
                {
                    found += chance;
                    continue;
                }

                for (var c = 0; c < counts.Values.Length; c++)
                {
                    var next = counts.Plus(c);
                    open[next] = open.GetValueOrDefault(next) + ways;
                }
            }

            settled[egg] = Math.Min(1.0, (egg == 0 ? 0.0 : settled[egg - 1]) + found);
            orders = open;
        }

        return settled;
    }

    private readonly struct Counts(int[] values) : IEquatable<Counts>
    {
        public int[] Values { get; } = values;

        public Counts Plus(int c)
        {
            var next = (int[])Values.Clone();
            next[c]++;
            return new(next);
        }

        public bool Equals(Counts other) => Values.AsSpan().SequenceEqual(other.Values);

        public override bool Equals(object? obj) => obj is Counts other && Equals(other);

        public override int GetHashCode()
        {
            var hash = new HashCode();
            foreach (var v in Values)
            {
                hash.Add(v);
            }

            return hash.ToHashCode();
        }
    }
}
