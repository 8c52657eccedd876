using System.Collections.Concurrent;
using Clutchwright.Pedigrees.Networks;
using Clutchwright.Testing;
using CsCheck;
using Xunit;

namespace Clutchwright.Pedigrees.Tests.Networks;

/// <summary>Orders of elimination against elimination by hand.</summary>
public class EliminationPlanTests
{
    [Fact]
    public void For_AnyNetwork_ListsEachVariableOnceAndCountsItsTables() => SmallNetwork.Any.Sample(
        network =>
        {
            var plan = EliminationPlan.For(network.Counts, network.Factors.Select(f => f.Variables));

            Assert.Equal(Enumerable.Range(0, network.Counts.Length), plan.Order.Order());
            Assert.Equal(Entries(network, plan.Order), plan.Entries, 1e-9);
        },
        iter: 1000);

    [Fact]
    public void For_Chain_NeedsNoTableOfMoreThanTwo()
    {
        int[][] scopes = [[0, 1], [1, 2], [2, 3], [3, 4]];

        var plan = EliminationPlan.For([3, 3, 3, 3, 3], scopes);

        // Four tables of two, and the last variable alone.
        Assert.Equal((4 * 9) + 3, plan.Entries);
    }

    [Fact]
    public void For_Square_NeedsTwoTablesOfThree()
    {
        var plan = EliminationPlan.For([2, 2, 2, 2], [[0, 1], [1, 2], [2, 3], [3, 0]]);

        // One tie is added: 8 + 8 + 4 + 2.
        Assert.Equal(22.0, plan.Entries);
    }

    // Greedy rules promise nothing of one network: the networks are counted, and judged together.
    [Fact]
    public void For_SmallNetworks_IsHardlyWorseThanTheBestOrder()
    {
        var times = new ConcurrentBag<double>();

        SmallNetwork.Any.Where(n => n.Counts.Length <= 6).SampleCounted(
            2_000,
            network => times.Add(
                EliminationPlan.For(network.Counts, network.Factors.Select(f => f.Variables)).Entries / Orders(network.Counts.Length).Min(o => Entries(network, o))));

        Assert.Equal(2_000, times.Count);
        Assert.InRange(times.Min(), 1.0, 1.0 + 1e-12);
        Assert.InRange(times.Average(), 1.0, 1.06);
        Assert.InRange(times.Max(), 1.0, 2.0);
    }

    private static double Entries(SmallNetwork network, IReadOnlyList<int> order)
    {
        var tables = network.Factors.Select(f => f.Variables.ToHashSet()).ToList();
        var entries = 0.0;
        foreach (var v in order)
        {
            var table = tables.Where(t => t.Contains(v)).Aggregate(new HashSet<int> { v }, (all, t) => [.. all, .. t]);
            entries += table.Aggregate(1.0, (e, u) => e * network.Counts[u]);
            tables.RemoveAll(t => t.Contains(v));
            table.Remove(v);
            tables.Add(table);
        }

        return entries;
    }

    private static IEnumerable<int[]> Orders(int count) => count == 0
        ? [[]]
        : Orders(count - 1).SelectMany(o => Enumerable.Range(0, count).Select(i => (int[])[.. o[..i], count - 1, .. o[i..]]));
}
