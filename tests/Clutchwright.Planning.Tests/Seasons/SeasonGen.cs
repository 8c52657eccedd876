using Clutchwright.Planning.Seasons;

namespace Clutchwright.Planning.Tests.Seasons;

/// <summary>Seasons at random, from a seed.</summary>
internal static class SeasonGen
{
    /// <summary>A small season with every kind of goal, limit, pin and bar, now and then.</summary>
    public static SeasonProblem Small(int seed)
    {
        var random = new Random(seed);
        var sires = Enumerable.Range(0, random.Next(1, 4)).Select(i => new SeasonSire($"M{i}", random.Next(0, 4))
        {
            IsReady = random.Next(10) > 0, IsBanned = random.Next(15) == 0, IsPinned = random.Next(15) == 0,
        }).ToArray();
        var dams = Enumerable.Range(0, random.Next(1, 6)).Select(i => new SeasonDam($"F{i}")
        {
            IsReady = random.Next(10) > 0, IsBanned = random.Next(15) == 0, IsPinned = random.Next(15) == 0,
        }).ToArray();
        var pairs = new List<SeasonPair>();
        for (var s = 0; s < sires.Length; s++)
        {
            for (var d = 0; d < dams.Length; d++)
            {
                if (random.Next(8) > 0)
                {
                    pairs.Add(new(s, d)
                    {
                        Inbreeding = random.Next(3) == 0 ? random.Next(5) / 16.0 : 0.0,
                        Eggs = 3 + random.Next(5),
                        Hatchlings = 2 + random.Next(4),
                        IsDangerous = random.Next(10) == 0,
                        IsLifted = random.Next(3) == 0,
                        IsBanned = random.Next(20) == 0,
                        IsPinned = random.Next(40) == 0,
                    });
                }
            }
        }

        var goals = Enumerable.Range(0, random.Next(1, 4)).Select(i => Goal(random, $"G{i}", sires.Length, pairs)).ToArray();
        return new(sires, dams, pairs, goals, new SeasonLimits
        {
            Clutches = random.Next(4) == 0 ? random.Next(1, 5) : null,
            Eggs = random.Next(4) == 0 ? random.Next(5, 25) : null,
            Hatchlings = random.Next(4) == 0 ? random.Next(5, 20) : null,
            Inbreeding = random.Next(3) == 0 ? 0.125 : null,
            MeanInbreeding = random.Next(4) == 0 ? 0.05 : null,
        });
    }

    /// <summary>A season without bars: many females, fewer males, goals with a want each that few carry, every fifth a value.</summary>
    public static SeasonProblem Large(int seed, int dams, int sires, int goals = 5, int mostCount = 1)
    {
        var random = new Random(seed);
        var males = Enumerable.Range(0, sires).Select(i => new SeasonSire($"M{i}", 2 + random.Next(6))).ToArray();
        var females = Enumerable.Range(0, dams).Select(i => new SeasonDam($"F{i}")).ToArray();
        var pairs = new List<SeasonPair>();
        for (var s = 0; s < sires; s++)
        {
            for (var d = 0; d < dams; d++)
            {
                pairs.Add(new(s, d) { Inbreeding = random.Next(10) == 0 ? 0.25 : random.Next(64) / 1000.0, Eggs = 5.0, Hatchlings = 4.0 });
            }
        }

        return new(males, females, pairs, [.. Enumerable.Range(0, goals).Select(i => Wide(random, i, sires, dams, pairs, mostCount))], new SeasonLimits
        {
            Clutches = dams * 3 / 4, Inbreeding = 0.125, MeanInbreeding = 0.02,
        });
    }

    private static SeasonGoal Goal(Random random, string name, int sires, List<SeasonPair> pairs)
    {
        double? least = random.Next(10) == 0 ? random.Next(1, 9) / 10.0 : null;
        switch (random.Next(4))
        {
            case 0:
                return new SeasonGoal.Sum(name, random.Next(1, 10) / 10.0, [.. pairs.Select(_ => random.Next(0, 12) / 4.0)]) { Least = least };
            case 1:
                return new SeasonGoal.Doubt(name, random.Next(1, 10), random.Next(0, 11) / 10.0, [.. pairs.Select(_ => Silence(random))]) { Least = least };
            default:
                var cases = Enumerable.Range(0, sires).Select(_ => random.Next(3) switch
                {
                    0 => (IReadOnlyList<double>)[1.0],
                    1 => [2.0 / 3.0, 1.0 / 3.0],
                    _ => [0.5, 0.3, 0.2],
                }).ToArray();
                return new SeasonGoal.AtLeast(name, random.Next(1, 10), random.Next(1, 4), cases, [.. pairs.Select(p => random.Next(4) == 0
                    ? null
                    : new SeasonYield([.. cases[p.Sire].Select(_ => Numbers(random, 3))]))]) { Least = least };
        }
    }

    private static SeasonSilence? Silence(Random random) => random.Next(4) switch
    {
        0 => null,
        1 => new([1.0], [random.Next(0, 10) / 10.0]),
        _ => new([0.3, 0.5, 0.2], [1.0, random.Next(3, 10) / 10.0, random.Next(0, 6) / 10.0]),
    };

    private static double[] Numbers(Random random, int most)
    {
        if (random.Next(4) == 0)
        {
            return [1.0];
        }

        var weights = Enumerable.Range(0, most + 1).Select(_ => (double)random.Next(0, 6)).ToArray();
        weights[0] += 1.0;
        var total = weights.Sum();
        return Array.ConvertAll(weights, w => w / total);
    }

    // A want that some males and some females carry, some of the males perhaps: a chance by egg of 1/4, 1/2 or none, five eggs.
    private static SeasonGoal Wide(Random random, int place, int sires, int dams, List<SeasonPair> pairs, int mostCount)
    {
        if (place % 5 == 4)
        {
            return new SeasonGoal.Sum($"value {place}", 0.02, [.. pairs.Select(_ => random.Next(0, 100) / 100.0)]);
        }

        var cases = new IReadOnlyList<double>[sires];
        var male = new double[sires][];
        for (var s = 0; s < sires; s++)
        {
            (cases[s], male[s]) = Male(random.Next(4));
        }

        var female = Enumerable.Range(0, dams).Select(_ => random.Next(24) switch { 0 => 0.25, 1 => 0.125, 2 => 0.05, _ => 0.0 }).ToArray();
        return new SeasonGoal.AtLeast($"want {place}", 1 + random.Next(5), place % 5 == 3 ? mostCount : 1, cases, [.. pairs.Select(p =>
            female[p.Dam] == 0.0 || Array.TrueForAll(male[p.Sire], m => m == 0.0)
                ? null
                : new SeasonYield([.. male[p.Sire].Select(m => Binomial(5, m * female[p.Dam]))]))]);
    }

    private static (double[] Weights, double[] PerEgg) Male(int kind) => kind switch
    {
        0 => ([1.0], [1.0]),
        1 => ([2.0 / 3.0, 1.0 / 3.0], [0.5, 0.0]),
        2 => ([0.5, 0.5], [0.5, 0.0]),
        _ => ([1.0], [0.0]),
    };

    private static double[] Binomial(int n, double p)
    {
        var result = new double[n + 1];
        result[0] = 1.0;
        for (var i = 0; i < n; i++)
        {
            for (var k = i + 1; k >= 0; k--)
            {
                result[k] = (result[k] * (1.0 - p)) + (k > 0 ? result[k - 1] * p : 0.0);
            }
        }

        return result;
    }
}
