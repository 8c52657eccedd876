using System.Collections.Concurrent;
using Clutchwright.Genetics.Dangers;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Looks;
using Clutchwright.Genetics.Wants;

namespace Clutchwright.Planning.Routes;

/// <summary>The animals of a route reduced to what matters: classes, one number for a state at every linkage group that counts.</summary>
/// <remarks>A search keeps what it worked out here, one thread at a time; the rest may be used by many.</remarks>
internal sealed class RouteWorld
{
    private readonly int[][] _strides = new int[2][];
    private readonly UInt128[][] _dangers;
    private readonly ConcurrentDictionary<int, uint>[] _hidden = [[], []];
    private readonly Dictionary<int, int[]>[] _states = [[], []];
    private readonly Dictionary<int, int[]>[] _better = [[], []];
    private readonly Expression[][] _showable;
    private bool _hasDangers;

    private RouteWorld(RouteProblem problem, GroupStates[] groups, Danger[] dangers)
    {
        Problem = problem;
        Groups = groups;
        foreach (var sex in Sexes)
        {
            var strides = new int[groups.Length + 1];
            strides[0] = 1;
            for (var g = 0; g < groups.Length; g++)
            {
                strides[g + 1] = checked(strides[g] * groups[g].Count(sex));
            }

            _strides[GroupStates.Index(sex)] = strides;
        }

        _dangers = [.. groups.Select(g => DangersOf(g, dangers))];
        _showable = [.. groups.Select(g => g.Showable().ToArray())];
        Clutches = new ClutchNumbers(problem.Settings);
        HasMasks = Hidden([.. _showable.SelectMany(e => e)]) != 0;
        SexInGroups = groups.Any(g => g.TellsSex);
        Targets = [.. problem.Want.Alternatives.Select(TargetOf)];
    }

    public static IReadOnlyList<Sex> Sexes { get; } = [Sex.Female, Sex.Male];

    public RouteProblem Problem { get; }

    public IReadOnlyList<GroupStates> Groups { get; }

    public IReadOnlyList<RouteTarget> Targets { get; }

    public ClutchNumbers Clutches { get; }

    public bool SexInGroups { get; }

    /// <summary>Whether anything can hide anything here.</summary>
    public bool HasMasks { get; }

    /// <summary>Whether an animal without any wanted allele can be of use.</summary>
    public bool IsWildUseful => Groups.Any(g => g.IsExact);

    public int ClassCount(Sex sex) => _strides[GroupStates.Index(sex)][^1];

    /// <summary>Reduces a problem.</summary>
    public static RouteWorld Of(RouteProblem problem)
    {
        var reduction = new RouteReduction(problem);
        var world = new RouteWorld(problem, reduction.Groups(new HashSet<LinkageGroup>()), reduction.Dangers);

        // Where more alleles can spoil the wanted, just those asked for are kept apart from more.
        var spoilt = world.Groups.Where((g, i) => world.Targets.Any(t => g.CanSpoil(t.Requirements[i]))).Select(g => g.Group).ToHashSet();
        return spoilt.Count == 0 ? world : new RouteWorld(problem, reduction.Groups(spoilt), reduction.Dangers);
    }

    /// <summary>The world of a problem: that which a route of it was found in, if it was.</summary>
    public static RouteWorld Of(RouteProblem problem, Route route) =>
        route.World is { } world && ReferenceEquals(world.Problem, problem) ? world : Of(problem);

    public int Stride(Sex sex, int group) => _strides[GroupStates.Index(sex)][group];

    public int StateAt(int of, Sex sex, int group)
    {
        var strides = _strides[GroupStates.Index(sex)];
        return of / strides[group] % Groups[group].Count(sex);
    }

    /// <summary>The state of a class at every group.</summary>
    public int[] StatesOf(Sex sex, int of)
    {
        var known = _states[GroupStates.Index(sex)];
        if (!known.TryGetValue(of, out var states))
        {
            states = new int[Groups.Count];
            for (var g = 0; g < states.Length; g++)
            {
                states[g] = StateAt(of, sex, g);
            }

            known.Add(of, states);
        }

        return states;
    }

    public int ClassOf(Sex sex, IReadOnlyList<int> states)
    {
        var strides = _strides[GroupStates.Index(sex)];
        var of = 0;
        for (var g = 0; g < states.Count; g++)
        {
            of += states[g] * strides[g];
        }

        return of;
    }

