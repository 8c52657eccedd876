using Clutchwright.Genetics.Crosses;

namespace Clutchwright.Genetics.Tests.Crosses;

/// <summary>What a mean cannot pass, over all ways to tie two doubts.</summary>
public class CouplingBoundTests
{
    private const int Trials = 500;
    private const int Parts = 60;

    // Two carriers of chance a and b are carriers together with min(a, b) at most.
    [Fact]
    public void Most_TwoPossibleCarriers_IsTheSmallerChance()
    {
        var (mean, positive) = new CouplingBound([0.0, 0.0, 0.0, 0.25], 2, 2).Most([0.4, 0.6], [0.7, 0.3]);

        Assert.Equal((0.075, 0.3), (mean, positive));
    }

    [Fact]
    public void Most_OneHeight_IsTheLargestFlow()
    {
        for (var seed = 1; seed <= Trials; seed++)
        {
            var random = new Random(seed);
            var (first, second) = (Whole(random, 1 + random.Next(5)), Whole(random, 1 + random.Next(5)));
            var allowed = Enumerable.Range(0, first.Length * second.Length).Select(_ => random.Next(2)).ToArray();

            var (mean, positive) = new CouplingBound(Array.ConvertAll(allowed, a => 0.5 * a), first.Length, second.Length).Most(Share(first), Share(second));

            var flow = LargestFlow(first, second, allowed) / (double)Parts;
            Assert.Equal(flow, positive, 1e-12);
            Assert.Equal(0.5 * flow, mean, 1e-12);
        }
    }

    [Fact]
    public void Most_AnyHeights_IsNotPassedByAnyJointDistribution()
    {
        for (var seed = 1; seed <= Trials; seed++)
        {
            var random = new Random(seed);
            var (few, many) = (1 + random.Next(5), 1 + random.Next(12));
            var values = Enumerable.Range(0, few * many).Select(_ => random.Next(5) / 4.0).ToArray();
            var joint = Share(Whole(random, few * many));

            var (mean, positive) = new CouplingBound(values, few, many).Most(
                [.. Enumerable.Range(0, few).Select(f => Enumerable.Range(0, many).Sum(m => joint[(f * many) + m]))],
                [.. Enumerable.Range(0, many).Select(m => Enumerable.Range(0, few).Sum(f => joint[(f * many) + m]))]);

            Assert.True(mean >= joint.Zip(values, (w, v) => w * v).Sum() - 1e-12, $"Seed {seed}.");
            Assert.True(positive >= joint.Where((_, i) => values[i] > 0.0).Sum() - 1e-12, $"Seed {seed}.");
        }
    }

    private static int[] Whole(Random random, int count)
    {
        var parts = new int[count];
        for (var i = 0; i < Parts; i++)
        {
            parts[random.Next(count)]++;
        }

        return parts;
    }

    private static double[] Share(int[] parts) => Array.ConvertAll(parts, p => p / (double)Parts);

    // The slow twin: one part after the other along any path that still takes it [Ford and Fulkerson, textbook].
    private static int LargestFlow(int[] first, int[] second, int[] allowed)
    {
        var (left, right, flow) = ((int[])first.Clone(), (int[])second.Clone(), new int[first.Length, second.Length]);
        var total = 0;
        while (true)
        {
            var seen = new bool[second.Length];
            var start = Array.FindIndex(Enumerable.Range(0, first.Length).ToArray(), f => left[f] > 0 && Push(f, seen));
            if (start < 0)
            {
                return total;
            }

            left[start]--;
            total++;
        }

        bool Push(int f, bool[] seen)
        {
            for (var s = 0; s < second.Length; s++)
            {
                if (allowed[(f * second.Length) + s] == 0 || seen[s])
                {
                    continue;
                }

                seen[s] = true;
                if (right[s] > 0)
                {
                    right[s]--;
                    flow[f, s]++;
                    return true;
                }

                for (var other = 0; other < first.Length; other++)
                {
                    if (flow[other, s] > 0 && Push(other, seen))
                    {
                        flow[other, s]--;
                        flow[f, s]++;
                        return true;
                    }
                }
            }

            return false;
        }
    }
}
