using Clutchwright.Genetics.Loci;

namespace Clutchwright.Planning.Routes;

/// <summary>What can be held back from a pairing of two classes.</summary>
/// <remarks>Not for two threads at once: it has buffers of its own.</remarks>
internal sealed class PairYoung
{
    private readonly RouteWorld _world;
    private readonly YoungOption[][][][] _options;
    private readonly YoungOption[][] _here;
    private readonly bool[][][] _canFinish;
    private readonly bool _isWildUseful;

    public PairYoung(RouteWorld world)
    {
        _world = world;
        _isWildUseful = world.IsWildUseful;
        _options = [.. world.Groups.Select((g, i) => Options(g, i))];
        _here = new YoungOption[world.Groups.Count][];
        _canFinish = [.. world.Groups.Select((g, i) => Finishing(g, i))];
    }

    /// <summary>The classes of one sex worth holding back, each with the chance per good egg that a hatchling looks right, and is.</summary>
    /// <param name="sire">The sire's class.</param>
    /// <param name="dam">The dam's class.</param>
    /// <param name="sex">The sex of the young.</param>
    /// <param name="least">The least chance to look right that is of use.</param>
    /// <param name="isLast">Whether the young can have the target only, for want of time.</param>
    /// <param name="into">The classes.</param>
    public void Of(int sire, int dam, Sex sex, double least, bool isLast, List<YoungClass> into)
    {
        into.Clear();
        var (sires, dams) = (_world.StatesOf(Sex.Male, sire), _world.StatesOf(Sex.Female, dam));
        for (var g = 0; g < _here.Length; g++)
        {
            _here[g] = _options[g][(sires[g] * _world.Groups[g].Count(Sex.Female)) + dams[g]][GroupStates.Index(sex)];
        }

        Walk(0, 0, _world.SexInGroups ? 1.0 : 0.5, _world.SexInGroups ? 1.0 : 0.5);

        void Walk(int group, int of, double seen, double met)
        {
            if (group == _here.Length)
            {
                Add(of, seen, met);
                return;
            }

            foreach (var option in _here[group])
            {
                var here = seen * option.Seen;
                if (here >= least && (!isLast || _canFinish[group][GroupStates.Index(sex)][option.State]))
                {
                    Walk(group + 1, of + option.Place, here, met * option.Met);
                }
            }
        }

        void Add(int of, double seen, double met)
        {
            if (of == 0 && !_isWildUseful)
            {
                return;
            }

            var hidden = _world.HasMasks ? _world.HiddenIn(sex, of) : 0;
            if (hidden != 0)
            {
                seen = _world.SexInGroups ? 1.0 : 0.5;
                var states = _world.StatesOf(sex, of);
                for (var g = 0; g < states.Length; g++)
                {
                    var chances = _world.Groups[g].ChancesOf(_world.Groups[g].AtLeast(sex, states[g]));
                    seen *= chances.Seen(sires[g], dams[g], sex, (hidden & (1u << g)) != 0);
                }
            }

            if (met > 0.0 && seen >= least)
            {
                into.Add(new(of, seen, met / seen, _world.Clutches.NoneOf(seen)));
            }
        }
    }

    /// <summary>The chance per good egg that a hatchling looks like the target, and that it is.</summary>
    public (double Seen, double Met) Of(int sire, int dam, RouteTarget target)
    {
        var (seen, met) = (0.0, 0.0);
        var (sires, dams) = (_world.StatesOf(Sex.Male, sire), _world.StatesOf(Sex.Female, dam));
        foreach (var sex in RouteWorld.Sexes)
        {
            if (target.Wanted.Sex is { } only && only != sex)
            {
                continue;
            }

            var (s, m) = _world.SexInGroups ? (1.0, 1.0) : (0.5, 0.5);
            for (var g = 0; g < sires.Length && m > 0.0; g++)
            {
                var chances = _world.Groups[g].ChancesOf(target.Requirements[g]);
                s *= chances.Seen(sires[g], dams[g], sex, (target.Hidden & (1u << g)) != 0);
                m *= chances.Met(sires[g], dams[g], sex, (target.Hidden & (1u << g)) != 0);
            }

            seen += s;
            met += m;
        }

        return (seen, met);
    }

    /// <summary>Whether some mate could have the target with an animal of a class.</summary>
    public bool CanFinish(Sex sex, int of)
    {
        var states = _world.StatesOf(sex, of);
        for (var g = 0; g < states.Length; g++)
        {
            if (!_canFinish[g][GroupStates.Index(sex)][states[g]])
            {
                return false;
            }
        }

        return true;
    }

    // A state is worth asking for if no better one is as easily had.
    private YoungOption[][][] Options(GroupStates group, int place)
    {
        var females = group.Count(Sex.Female);
        var result = new YoungOption[group.Count(Sex.Male) * females][][];
        for (var pair = 0; pair < result.Length; pair++)
        {
            result[pair] = new YoungOption[2][];
            foreach (var sex in RouteWorld.Sexes)
            {
                var (s, d) = (pair / females, pair % females);
                var possible = Enumerable.Range(0, group.AskableCount(sex)).Where(o => Chances(o).Met(s, d, sex, hidden: false) > 0.0).ToArray();
                result[pair][GroupStates.Index(sex)] = [.. possible.Where(o => !possible.Any(better =>
                    better != o
                    && group.Accepts(group.AtLeast(sex, o), sex, better)
                    && !group.Accepts(group.AtLeast(sex, better), sex, o)
                    && Chances(better).Met(s, d, sex, hidden: false) >= Chances(o).Met(s, d, sex, hidden: false) - 1e-12))
                    .Select(o => new YoungOption(
                        o, o * _world.Stride(sex, place), Chances(o).Seen(s, d, sex, hidden: false), Chances(o).Met(s, d, sex, hidden: false)))];

                StepChances Chances(int option) => group.ChancesOf(group.AtLeast(sex, option));
            }
        }

        return result;
    }

    // For each state of each sex whether some mate could have the target with it.
    private bool[][] Finishing(GroupStates group, int place)
    {
        bool[][] can = [new bool[group.Count(Sex.Female)], new bool[group.Count(Sex.Male)]];
        foreach (var target in _world.Targets)
        {
            var chances = group.ChancesOf(target.Requirements[place]);
            for (var s = 0; s < group.Count(Sex.Male); s++)
            {
                for (var d = 0; d < group.Count(Sex.Female); d++)
                {
                    var any = RouteWorld.Sexes.Any(sex => chances.Met(s, d, sex, hidden: false) > 0.0);
                    can[0][d] |= any;
                    can[1][s] |= any;
                }
            }
        }

        return can;
    }
}

/// <summary>A state that may be asked of young at one group.</summary>
/// <param name="State">The state.</param>
/// <param name="Place">What it adds to the number of the class.</param>
/// <param name="Seen">The chance that young look so.</param>
/// <param name="Met">The chance that they are.</param>
internal readonly record struct YoungOption(int State, int Place, double Seen, double Met);

/// <summary>A class of young worth holding back.</summary>
/// <param name="Class">The class.</param>
/// <param name="Seen">The chance per good egg of a hatchling that looks right.</param>
/// <param name="Trust">The chance that it is.</param>
/// <param name="Fail">The chance that one female's season gives none that looks right.</param>
internal readonly record struct YoungClass(int Class, double Seen, double Trust, double Fail);