    /// <summary>Whether a class is as good as another at every group.</summary>
    public bool IsAtLeast(Sex sex, int of, int least)
    {
        for (var g = 0; g < Groups.Count; g++)
        {
            if (!Groups[g].Accepts(Groups[g].AtLeast(sex, StateAt(least, sex, g)), sex, StateAt(of, sex, g)))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Whether a class is as good as another at every group, and may be paired with whatever the other may.</summary>
    public bool Replaces(Sex sex, int of, int other)
    {
        var (states, others) = (StatesOf(sex, of), StatesOf(sex, other));
        for (var g = 0; g < states.Length; g++)
        {
            if (!Groups[g].Accepts(Groups[g].AtLeast(sex, others[g]), sex, states[g]) || !IsAsSafe(sex, g, states[g], others[g]))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>The classes that differ from one at a single group, are better there, and may be paired with whatever it may.</summary>
    public int[] BetterThan(Sex sex, int of)
    {
        var known = _better[GroupStates.Index(sex)];
        if (!known.TryGetValue(of, out var better))
        {
            var list = new List<int>();
            for (var g = 0; g < Groups.Count; g++)
            {
                var state = StateAt(of, sex, g);
                for (var s = 0; s < Groups[g].AskableCount(sex); s++)
                {
                    if (s != state && Groups[g].Accepts(Groups[g].AtLeast(sex, state), sex, s) && IsAsSafe(sex, g, s, state))
                    {
                        list.Add(of + ((s - state) * Stride(sex, g)));
                    }
                }
            }

            known.Add(of, better = [.. list]);
        }

        return better;
    }

    // Whether a state brings no danger that another does not, with any mate.
    private bool IsAsSafe(Sex sex, int group, int state, int other)
    {
        var females = Groups[group].Count(Sex.Female);
        for (var mate = 0; _hasDangers && mate < Groups[group].Count(sex == Sex.Male ? Sex.Female : Sex.Male); mate++)
        {
            var (here, there) = sex == Sex.Male ? ((state * females) + mate, (other * females) + mate) : ((mate * females) + state, (mate * females) + other);
            if ((_dangers[group][here] & ~_dangers[group][there]) != 0)
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Whether a male and a female class are alike where it can be compared: the sex chromosomes differ in any case.</summary>
    public bool AreAlike(int male, int female)
    {
        if (!SexInGroups)
        {
            return male == female;
        }

        var (brother, sister) = (StatesOf(Sex.Male, male), StatesOf(Sex.Female, female));
        for (var g = 0; g < brother.Length; g++)
        {
            if (!Groups[g].TellsSex && brother[g] != sister[g])
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Whether young of the two may have a genotype of a danger that was not lifted.</summary>
    public bool IsDangerous(int sire, int dam)
    {
        if (!_hasDangers)
        {
            return false;
        }

        var met = UInt128.MaxValue;
        var (sires, dams) = (StatesOf(Sex.Male, sire), StatesOf(Sex.Female, dam));
        for (var g = 0; g < sires.Length && met != 0; g++)
        {
            met &= _dangers[g][(sires[g] * Groups[g].Count(Sex.Female)) + dams[g]];
        }

        return met != 0;
    }

    /// <summary>The groups, as bits, of which nothing can be told by eye in animals that show a class.</summary>
    public uint HiddenIn(Sex sex, int of)
    {
        var known = _hidden[GroupStates.Index(sex)];
        if (!known.TryGetValue(of, out var bits))
        {
            known.TryAdd(of, bits = Hidden([.. Enumerable.Range(0, Groups.Count).SelectMany(g => Groups[g].Shown(sex, StateAt(of, sex, g)))]));
        }

        return bits;
    }

    public static bool Allows(WantedPairs pairs, int a, int b) => pairs.Allows(a, b, ordered: true) || pairs.Allows(b, a, ordered: true);

    private uint Hidden(IReadOnlyCollection<Expression> shown)
    {
        var bits = 0u;
        for (var g = 0; g < Groups.Count; g++)
        {
            if (_showable[g].Any(e => Problem.Species.IsHidden(e, shown)))
            {
                bits |= 1u << g;
            }
        }

        return bits;
    }

    private UInt128[] DangersOf(GroupStates group, Danger[] dangers)
    {
        _hasDangers |= dangers.Length > 0;
        var males = group.Count(Sex.Male);
        var females = group.Count(Sex.Female);
        var all = dangers.Length == 128 ? UInt128.MaxValue : (UInt128.One << dangers.Length) - 1;
        var bits = new UInt128[males * females];
        for (var pair = 0; pair < bits.Length; pair++)
        {
            bits[pair] = all;
            for (var d = 0; d < dangers.Length; d++)
            {
                if (dangers[d].Groups.Contains(group.Group) && !group.CanMeet(dangers[d], pair / females, pair % females))
                {
                    bits[pair] &= ~(UInt128.One << d);
                }
            }
        }

        return bits;
    }

    private RouteTarget TargetOf(WantedGenotype wanted)
    {
        var requirements = new int[Groups.Count];
        var shown = new List<Expression>();
        for (var g = 0; g < Groups.Count; g++)
        {
            var group = Groups[g];
            var here = wanted.Loci.Where(l => l.Locus.Group == group.Group).ToArray();
            if (here.Length == 0)
            {
                requirements[g] = 0;
                continue;
            }

            requirements[g] = group.Require((sex, diplotype) => here.All(c =>
            {
                var (a, b) = c.Locus.PairOf(diplotype);
                return c.Allows(a, b, group.Group.IsSex && sex == Problem.Species.SexSystem.Heterogametic());
            }));
            var sexes = wanted.Sex is { } only ? [only] : Sexes;
            var best = sexes.SelectMany(s => Enumerable.Range(0, group.Count(s)).Where(i => group.Accepts(requirements[g], s, i)).Select(i => (s, i))).ToArray();
            if (best.Length > 0)
            {
                shown.AddRange(group.Shown(best[0].s, best[0].i));
            }
        }

        return new(wanted, requirements, Hidden(shown));
    }
}

/// <summary>One alternative of the want: a requirement at each group that counts.</summary>
/// <param name="Wanted">The alternative.</param>
/// <param name="Requirements">The requirement's index at each group.</param>
/// <param name="Hidden">The groups, as bits, of which nothing can be told by eye in such an animal.</param>
internal sealed record RouteTarget(WantedGenotype Wanted, IReadOnlyList<int> Requirements, uint Hidden);
