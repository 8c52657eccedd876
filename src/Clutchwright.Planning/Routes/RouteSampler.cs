using Clutchwright.Genetics.Loci;
using Clutchwright.Planning.Simulation;

namespace Clutchwright.Planning.Routes;

/// <summary>Draws founders, clutches and young of one try from a counted stream.</summary>
internal sealed class RouteSampler(RouteWorld world, RouteDraws draws, ulong seed)
{
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

    /// <summary>The clutch of one paired female this season.</summary>
    public ClutchDraw Clutch() => draws.Clutches.Draw(_random);

    /// <summary>One good egg of a pair: what hatches, or <c>null</c> where its genotype does not let it.</summary>
    public (Sex Sex, int[] States)? Egg(int[] sire, int[] dam)
    {
        var sex = _random.Next() >> 63 == 0 ? Sex.Female : Sex.Male;
        var states = new int[world.Groups.Count];
        for (var g = 0; g < states.Length; g++)
        {
            if (world.Groups[g].TellsSex)
            {
                if (draws.SexAndState(g, sire[g], dam[g], _random) is not var (told, state))
                {
                    return null;
                }

                (sex, states[g]) = (told, state);
            }
        }

        for (var g = 0; g < states.Length; g++)
        {
            if (!world.Groups[g].TellsSex && (states[g] = draws.State(g, sire[g], dam[g], sex, _random)) < 0)
            {
                return null;
            }
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
}
