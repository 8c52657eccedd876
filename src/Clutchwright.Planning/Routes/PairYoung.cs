using Clutchwright.Genetics.Loci;

namespace Clutchwright.Planning.Routes;

/// <summary>What can be held back from a pairing of two classes.</summary>
internal sealed class PairYoung
{
    private readonly RouteWorld _world;
    private readonly int[][][][] _options;
    private readonly bool _isWildUseful;

    public PairYoung(RouteWorld world)
    {
        _world = world;
        _isWildUseful = world.IsWildUseful;
        _options = [.. world.Groups.Select(Options)];
    }

    /// <summary>The classes of one sex worth holding back, each with the chance per good egg that a hatchling looks right, and is.</summary>
    public void Of(int sire, int dam, Sex sex, double least, List<YoungClass> into)
    {
        into.Clear();
        Walk(0, 0, _world.SexInGroups ? 1.0 : 0.5, 1.0);

        void Walk(int group, int of, double seen, double met)
        {
            if (seen < least)
            {
                return;
            }

            if (group == _world.Groups.Count)
            {
                Add(of, seen, _world.SexInGroups ? met : met * 0.5);
                return;
            }

            var states = _world.Groups[group];
            var (s, d) = (_world.StateAt(sire, Sex.Male, group), _world.StateAt(dam, Sex.Female, group));
            foreach (var option in _options[group][(s * states.Count(Sex.Female)) + d][GroupStates.Index(sex)])
            {
                var chances = states.ChancesOf(states.AtLeast(sex, option));
                Walk(group + 1, of + (option * _world.Stride(sex, group)), seen * chances.Seen(s, d, sex, hidden: false), met * chances.Met(s, d, sex, hidden: false));
            }
        }

        void Add(int of, double seen, double met)
        {
            if (of == 0 && !_isWildUseful)
            {
                return;
            }

            var hidden = _world.HiddenIn(sex, of);
            if (hidden != 0)
            {
                seen = _world.SexInGroups ? 1.0 : 0.5;
                for (var g = 0; g < _world.Groups.Count; g++)
                {
                    var states = _world.Groups[g];
                    var chances = states.ChancesOf(states.AtLeast(sex, _world.StateAt(of, sex, g)));
                    seen *= chances.Seen(_world.StateAt(sire, Sex.Male, g), _world.StateAt(dam, Sex.Female, g), sex, (hidden & (1u << g)) != 0);
                }
            }

            if (met > 0.0 && seen >= least)
            {
                into.Add(new(of, seen, met / seen, 0.0, IsIdle: false));
            }
        }
    }

    /// <summary>The chance per good egg that a hatchling looks like the target, and that it is.</summary>
    public (double Seen, double Met) Of(int sire, int dam, RouteTarget target)
    {
        var (seen, met) = (0.0, 0.0);
        foreach (var sex in RouteWorld.Sexes)
        {
            if (target.Wanted.Sex is { } only && only != sex)
            {
                continue;
            }

            var (s, m) = _world.SexInGroups ? (1.0, 1.0) : (0.5, 0.5);
            for (var g = 0; g < _world.Groups.Count && s > 0.0; g++)
            {
                var chances = _world.Groups[g].ChancesOf(target.Requirements[g]);
                var (a, b) = (_world.StateAt(sire, Sex.Male, g), _world.StateAt(dam, Sex.Female, g));
                s *= chances.Seen(a, b, sex, (target.Hidden & (1u << g)) != 0);
                m *= chances.Met(a, b, sex, (target.Hidden & (1u << g)) != 0);
            }

            seen += s;
            met += m;
        }

        return (seen, met);
    }

    // A state is worth asking for if no better one is as easily had.
    private static int[][][] Options(GroupStates group)
    {
        var females = group.Count(Sex.Female);
        var result = new int[group.Count(Sex.Male) * females][][];
        for (var pair = 0; pair < result.Length; pair++)
        {
            result[pair] = new int[2][];
            foreach (var sex in RouteWorld.Sexes)
            {
                var (s, d) = (pair / females, pair % females);
                var possible = Enumerable.Range(0, group.AskableCount(sex)).Where(o => Chances(o).Met(s, d, sex, hidden: false) > 0.0).ToArray();
                result[pair][GroupStates.Index(sex)] = [.. possible.Where(o => !possible.Any(better =>
                    better != o
                    && group.Accepts(group.AtLeast(sex, o), sex, better)
                    && !group.Accepts(group.AtLeast(sex, better), sex, o)
                    && Chances(better).Met(s, d, sex, hidden: false) >= Chances(o).Met(s, d, sex, hidden: false) - 1e-12))];

                StepChances Chances(int option) => group.ChancesOf(group.AtLeast(sex, option));
            }
        }

        return result;
    }
}

/// <summary>A class of young worth holding back.</summary>
/// <param name="Class">The class.</param>
/// <param name="Seen">The chance per good egg of a hatchling that looks right.</param>
/// <param name="Trust">The chance that it is.</param>
/// <param name="Fail">The chance that one female's season gives none that looks right.</param>
/// <param name="IsIdle">Whether an animal as good is there already: from the start, or the parent of that sex.</param>
internal readonly record struct YoungClass(int Class, double Seen, double Trust, double Fail, bool IsIdle);
