namespace Clutchwright.Planning.Schemes;

/// <summary>How many tries each step of a plan gets, when all steps must succeed: offspring of a crossing, or clutches of a pair.</summary>
/// <remarks>A step with failure factor q fails with chance q^N after N independent tries. ln(1 - q^N) is concave in N, so the gain of one more
/// try falls from try to try, and giving each next try to the step that gains most from it is best for every total: docs/model/schemes.md
/// has the proof. Immutable.</remarks>
public sealed class RiskShares
{
    private RiskShares(int[] tries, double success)
    {
        Tries = tries;
        Success = success;
        Total = tries.Sum();
    }

    /// <summary>Gets the tries of each step, at least 1, in the order given.</summary>
    public IReadOnlyList<int> Tries { get; }

    /// <summary>Gets the tries of all steps together.</summary>
    public int Total { get; }

    /// <summary>Gets the chance that every step succeeds, in [0, 1].</summary>
    public double Success { get; }

    /// <summary>Finds the fewest tries in all with which all steps succeed with a wanted chance.</summary>
    /// <param name="chances">The chance that one try of each step succeeds, each in (0, 1].</param>
    /// <param name="overall">The wanted chance of all together, in (0, 1).</param>
    /// <returns>The shares; of equally few tries those with the highest chance.</returns>
    /// <remarks>Cost: O(steps) a try.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A chance is out of its range, or more than 2^30 tries are needed.</exception>
    public static RiskShares Least(IReadOnlyList<double> chances, double overall) => LeastOfFailures(Failures(chances), overall);

    /// <summary>Finds the shares of a number of tries with which all steps most likely succeed.</summary>
    /// <param name="chances">The chance that one try of each step succeeds, each in (0, 1].</param>
    /// <param name="total">The tries to share, at least one a step. A step that is certain takes one; tries nobody gains from are not used.</param>
    /// <exception cref="ArgumentOutOfRangeException">A chance is out of its range, or there are fewer tries than steps.</exception>
    public static RiskShares Best(IReadOnlyList<double> chances, int total) => BestOfFailures(Failures(chances), total);

    /// <summary>As <see cref="Least"/>, of the chances that one try fails.</summary>
    /// <param name="failures">For each step the factor by which one more try shrinks the chance of failure, in [0, 1): of clutches the chance
    /// of a clutch without a wanted hatchling (<see cref="Genetics.Clutches.GoodEggs.NoneOf"/>).</param>
    /// <param name="overall">The wanted chance of all together, in (0, 1).</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of its range, or more than 2^30 tries are needed.</exception>
    public static RiskShares LeastOfFailures(IReadOnlyList<double> failures, double overall)
    {
        if (overall is not (> 0.0 and < 1.0))
        {
            throw new ArgumentOutOfRangeException(nameof(overall), overall, "The chance of success lies between 0 and 1.");
        }

        var steps = Steps(failures);
        Fill(steps, most: long.MaxValue, upTo: Math.Log(overall));
        return Shares(steps);
    }

    /// <summary>As <see cref="Best"/>, of the chances that one try fails.</summary>
    /// <param name="failures">As in <see cref="LeastOfFailures"/>.</param>
    /// <param name="total">The tries to share, at least one a step.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of its range, or there are fewer tries than steps.</exception>
    public static RiskShares BestOfFailures(IReadOnlyList<double> failures, int total)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(total, failures.Count);
        var steps = Steps(failures);
        Fill(steps, total, upTo: 0.0);
        return Shares(steps);
    }

    private static double[] Failures(IReadOnlyList<double> chances) => chances.Any(p => p is not (> 0.0 and <= 1.0))
        ? throw new ArgumentOutOfRangeException(nameof(chances), "The chance of a step lies in (0, 1].")
        : [.. chances.Select(p => 1.0 - p)];

    private static Step[] Steps(IReadOnlyList<double> failures) => failures.Any(q => q is not (>= 0.0 and < 1.0))
        ? throw new ArgumentOutOfRangeException(nameof(failures), "The chance that a step fails lies in [0, 1).")
        : [.. failures.Select(Step.Once)];

    // Gives each next try to the step that gains most, until so many are given or the logarithm of success is reached.
    private static void Fill(Step[] steps, long most, double upTo)
    {
        var queue = new PriorityQueue<Step, (double, int)>(steps.Select((s, i) => (s, (-s.Gain, i))));
        var given = (long)steps.Length;
        while (given < most && queue.TryDequeue(out var step, out var key) && step.Gain > 0.0 && !Reaches())
        {
            ArgumentOutOfRangeException.ThrowIfGreaterThan(given, 1 << 30);
            given++;
            step.AddOne();
            queue.Enqueue(step, (-step.Gain, key.Item2));
        }

        bool Reaches() => upTo < 0.0 && steps.Sum(s => s.LogOfSuccess) >= upTo - 1e-12;
    }

    private static RiskShares Shares(Step[] steps) => new([.. steps.Select(s => s.Tries)], Math.Exp(steps.Sum(s => s.LogOfSuccess)));

    private sealed class Step(double failure)
    {
        private double _fails = 1.0;

        public int Tries { get; private set; }

        public double LogOfSuccess => SchemeProblem.LogOfMiss(_fails);

        // ln of the ratio of the chances with and without one more, exact where both are near 1.
        public double Gain => SchemeProblem.LogOfMiss(-_fails * (1.0 - failure) / (1.0 - _fails));

        public static Step Once(double failure)
        {
            var step = new Step(failure);
            step.AddOne();
            return step;
        }

        public void AddOne()
        {
            Tries++;
            _fails *= failure;
        }
    }
}
