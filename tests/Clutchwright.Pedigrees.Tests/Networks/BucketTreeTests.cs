using Clutchwright.Pedigrees.Networks;
using CsCheck;
using Xunit;

namespace Clutchwright.Pedigrees.Tests.Networks;

/// <summary>Networks against every combination of states written out.</summary>
public class BucketTreeTests
{
    [Fact]
    public void LogTotal_AnyNetwork_IsTheSumOverAllCombinations() => SmallNetwork.Any.Sample(
        network => AssertClose(Math.Log(network.Combinations().Sum(c => c.Weight)), Solve(network).LogTotal, 1e-10), iter: 2000);

    [Fact]
    public void Marginal_AnyNetwork_IsTheSumOverAllCombinations() => SmallNetwork.Any.Sample(
        network =>
        {
            var tree = Solve(network);
            var total = network.Combinations().Sum(c => c.Weight);
            if (total == 0.0)
            {
                Assert.Throws<InvalidOperationException>(() => tree.Marginal(0));
                return;
            }

            for (var v = 0; v < network.Counts.Length; v++)
            {
                for (var x = 0; x < network.Counts[v]; x++)
                {
                    Assert.Equal(network.Combinations().Where(c => c.States[v] == x).Sum(c => c.Weight) / total, tree.Marginal(v)[x], 1e-12);
                }
            }
        },
        iter: 1000);

    [Fact]
    public void Draw_ManyTimes_MeetsEveryCombinationAsOftenAsItWeighs()
    {
        const int draws = 20_000;
        SmallNetwork.Any.Sample(
            network =>
            {
                var tree = Solve(network);
                var total = network.Combinations().Sum(c => c.Weight);
                if (total == 0.0)
                {
                    return;
                }

                var met = new Dictionary<string, int>();
                var states = new int[network.Counts.Length];
                var random = 7UL;
                for (var i = 0; i < draws; i++)
                {
                    tree.Draw(states, ref random);
                    var key = string.Join(' ', states);
                    met[key] = met.GetValueOrDefault(key) + 1;
                }

                foreach (var (combination, weight) in network.Combinations())
                {
                    var share = weight / total;
                    var count = met.GetValueOrDefault(string.Join(' ', combination));
                    Assert.True(share > 0.0 || count == 0, "What is impossible was drawn.");

                    // Six standard errors, and room for what is drawn hardly ever.
                    Assert.Equal(draws * share, count, (6.0 * Math.Sqrt(draws * share * (1.0 - share))) + 12.0);
                }
            },
            iter: 40,
            seed: "0N0XIzNsQ0O2");
    }

    [Fact]
    public void Draw_AfterReadingBack_Throws()
    {
        var tree = BucketTree.Of([2], [new Factor([0], [1.0, 3.0])], EliminationPlan.For([2], [[0]]), TestContext.Current.CancellationToken);
        Assert.Equal([0.25, 0.75], tree.Marginal(0));

        Assert.Throws<InvalidOperationException>(() =>
        {
            var random = 1UL;
            tree.Draw(new int[1], ref random);
        });
    }

    private static BucketTree Solve(SmallNetwork network) =>
        BucketTree.Of(network.Counts, network.Factors, EliminationPlan.For(network.Counts, network.Factors.Select(f => f.Variables)));

    private static void AssertClose(double expected, double actual, double tolerance) =>
        Assert.True(expected == actual || Math.Abs(expected - actual) <= tolerance, $"{expected} is not {actual}.");
}
