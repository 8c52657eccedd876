namespace Clutchwright.Planning.Seasons;

/// <summary>The exact figures of the goals for given pairings.</summary>
internal static class SeasonFigures
{
    // Logarithms of silence closer than this are taken as one.
    private const double Fineness = 1e9;

    /// <summary>The figure of every goal.</summary>
    /// <param name="problem">The season.</param>
    /// <param name="chosen">The pairs of the plan, by their places.</param>
    public static double[] Of(SeasonProblem problem, IReadOnlyList<int> chosen) => [.. problem.Goals.Select(g => Of(problem, g, chosen))];

    /// <summary>The figure of one goal.</summary>
    public static double Of(SeasonProblem problem, SeasonGoal goal, IReadOnlyList<int> chosen) => goal switch
    {
        SeasonGoal.AtLeast g => AtLeast(problem, g, chosen),
        SeasonGoal.Doubt g => Bits(g, chosen),
        SeasonGoal.Sum g => chosen.Sum(p => g.Values[p]),
        _ => throw new ArgumentException("A goal of an unknown kind.", nameof(goal)),
    };

    /// <summary>What the goals weigh in all.</summary>
    public static double Weigh(SeasonProblem problem, IReadOnlyList<double> figures) =>
        problem.Goals.Select((g, i) => g.Weight * figures[i]).Sum();

    /// <summary>The expected information on a claim, in bits, if all clutches are silent with a chance when it holds, and surely when not.</summary>
    public static double Bits(double prior, double silent)
    {
        var missed = prior * silent;
        var quiet = (1.0 - prior) + missed;
        var left = quiet <= 0.0 ? 0.0 : quiet * Entropy(missed / quiet);
        return Math.Max(0.0, Entropy(prior) - left);
    }

    /// <summary>The expected information of clutches on a claim, in bits: the mean over what is seen of their circumstances.</summary>
    public static double Bits(SeasonGoal.Doubt goal, IEnumerable<int> chosen)
    {
        // Circumstances that come to the same chance of silence are one; what is left is a distribution of it.
        var silences = new Dictionary<long, (double Silent, double Chance)> { [0] = (1.0, 1.0) };
        foreach (var silence in chosen.Select(p => goal.Silences[p]).OfType<SeasonSilence>())
        {
            var next = new Dictionary<long, (double Silent, double Chance)>();
            foreach (var (silent, chance) in silences.Values)
            {
                for (var i = 0; i < silence.Chances.Count; i++)
                {
                    if (silence.Chances[i] > 0.0)
                    {
                        var both = silent * silence.Silent[i];
                        var key = both <= 0.0 ? long.MinValue : (long)Math.Round(-Math.Log(both) * Fineness);
                        next[key] = (both, next.GetValueOrDefault(key).Chance + (chance * silence.Chances[i]));
                    }
                }
            }

            silences = next;
        }

        return silences.Values.Sum(s => s.Chance * Bits(goal.Prior, s.Silent));
    }

    /// <summary>The chance of fewer than the goal's count from the clutches of one male, by number: index n holds the chance of exactly n.</summary>
    public static double[] Few(SeasonGoal.AtLeast goal, int sire, IEnumerable<int> clutches)
    {
        var result = new double[goal.Count];
        var list = clutches.Where(p => goal.Yields[p] is not null).ToArray();
        for (var c = 0; c < goal.SireCases[sire].Count; c++)
        {
            var number = new double[goal.Count];
            number[0] = goal.SireCases[sire][c];
            foreach (var pair in list)
            {
                number = Convolve(number, goal.Yields[pair]!.Numbers[c]);
            }

            for (var n = 0; n < number.Length; n++)
            {
                result[n] += number[n];
            }
        }

        return result;
    }

    /// <summary>The sum of two numbers, as far as the first list goes.</summary>
    public static double[] Convolve(double[] few, IReadOnlyList<double> more)
    {
        var result = new double[few.Length];
        for (var a = 0; a < few.Length; a++)
        {
            for (var b = 0; b < more.Count && a + b < result.Length; b++)
            {
                result[a + b] += few[a] * more[b];
            }
        }

        return result;
    }

    // What one male may be he is in all his clutches: the cases are mixed only after his clutches are put together.
    private static double AtLeast(SeasonProblem problem, SeasonGoal.AtLeast goal, IReadOnlyList<int> chosen)
    {
        var few = new double[goal.Count];
        few[0] = 1.0;
        foreach (var bySire in chosen.GroupBy(p => problem.Pairs[p].Sire).OrderBy(g => g.Key))
        {
            few = Convolve(few, Few(goal, bySire.Key, bySire));
        }

        return Math.Clamp(1.0 - few.Sum(), 0.0, 1.0);
    }

    private static double Entropy(double p) => p is <= 0.0 or >= 1.0 ? 0.0 : -((p * Math.Log2(p)) + ((1.0 - p) * Math.Log2(1.0 - p)));
}
