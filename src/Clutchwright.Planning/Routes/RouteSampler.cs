using Clutchwright.Genetics.Loci;
using Clutchwright.Planning.Simulation;

namespace Clutchwright.Planning.Routes;

/// <summary>Draws founders, clutches and young of one try from a counted stream.</summary>
internal sealed class RouteSampler(RouteWorld world, ulong seed)
{
    private readonly double[] _eggs = [.. world.Problem.Settings.Clutch.Chances.Select(p => p.Value)];
    private readonly double _laying = world.Problem.Settings.Laying;
    private readonly double _rearing = world.Problem.Settings.Rearing;
    private readonly CountedRandom _random = new(seed);

    public void Start(ulong stream) => _random.Restart(stream);

    public bool Rears() => _rearing >= 1.0 || _random.NextShare() < _rearing;

    /// <summary>What a founder really is at the groups that count.</summary>
    public int[] Founder(RouteAnimal animal)
    {
        var states = new int[world.Groups.Count];
        for (var g = 0; g < states.Length; g++)
        {
            var weights = animal.Belief[world.Groups[g].Group];
            var left = weights.Count == 1 ? 0.0 : _random.NextShare();
            var chosen = weights[^1].Value;
            foreach (var (diplotype, weight) in weights)
            {
                left -= weight.Value;
                if (left < 0.0)
                {
                    chosen = diplotype;
                    break;
                }
            }

            states[g] = world.Groups[g].StateOf(animal.Sex, chosen);
        }

        return states;
    }

    /// <summary>The good eggs of one paired female this season; <c>null</c>: she does not lay.</summary>
    public int? Eggs()
    {
        if (_laying < 1.0 && _random.NextShare() >= _laying)
        {
            return null;
        }

        // That she may not lay is part of the clutch's numbers; here she does.
        var left = _random.NextShare() * _laying;
        for (var n = 0; n < _eggs.Length; n++)
        {
            left -= n == 0 ? Math.Max(0.0, _eggs[0] - (1.0 - _laying)) : _eggs[n];
            if (left < 0.0)
            {
                return n;
            }
        }

        return _eggs.Length - 1;
    }

    /// <summary>One egg of a pair: what hatches, or <c>null</c> where its genotype does not let it.</summary>
    public (Sex Sex, int[] States)? Egg(int[] sire, int[] dam)
    {
        var sex = _random.Next() >> 63 == 0 ? Sex.Female : Sex.Male;
        var states = new int[world.Groups.Count];
        var told = false;
        for (var g = 0; g < states.Length; g++)
        {
            var group = world.Groups[g];
            if (!group.TellsSex)
            {
                continue;
            }

            told = true;
            var left = _random.NextShare();
            var found = false;
            foreach (var tried in RouteWorld.Sexes)
            {
                var young = group.Children(sire[g], dam[g], tried);
                for (var s = 0; s < young.Length && !found; s++)
                {
                    left -= young[s];
                    if (left < 0.0)
                    {
                        (sex, states[g], found) = (tried, s, true);
                    }
                }
            }

            if (!found)
            {
                return null;
            }
        }

        for (var g = 0; g < states.Length; g++)
        {
            var group = world.Groups[g];
            if (told && group.TellsSex)
            {
                continue;
            }

            var young = group.Children(sire[g], dam[g], sex);
            var left = _random.NextShare();
            var state = -1;
            for (var s = 0; s < young.Length; s++)
            {
                left -= young[s];
                if (left < 0.0)
                {
                    state = s;
                    break;
                }
            }

            if (state < 0)
            {
                // The sum of a certain outcome may fall short of 1 by rounding.
                if (left > 1e-12)
                {
                    return null;
                }

                state = LastOf(young);
            }

            states[g] = state;
        }

        return (sex, states);
    }

    /// <summary>Whether a hatchling looks as if it met a requirement at every group.</summary>
    public bool LooksRight(Sex sex, int[] states, IReadOnlyList<int> requirements, uint hidden)
    {
        for (var g = 0; g < states.Length; g++)
        {
            if ((hidden & (1u << g)) != 0)
            {
                continue;
            }

            var share = world.Groups[g].ChancesOf(requirements[g]).Held(sex, states[g]);
            if (share <= 0.0 || (share < 1.0 && _random.NextShare() >= share))
            {
                return false;
            }
        }

        return true;
    }

    private static int LastOf(ReadOnlySpan<double> young)
    {
        for (var s = young.Length - 1; s > 0; s--)
        {
            if (young[s] > 0.0)
            {
                return s;
            }
        }

        return 0;
    }
}
