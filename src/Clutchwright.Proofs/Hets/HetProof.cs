using Clutchwright.Genetics.Clutches;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Proofs.Hets;

/// <summary>Is this animal het? What its young say about an animal that does not show a recessive.</summary>
/// <remarks>
/// Exact where prior and mates' chances are. The young of one mate share what that mate is, so they are a mixture over it and never a
/// power of the mean. Stopping when the answer is clear does not spoil it: a posterior depends on what hatched, not on why one stopped.
/// Assumes full penetrance and no misread young. Source: docs/references.md [Bridge1997]. Immutable.
/// </remarks>
public sealed class HetProof
{
    /// <summary>The most young taken for one mate.</summary>
    public const int MostYoung = 10_000;

    private const int MostFurtherEggs = 100_000;

    private HetProof(Probability prior, IReadOnlyList<TestMate> mates)
    {
        Prior = prior;
        Mates = [.. mates];
        IfHet = mates.Aggregate(Probability.Certain, (product, m) => product * m.IfHet());
        IfNotHet = mates.Any(m => m.Visuals > 0) ? Probability.Impossible : Probability.Certain;
        var (het, not) = (prior * IfHet, prior.Complement * IfNotHet);
        IsContradiction = het.IsImpossible && not.IsImpossible;
        Posterior = IsContradiction ? prior : not.IsImpossible ? Probability.Certain : het.Given(het + not);
    }

    /// <summary>Gets the chance that the animal is het before its young are counted.</summary>
    public Probability Prior { get; }

    /// <summary>Gets the mates with their young.</summary>
    public IReadOnlyList<TestMate> Mates { get; }

    /// <summary>Gets the chance of exactly these young if the animal is het.</summary>
    public Probability IfHet { get; }

    /// <summary>Gets the chance of exactly these young if it is not: 1 without a visual among them, else 0.</summary>
    public Probability IfNotHet { get; }

    /// <summary>Gets the chance that the animal is het, its young counted; the prior where <see cref="IsContradiction"/>.</summary>
    public Probability Posterior { get; }

    /// <summary>Gets whether the young cannot be of these parents as told: another sire, a misread look or a wrong statement.</summary>
    public bool IsContradiction { get; }

    /// <summary>Counts the young.</summary>
    /// <param name="prior">The chance that the animal is het, for example 2/3 for a normal-looking child of two hets.</param>
    /// <param name="mates">Its mates, each once; none leaves the prior.</param>
    /// <exception cref="ArgumentException">A mate has more young than <see cref="MostYoung"/>.</exception>
    public static HetProof Of(Probability prior, IReadOnlyList<TestMate> mates)
    {
        if (mates.Any(m => m.Normals > MostYoung || m.Visuals > MostYoung))
        {
            throw new ArgumentException($"A mate has at most {MostYoung} young.", nameof(mates));
        }

        return new(prior, mates);
    }

    /// <summary>The chance per egg of a visual from one mate <em>if the animal is het</em>, with the doubt about the mate that its eggs share.</summary>
    /// <param name="mate">A mate; its young so far are not counted.</param>
    public static SharedChance VisualIfHet(TestMate mate) => new(
    [
        new(mate.VisualPerEgg, mate.Carries),
        new(Probability.Impossible, mate.Carries.Complement),
    ]);

    /// <summary>The fewest eggs from one mate in which a true het would have shown itself with a confidence.</summary>
    /// <param name="mate">A mate; its young so far are not counted.</param>
    /// <param name="confidence">Inside (0, 1).</param>
    /// <returns>The number, or <c>null</c> where the mate may not carry so that no number is enough.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The confidence is not inside (0, 1).</exception>
    public static int? EggsFor(TestMate mate, Probability confidence) => VisualIfHet(mate).EggsFor(confidence);

    /// <summary>The chance that a mate carries, its young and everything else counted.</summary>
    /// <param name="index">The mate, from 0.</param>
    public Probability MateCarries(int index)
    {
        var mate = Mates[index];
        if (IsContradiction || mate.Carries.IsCertain)
        {
            return mate.Carries;
        }

        // Where the animal is not het its young say nothing of the mate.
        var ifHet = mate.IfHet();
        var givenHet = ifHet.IsImpossible || mate.Visuals > 0
            ? Probability.Certain
            : (mate.VisualPerEgg.Complement.Power(mate.Normals) * mate.Carries).Given(ifHet);
        return (Posterior * givenHet) + (Posterior.Complement * mate.Carries);
    }

    /// <summary>The posterior after each further egg of one mate that hatches normal, from none on.</summary>
    /// <param name="index">The mate, from 0.</param>
    /// <param name="eggs">How many further eggs; at most <see cref="MostYoung"/> with those counted.</param>
    /// <returns>A list of <paramref name="eggs"/> + 1 chances.</returns>
    public IReadOnlyList<Probability> AfterNormals(int index, int eggs) =>
        [.. Enumerable.Range(0, eggs + 1).Select(n => With(index, n).Posterior)];

    /// <summary>The fewest further normal young of one mate that bring the posterior to a bound or below.</summary>
    /// <param name="index">The mate, from 0.</param>
    /// <param name="bound">Above 0.</param>
    /// <returns>The number, 0 where the bound is met already, or <c>null</c> where no number does it: the mate may not carry, or a visual
    /// has settled it.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The bound is 0.</exception>
    public int? NormalsUntil(int index, Probability bound)
    {
        if (bound.IsImpossible)
        {
            throw new ArgumentOutOfRangeException(nameof(bound), bound, "A bound lies above 0: no number of eggs proves that an animal is not het.");
        }

        if (Posterior <= bound)
        {
            return 0;
        }

        if (IfNotHet.IsImpossible || Prior.IsCertain || Limit(index) >= bound)
        {
            return null;
        }

        var (low, high) = (0, 1);
        while (!Reaches(index, high, bound))
        {
            if (high > MostFurtherEggs)
            {
                return null;
            }

            (low, high) = (high, high * 2);
        }

        while (high - low > 1)
        {
            var middle = (low + high) / 2;
            (low, high) = Reaches(index, middle, bound) ? (low, middle) : (middle, high);
        }

        return high;
    }

    // What the posterior is only ever approached to: with so many normals the mate is surely no carrier.
    private Probability Limit(int index)
    {
        var het = Prior * Mates.Where((_, i) => i != index).Aggregate(Mates[index].Carries.Complement, (product, m) => product * m.IfHet());
        return het.Given(het + Prior.Complement);
    }

    // Exact while the powers are small, by doubles beyond.
    private bool Reaches(int index, int eggs, Probability bound)
    {
        if (Mates[index].Normals + eggs <= 256)
        {
            return With(index, eggs).Posterior <= bound;
        }

        var others = Mates.Where((_, i) => i != index).Aggregate(1.0, (product, m) => product * m.IfHet().Value);
        var mate = Mates[index];
        var here = (mate.Carries.Value * Math.Pow(mate.VisualPerEgg.Complement.Value, mate.Normals + eggs)) + mate.Carries.Complement.Value;
        var het = Prior.Value * others * here;
        return het <= bound.Value * (het + Prior.Complement.Value);
    }

    private HetProof With(int index, int further) => new(
        Prior, [.. Mates.Select((m, i) => i == index ? m.With(m.Normals + further, m.Visuals) : m)]);
}
