using Clutchwright.Genetics.Loci;
using Clutchwright.Pedigrees.Beliefs;
using Clutchwright.Pedigrees.Networks;
using Clutchwright.Testing;
using Clutchwright.Testing.Pedigrees;
using Xunit;

namespace Clutchwright.Pedigrees.Tests.Networks;

/// <summary>Whether the Markov chain comes from every possible combination of states to every other: written out on small pedigrees with a series of alleles.</summary>
/// <remarks>A series is where sweeps alone can get stuck: two parents nobody looked at, of young that show four alleles, can exchange what they are only together
/// (docs/references.md [SheehanThomas1993]).</remarks>
public class ReachabilityTests(ITestOutputHelper output)
{
    private const int Pedigrees = 700;
    private const int MostCombinations = 3_000;
    private const int MostStates = 16;
    private const double TinySweep = 12.0;

    private static readonly Species Snake = Describe.Species(
        SexSystem.XY,
        Describe.Free("s", Describe.Incomplete("a"), Describe.Incomplete("b"), Describe.Incomplete("c"), Describe.Incomplete("d")),
        Describe.Free("r", Describe.Recessive("r")));

    [Fact]
    public void Excursion_SmallPedigrees_JoinsEveryTwoPossibleCombinations()
    {
        var (parts, stuck) = (0, 0);
        for (var seed = 1; seed <= Pedigrees; seed++)
        {
            foreach (var (counts, factors) in Parts(seed))
            {
                var possible = Combinations(counts).Where(s => Excursion.IsPossible(counts, factors, s)).ToArray();
                var random = (ulong)seed;
                var sets = NetworkSampler.Sets(counts, factors, TinySweep, ref random, TestContext.Current.CancellationToken);
                if (possible.Length < 2 || sets.All(s => s.Cut.Length == 0))
                {
                    continue;
                }

                parts++;
                stuck += Components(possible, sets) > 1 ? 1 : 0;

                // With a little weight for what is impossible every combination is joined to every other, so that a walk through all sets can end anywhere.
                Factor[] relaxed = [.. factors.Select(f => f with { Values = Excursion.Relaxed(f.Values, 1e-3) })];
                Assert.All(relaxed, f => Assert.True(f.Values.Min() > 0.0));
                Assert.Equal(1, Components([.. Combinations(counts)], sets));
                Assert.All(factors.Zip(relaxed), p => Assert.Equal(p.First.Values.Where(v => v > 0.0), p.Second.Values.Where((_, i) => p.First.Values[i] > 0.0)));
                Assert.Equal(Enumerable.Range(0, counts.Length), WalkEndsAnywhere(counts, sets));
            }
        }

        output.WriteLine($"{parts} parts of {Pedigrees} pedigrees; in {stuck} of them sweeps of tiny blocks alone do not reach everything.");
        Assert.True(parts > 200 && stuck > 20, $"{stuck} of {parts}");
    }

    [Fact]
    public void Try_WhereSweepsAreStuck_ComesToEveryPossibleCombination()
    {
        var (tried, steps, kept) = (0, 0, 0);
        for (var seed = 1; seed <= Pedigrees && tried < 25; seed++)
        {
            foreach (var (counts, factors) in Parts(seed))
            {
                var possible = Combinations(counts).Where(s => Excursion.IsPossible(counts, factors, s)).ToArray();
                var random = (ulong)seed;
                var sets = NetworkSampler.Sets(counts, factors, TinySweep, ref random, TestContext.Current.CancellationToken);
                if (possible.Length is < 2 or > 60 || Components(possible, sets) == 1)
                {
                    continue;
                }

                tried++;
                var excursion = new Excursion(counts, factors, sets);
                CutSolver[] solvers = [.. sets.Select(s => new CutSolver(s))];
                var states = (int[])possible[0].Clone();
                var seen = new HashSet<string>(StringComparer.Ordinal) { Key(states) };
                for (var step = 0; step < 20_000 && seen.Count < possible.Length; step++)
                {
                    steps++;
                    kept += excursion.Try(states, solvers, ref random, TestContext.Current.CancellationToken) ? 1 : 0;
                    seen.Add(Key(states));
                    solvers[step % sets.Count].Redraw(factors, states, ref random, TestContext.Current.CancellationToken);
                    seen.Add(Key(states));
                }

                Assert.Equal(possible.Length, seen.Count);
            }
        }

        Assert.True(tried >= 10, $"{tried} parts");
        output.WriteLine($"{tried} parts; {kept} of {steps} excursions ended at something possible.");
    }

