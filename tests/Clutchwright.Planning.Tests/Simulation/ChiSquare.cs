namespace Clutchwright.Planning.Tests.Simulation;

/// <summary>Counts against exact chances: Pearson's sum lies within six standard errors of its mean.</summary>
internal static class ChiSquare
{
    public static void Agrees(IReadOnlyList<double> chances, IReadOnlyList<long> counts)
    {
        var total = counts.Sum();
        Assert.All(chances.Zip(counts), p => Assert.True(p.First > 0.0 || p.Second == 0));

        // Classes expected less than five times are put together.
        var rare = chances.Select((p, i) => (p, i)).Where(c => c.p > 0.0 && c.p * total < 5.0).Select(c => c.i).ToHashSet();
        var classes = chances.Select((p, i) => (Chance: p, Count: counts[i], i)).Where(c => c.Chance > 0.0 && !rare.Contains(c.i))
            .Select(c => (c.Chance, c.Count))
            .Append((Chance: rare.Sum(i => chances[i]), Count: rare.Sum(i => counts[i])))
            .Where(c => c.Chance > 0.0)
            .ToArray();
        var sum = classes.Sum(c => Math.Pow(c.Count - (c.Chance * total), 2) / (c.Chance * total));
        var freedom = classes.Length - 1;
        Assert.InRange(sum, 0.0, freedom + (6.0 * Math.Sqrt(2.0 * Math.Max(1, freedom))) + 6.0);
    }
}
