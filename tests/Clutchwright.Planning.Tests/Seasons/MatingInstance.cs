using Clutchwright.Planning.Seasons;

namespace Clutchwright.Planning.Tests.Seasons;

/// <summary>The mating instances with known optima: a score from 0 to 999 and an inbreeding for each pair, from SplitMix64 with seed 42,
/// row by row: score = next mod 1000, then F = 250 if next mod 10 = 0, else next mod 63, in thousandths.</summary>
internal static class MatingInstance
{
    /// <summary>Each female at most once, each male at most ceil(1.6 females / males) times, at most 3/4 of the females in all, F below 0.125,
    /// mean F at most 0.02; the sum of the scores.</summary>
    public static SeasonProblem Of(int sires, int dams)
    {
        var state = 42UL;
        var pairs = new List<SeasonPair>();
        var scores = new List<double>();
        for (var s = 0; s < sires; s++)
        {
            for (var d = 0; d < dams; d++)
            {
                scores.Add(Next() % 1000);
                var inbreeding = Next() % 10 == 0 ? 250 : Next() % 63;
                pairs.Add(new(s, d) { Inbreeding = inbreeding / 1000.0 });
            }
        }

        var matings = (int)Math.Ceiling(1.6 * dams / sires);
        return new(
            [.. Enumerable.Range(0, sires).Select(i => new SeasonSire($"M{i}", matings))],
            [.. Enumerable.Range(0, dams).Select(i => new SeasonDam($"F{i}"))],
            pairs,
            [new SeasonGoal.Sum("score", 1.0, scores)],
            new SeasonLimits { Clutches = dams * 3 / 4, Inbreeding = 0.1249, MeanInbreeding = 0.02 });

        ulong Next()
        {
            unchecked
            {
                var z = state += 0x9E3779B97F4A7C15UL;
                z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
                z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
                return z ^ (z >> 31);
            }
        }
    }
}
