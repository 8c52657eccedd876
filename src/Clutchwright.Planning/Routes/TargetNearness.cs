using Clutchwright.Genetics.Loci;

namespace Clutchwright.Planning.Routes;

/// <summary>How near classes are to the target: which are tried first.</summary>
internal sealed class TargetNearness
{
    private readonly RouteWorld _world;
    private readonly double[][][][] _best;

    public TargetNearness(RouteWorld world)
    {
        _world = world;
        _best = [.. world.Targets.Select(t => world.Groups.Select((g, i) => Best(g, t, i)).ToArray())];
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
                sum += Math.Log(Math.Max(target[g][GroupStates.Index(sex)][_world.StatesOf(sex, of)[g]], 1.0 / 16.0));
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
