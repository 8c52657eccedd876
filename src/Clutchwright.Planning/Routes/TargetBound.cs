using Clutchwright.Genetics.Loci;

namespace Clutchwright.Planning.Routes;

/// <summary>What can come of a class at best: the success of one season with the best mate there could be, and the seasons until then.</summary>
internal sealed class TargetBound
{
    private readonly RouteWorld _world;
    private readonly double[][][][] _best;
    private readonly Dictionary<int, (double Success, int Wait)>[] _known = [[], []];
    private readonly int _generation;

    public TargetBound(RouteWorld world)
    {
        _world = world;
        _generation = Math.Min(world.Problem.Settings.MaleMaturity, world.Problem.Settings.FemaleMaturity);
        _best = [.. world.Targets.Select(t => world.Groups.Select((g, i) => Best(g, t, i)).ToArray())];
    }

    public (double Success, int Wait) Of(Sex sex, int of)
    {
        var known = _known[GroupStates.Index(sex)];
        if (!known.TryGetValue(of, out var bound))
        {
            var chance = 0.0;
            for (var t = 0; t < _best.Length; t++)
            {
                var product = 1.0;
                for (var g = 0; g < _world.Groups.Count; g++)
                {
                    product *= _best[t][g][GroupStates.Index(sex)][_world.StateAt(of, sex, g)];
                }

                // Where no group tells the sex and one is asked for, half of the young are of it.
                chance = Math.Max(chance, !_world.SexInGroups && _world.Targets[t].Wanted.Sex is not null ? product * 0.5 : product);
            }

            // One generation more where the target cannot be had at once: then from an animal as good as can be.
            bound = chance > 0.0 ? (1.0 - _world.NoneOf(Math.Min(chance, 1.0)), 0) : (1.0 - _world.NoneOf(1.0), _generation);
            known.Add(of, bound);
        }

        return bound;
    }

    /// <summary>How near a class is to the nearest target: the logarithm of what the best mate could give with it, a missing locus counted as rare.</summary>
    public double Closeness(Sex sex, int of)
    {
        var best = double.NegativeInfinity;
        foreach (var target in _best)
        {
            var sum = 0.0;
            for (var g = 0; g < _world.Groups.Count; g++)
            {
                sum += Math.Log(Math.Max(target[g][GroupStates.Index(sex)][_world.StateAt(of, sex, g)], 1.0 / 16.0));
            }

            best = Math.Max(best, sum);
        }

        return best;
    }

    // For each state of each sex the most of the target that any mate can give with it.
    private static double[][] Best(GroupStates group, RouteTarget target, int place)
    {
        var chances = group.ChancesOf(target.Requirements[place]);
        double[][] best = [new double[group.Count(Sex.Female)], new double[group.Count(Sex.Male)]];
        for (var s = 0; s < group.Count(Sex.Male); s++)
        {
            for (var d = 0; d < group.Count(Sex.Female); d++)
            {
                // Seen, since more may look right than are; and both sexes of young where the group tells them.
                var sum = 0.0;
                foreach (var sex in RouteWorld.Sexes)
                {
                    var here = Math.Max(chances.Seen(s, d, sex, hidden: false), chances.Seen(s, d, sex, hidden: true));
                    sum = group.TellsSex ? sum + here : Math.Max(sum, here);
                }

                best[0][d] = Math.Max(best[0][d], sum);
                best[1][s] = Math.Max(best[1][s], sum);
            }
        }

        return best;
    }
}