    /// <summary>Chains that sweeps alone would leave where they started: means within six standard errors of the exact answer.</summary>
    [Fact]
    public void Run_WhereSweepsAreStuck_AgreesWithTheExactAnswer()
    {
        var (tried, squares, count) = (0, 0.0, 0);
        for (var seed = 1; seed <= Pedigrees && tried < 8; seed++)
        {
            foreach (var (counts, factors) in Parts(seed))
            {
                var random = (ulong)seed;
                var plan = EliminationPlan.For(counts, factors.Select(f => f.Variables));
                var fringe = Fringe.Of(counts, factors, plan);
                int[] core = [.. fringe.Core.Select(v => counts[v])];
                if (core.Length < 2 || core.Aggregate(1.0, (p, c) => p * c) > MostCombinations)
                {
                    continue;
                }

                var possible = Combinations(core).Where(s => Excursion.IsPossible(core, fringe.Factors, s)).ToArray();
                var sets = NetworkSampler.Sets(core, fringe.Factors, TinySweep, ref random, TestContext.Current.CancellationToken);
                if (Components(possible, sets) == 1)
                {
                    continue;
                }

                tried++;
                var exact = BucketTree.Of(counts, factors, plan, TestContext.Current.CancellationToken);
                var settings = BeliefSettings.Default with { SweepBudget = TinySweep, Sweeps = 12_000, Seed = (ulong)seed };
                var (means, errors) = NetworkSampler.Run(counts, factors, plan, settings, TestContext.Current.CancellationToken)!.Value;
                for (var v = 0; v < counts.Length; v++)
                {
                    for (var x = 0; x < counts[v]; x++)
                    {
                        var score = (means[v][x] - exact.Marginal(v)[x]) / errors[v][x];
                        Assert.True(Math.Abs(score) < 6.0, $"Seed {seed}: {means[v][x]} with error {errors[v][x]}, exact {exact.Marginal(v)[x]}.");
                        (squares, count) = (squares + (score * score), count + 1);
                    }
                }
            }
        }

        output.WriteLine($"{tried} parts, {count} probabilities, root mean square of the scores {Math.Sqrt(squares / count):0.00}.");
        Assert.True(tried >= 4, $"{tried} parts");
        Assert.InRange(Math.Sqrt(squares / count), 0.0, 1.6);
    }

    // Two founders a sex that nobody looked at, every pair with young that show up to four alleles: a loop in the middle.
    private static (int[] Counts, IReadOnlyList<Factor> Factors)[] Parts(int seed)
    {
        var random = new Testing.Pedigrees.SplitMix64((ulong)seed);
        var pedigree = new SamplePedigree();
        for (var i = 0; i < 4; i++)
        {
            pedigree.Add(i % 2 == 0 ? Sex.Male : Sex.Female);
        }

        // Each of the four pairs has two or three young; of some seeds a pair of these breeds on.
        foreach (var (sire, dam) in new[] { (0, 1), (0, 3), (2, 1), (2, 3) })
        {
            for (var young = 2 + random.Below(2); young > 0; young--)
            {
                pedigree.Add(random.Below(2) == 0 ? Sex.Male : Sex.Female, sire, dam);
            }
        }

        var (son, daughter) = (Last(Sex.Male), Last(Sex.Female));
        if (random.Below(2) == 0 && son > 3 && daughter > 3)
        {
            pedigree.Add(Sex.Male, son, daughter);
        }

        var frequencies = Snake.Loci.SelectMany(l => l.Alleles.Skip(1)).ToDictionary(a => a, a => a.Locus.Id == "s" ? 0.23 : 0.4);
        var animals = GeneDrop.Record(Snake, pedigree, frequencies, (ulong)seed)
            .Select((a, i) => i < 4 || random.Below(5) == 0 ? a with { Observations = [] } : a)
            .ToArray();
        var beliefs = PedigreeBeliefs.Of(Snake, animals, BeliefSettings.Default with { Frequencies = frequencies }, cancel: TestContext.Current.CancellationToken);
        return [.. beliefs.Run.Assembly.Parts()
            .Select(p => (Counts: p.Counts.ToArray(), Factors: (IReadOnlyList<Factor>)p.Factors))
            .Where(p => p.Counts.Aggregate(1.0, (product, c) => product * c) <= MostCombinations)];

        int Last(Sex sex) => pedigree.Sexes.ToList().FindLastIndex(x => x == sex);
    }

    private static IEnumerable<int[]> Combinations(int[] counts)
    {
        var states = new int[counts.Length];
        while (true)
        {
            yield return (int[])states.Clone();
            var at = 0;
            while (at < states.Length && ++states[at] == counts[at])
            {
                states[at++] = 0;
            }

            if (at == states.Length)
            {
                yield break;
            }
        }
    }

    // Two combinations are joined by a sweep if they agree in all that some set holds; counted are the groups that hang together.
    private static int Components(int[][] combinations, List<CutNetwork> sets)
    {
        var parent = Enumerable.Range(0, combinations.Length).ToArray();
        foreach (var set in sets)
        {
            var first = new Dictionary<long, int>();
            for (var i = 0; i < combinations.Length; i++)
            {
                var held = 0L;
                foreach (var v in set.Cut)
                {
                    held = (held * MostStates) + combinations[i][v];
                }

                if (!first.TryAdd(held, i))
                {
                    parent[Root(i)] = Root(first[held]);
                }
            }
        }

        return Enumerable.Range(0, combinations.Length).Count(i => Root(i) == i);

        int Root(int i)
        {
            while (parent[i] != i)
            {
                i = parent[i] = parent[parent[i]];
            }

            return i;
        }
    }

    // The variables that some set leaves free: each can be drawn as whatever the walk is to end at.
    private static IEnumerable<int> WalkEndsAnywhere(int[] counts, List<CutNetwork> sets) =>
        Enumerable.Range(0, counts.Length).Where(v => sets.Exists(s => s.Live.Contains(v)));

    private static string Key(int[] states) => string.Join(',', states);
}
