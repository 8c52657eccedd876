using Clutchwright.Genetics.Loci;

namespace Clutchwright.Planning.Routes;

/// <summary>What can come at best of an animal of each class: bounds by which the search leaves out what no listed route can hold.</summary>
/// <remarks>
/// The problem is made easier: an animal of each class is as likely ready as the likeliest of all ways to have one makes it, season by season; founders in doubt
/// are what they are taken for, and cost nothing; no female is in two places; of a couple one of the two is waited for. Forward the chances of being ready,
/// back from the last season what comes of them, both by the number of animals held back, and the least cost beside.
/// </remarks>
internal sealed class RouteBound
{
    /// <summary>Numbers of animals held back that are told apart: 0, 1, …, and more.</summary>
    private const int MostLevels = 5;

    /// <summary>More classes are too much work.</summary>
    private const int MostClasses = 6000;

    /// <summary>Less is no chance.</summary>
    private const double Negligible = 1e-9;

    private readonly RouteWorld _world;
    private readonly RouteSettings _settings;
    private readonly PairYoung _young;
    private readonly Dictionary<int, ClassBound>[] _classes = [[], []];
    private readonly Dictionary<(int Brother, int Sister), ClassBound> _couples = [];
    private readonly List<YoungClass>[] _children = [[], []];
    private readonly int _levels;
    private readonly double _leastSeen;
    private readonly double _pairing;
    private readonly double[] _ready;
    private readonly double[] _before;
    private readonly double[] _chance;
    private readonly double[] _sum = new double[RouteSettings.MostSeasons + 1];
    private readonly long _mostWork;
    private readonly CancellationToken _cancel;
    private long _work;

    private RouteBound(RouteWorld world, PairYoung young, double leastSeen, long mostWork, CancellationToken cancel)
    {
        _world = world;
        _settings = world.Problem.Settings;
        _young = young;
        (_leastSeen, _mostWork, _cancel) = (leastSeen, mostWork, cancel);
        _levels = Math.Min(MostLevels, (_settings.MostRaised ?? MostLevels) + 1);
        _pairing = _settings.ClutchCost * _settings.Laying;
        _ready = new double[_settings.Seasons + 1];
        _before = new double[_settings.Seasons + 1];
        _chance = new double[_settings.Seasons + 1];
    }

    /// <summary>Works the bounds out; <c>null</c>: it is too much work.</summary>
    /// <param name="world">The world.</param>
    /// <param name="young">What can be held back.</param>
    /// <param name="types">The founders.</param>
    /// <param name="leastSeen">The least chance per good egg that is of use.</param>
    /// <param name="mostWork">After so many young tried it is given up.</param>
    /// <param name="cancel">Stops the work.</param>
    public static RouteBound? Of(
        RouteWorld world, PairYoung young, IReadOnlyList<FounderType> types, double leastSeen, long mostWork, CancellationToken cancel)
    {
        var bound = new RouteBound(world, young, leastSeen, mostWork, cancel);
        return bound.Forward(types) && bound.Back() ? bound : null;
    }

    /// <summary>Whether nothing listed can come of an animal: a known route beats the best that could.</summary>
    /// <param name="finishes">The routes known.</param>
    /// <param name="sex">The animal's sex.</param>
    /// <param name="of">Its class.</param>
    /// <param name="copies">How many sisters alike there are.</param>
    /// <param name="ready">The chance that it can be paired by each season.</param>
    /// <param name="trust">The chance that all is what it is taken for.</param>
    /// <param name="raised">Animals held back, itself included.</param>
    /// <param name="cost">The cost.</param>
    public bool IsHopeless(RouteFinishes finishes, Sex sex, int of, int copies, double[] ready, double trust, int raised, double cost) =>
        !_classes[GroupStates.Index(sex)].TryGetValue(of, out var bound)
        || IsHopeless(finishes, bound, copies == 1 ? bound.Best : bound.BestOfSisters[copies - 2], ready, trust, raised, cost);

    /// <summary>The same of a couple.</summary>
    public bool IsHopeless(RouteFinishes finishes, int brother, int sister, double[] ready, double trust, int raised, double cost) =>
        !_couples.TryGetValue((brother, sister), out var bound) || IsHopeless(finishes, bound, bound.Best, ready, trust, raised, cost);

    private bool IsHopeless(RouteFinishes finishes, ClassBound bound, double[] best, double[] ready, double trust, int raised, double cost)
    {
        var last = ready.Length - 1;
        var first = 1;
        while (first <= last && ready[first] <= 0.0)
        {
            first++;
        }

        if (first > last)
        {
            return true;
        }

        for (var q = 0; q < _levels; q++)
        {
            Array.Clear(_chance);
            for (var t = first; t <= last; t++)
            {
                var fresh = trust * (ready[t] - ready[t - 1]);
                var at = bound.At(q, t);
                for (var by = t; by <= last; by++)
                {
                    _chance[by] += fresh * best[at + by];
                }
            }

            if (_chance[last] > 0.0 && !finishes.Covers(_chance, raised + q, cost + bound.BestCost[bound.CostAt(q, first)]))
            {
                return false;
            }
        }

        return true;
    }

    internal long Work => _work;

    internal string Classes => $"{_classes[0].Count} {_classes[1].Count} {_couples.Count}";

    // Season by season: who can be ready for it is known, and what they give is ready later.
    private bool Forward(IReadOnlyList<FounderType> types)
    {
        foreach (var type in types)
        {
            var bound = Class(type.Sex, type.Class);
            for (var t = type.ReadySeason; t <= _settings.Seasons; t++)
            {
                bound.Raise(bound.Ready, 0, t, 1.0);
            }

            bound.Lower(0, 0.0);
            if (type is { Price: null, Trust: >= 1.0 } && Math.Min(type.Animals.Count, _settings.MostDams) is var dams && dams > bound.FounderDams)
            {
                (bound.FounderDams, bound.FounderReady) = (dams, bound.FounderDams == 1 ? type.ReadySeason : Math.Min(bound.FounderReady, type.ReadySeason));
            }
        }

        for (var season = 1; season + Youngest <= _settings.Seasons; season++)
        {
            foreach (var sire in ReadyBy(Sex.Male, season))
            {
                _cancel.ThrowIfCancellationRequested();
                foreach (var dam in ReadyBy(Sex.Female, season))
                {
                    if (_world.IsDangerous(sire.Class, dam.Class))
                    {
                        continue;
                    }

                    if (_work > _mostWork || _classes[0].Count + _classes[1].Count > MostClasses)
                    {
                        return false;
                    }

                    Forward(sire, dam, season);
                }
            }
        }

        return true;
    }

    private int Youngest => Math.Min(_settings.MaleMaturity, _settings.FemaleMaturity);

    private ClassBound[] ReadyBy(Sex sex, int season) => [.. _classes[GroupStates.Index(sex)].Values.Where(c => c.First <= season)];

    private ClassBound Class(Sex sex, int of)
    {
        var known = _classes[GroupStates.Index(sex)];
        if (!known.TryGetValue(of, out var bound))
        {
            known.Add(of, bound = new(sex, of, _levels, _settings.Seasons, sex == Sex.Female ? _settings.MostDams : 1));
        }

        return bound;
    }

    private void Forward(ClassBound sire, ClassBound dam, int season)
    {
        var isAny = false;
        foreach (var sex in RouteWorld.Sexes)
        {
            var ready = season + AgeOf(sex);
            var into = _children[GroupStates.Index(sex)];
            into.Clear();
            if (ready <= _settings.Seasons)
            {
                _young.Of(sire.Class, dam.Class, sex, _leastSeen, ready + Youngest > _settings.Seasons, into);
                isAny |= into.Count > 0;
            }
        }

        if (!isAny)
        {
            return;
        }

        for (var level = 1; level < _levels; level++)
        {
            // However many of them are the sire's and how many the dam's.
            Array.Clear(_ready);
            var (cost, isMore) = (double.PositiveInfinity, false);
            for (var one = 0; one < _levels; one++)
            {
                for (var other = 0; other < _levels; other++)
                {
                    if (Math.Min(_levels - 1, one + other + 1) != level || sire.Ready[one] is not { } males || dam.Ready[other] is not { } females)
                    {
                        continue;
                    }

                    cost = Math.Min(cost, sire.Cost[one] + dam.Cost[other]);
                    for (var t = 1; t <= season; t++)
                    {
                        _ready[t] = Math.Max(_ready[t], males[t] * females[t]);
                    }
                }
            }

            for (var t = 1; t <= season; t++)
            {
                isMore |= level == 1 ? _ready[t] > 0.0 : _ready[t] > _before[t];
                _before[t] = _ready[t];
            }

            if (isMore)
            {
                Young(season, 1, level, cost);
            }

            var held = level == _levels - 1 ? level : level - 1;
            if (dam.FounderDams > 1 && sire.Ready[held] is { } mates)
            {
                for (var t = 1; t <= season; t++)
                {
                    _ready[t] = t >= dam.FounderReady ? mates[t] : 0.0;
                }

                Young(season, dam.FounderDams, level, sire.Cost[held]);
            }
        }

        if (!_world.AreAlike(sire.Class, dam.Class))
        {
            return;
        }

        // A couple: both are ready no sooner than either, and both must live.
        for (var q = 1; q < _levels; q++)
        {
            if (sire.Ready[q] is { } brother && dam.Ready[q] is { } sister)
            {
                for (var t = 1; t <= season; t++)
                {
                    _ready[t] = _settings.Rearing * Math.Min(brother[t], sister[t]);
                }

                Young(season, 1, Math.Min(_levels - 1, q + 2), Math.Max(sire.Cost[q], dam.Cost[q]) + _settings.RearingCost);
            }
        }
    }

    private int AgeOf(Sex sex) => sex == Sex.Male ? _settings.MaleMaturity : _settings.FemaleMaturity;

    // What has hatched by this season, of parents ready as told, is ready so many seasons later.
    private void Young(int season, int dams, int level, double cost)
    {
        var first = 1;
        while (first <= season && _ready[first] <= 0.0)
        {
            first++;
        }

        if (first > season)
        {
            return;
        }

        foreach (var sex in RouteWorld.Sexes)
        {
            var ready = season + AgeOf(sex);
            foreach (var child in _children[GroupStates.Index(sex)])
            {
                _work++;
                var success = 1.0 - Power(child.Fail, dams);
                var got = 0.0;
                for (var t = first; t <= season; t++)
                {
                    got += (_ready[t] - got) * success;
                }

                got *= child.Trust * _settings.Rearing;
                if (got < Negligible)
                {
                    continue;
                }

                var bound = Class(sex, child.Class);
                bound.Raise(bound.Ready, level, ready, got);
                bound.Lower(level, cost + (_pairing / (1.0 - child.Fail)) + _settings.RearingCost);
                if (sex == Sex.Female && _settings.MostDams > 1 && child.Trust >= 1.0 - 1e-9 && _young.CanFinish(sex, child.Class))
                {
                    Sisters(bound, child, season, dams, level);
                }
            }
        }
    }

    private void Sisters(ClassBound bound, YoungClass child, int season, int dams, int level)
    {
        var number = _world.NumberOf(child.Seen, dams);
        var rearing = _settings.Rearing;
        for (var copies = 2; copies <= _settings.MostDams; copies++)
        {
            rearing *= _settings.Rearing;
            var got = rearing * SeasonSums.ByLast(_ready.AsSpan(0, season + 1), number, copies);
            if (got < Negligible)
            {
                return;
            }

            bound.Raise(bound.Sisters[copies - 2], Math.Min(_levels - 1, level + copies - 1), season + _settings.FemaleMaturity, got);
        }
    }

    // From the last season back: what comes of one that is then ready, with the best mate, at once or by young.
    private bool Back()
    {
        for (var season = _settings.Seasons; season >= 1; season--)
        {
            var males = ReadyBy(Sex.Male, season);
            var females = ReadyBy(Sex.Female, season);
            foreach (var bound in males.Concat(females).Concat(_couples.Values))
            {
                CarryBack(bound, season);
            }

            foreach (var sire in males)
            {
                _cancel.ThrowIfCancellationRequested();
                foreach (var dam in females)
                {
                    if (_world.IsDangerous(sire.Class, dam.Class))
                    {
                        continue;
                    }

                    if (_work > _mostWork)
                    {
                        return false;
                    }

                    Back(sire, dam, season);
                }
            }
        }

        return true;
    }

    // Ready sooner is no worse than later.
    private void CarryBack(ClassBound bound, int season)
    {
        if (season == _settings.Seasons)
        {
            return;
        }

        foreach (var best in bound.BestOfSisters.Append(bound.Best))
        {
            for (var q = 0; q < _levels; q++)
            {
                Array.Copy(best, bound.At(q, season + 1), best, bound.At(q, season), _settings.Seasons + 1);
            }
        }

        for (var q = 0; q < _levels; q++)
        {
            bound.BestCost[bound.CostAt(q, season)] = bound.BestCost[bound.CostAt(q, season + 1)];
        }
    }

    private void Back(ClassBound sire, ClassBound dam, int season)
    {
        foreach (var sex in RouteWorld.Sexes)
        {
            var into = _children[GroupStates.Index(sex)];
            into.Clear();
            if (season + AgeOf(sex) <= _settings.Seasons)
            {
                _young.Of(sire.Class, dam.Class, sex, _leastSeen, season + AgeOf(sex) + Youngest > _settings.Seasons, into);
            }
        }

        var couple = _world.AreAlike(sire.Class, dam.Class) ? Couple(sire.Class, dam.Class) : null;
        foreach (var target in _world.Targets)
        {
            var (seen, met) = _young.Of(sire.Class, dam.Class, target);
            if (met <= 0.0)
            {
                continue;
            }

            var fail = _world.NoneOf(seen);
            var cost = _pairing / (1.0 - fail);
            foreach (var q in ClassBound.Levels(dam.Ready))
            {
                Direct(sire, sire.Best, dam.Ready[q]!, q, season, met / seen, fail, dam.Cost[q] + cost);
            }

            if (dam.FounderDams > 1)
            {
                for (var t = 1; t <= _settings.Seasons; t++)
                {
                    _chance[t] = t >= dam.FounderReady ? 1.0 : 0.0;
                }

                Direct(sire, sire.Best, _chance, 0, season, met / seen, Power(fail, dam.FounderDams), cost);
            }

            for (var k = 0; k < dam.Sisters.Length; k++)
            {
                foreach (var q in ClassBound.Levels(dam.Sisters[k]))
                {
                    Direct(sire, sire.Best, dam.Sisters[k][q]!, q, season, met / seen, Power(fail, k + 2), cost);
                }
            }

            foreach (var q in ClassBound.Levels(sire.Ready))
            {
                Direct(dam, dam.Best, sire.Ready[q]!, q, season, met / seen, fail, sire.Cost[q] + cost);
                for (var k = 0; k < dam.Sisters.Length; k++)
                {
                    Direct(dam, dam.BestOfSisters[k], sire.Ready[q]!, q, season, met / seen, Power(fail, k + 2), sire.Cost[q] + cost);
                }
            }

            if (couple is not null)
            {
                Array.Fill(_chance, 1.0);
                Direct(couple, couple.Best, _chance, 0, season, met / seen, fail, cost);
            }
        }

        if (_children[0].Count + _children[1].Count == 0)
        {
            return;
        }

        foreach (var q in ClassBound.Levels(dam.Ready))
        {
            ByYoung(sire, dam.Ready[q]!, q, season, 1, dam.Cost[q]);
        }

        if (dam.FounderDams > 1)
        {
            for (var t = 1; t <= _settings.Seasons; t++)
            {
                _chance[t] = t >= dam.FounderReady ? 1.0 : 0.0;
            }

            ByYoung(sire, _chance, 0, season, dam.FounderDams, 0.0);
        }

        foreach (var q in ClassBound.Levels(sire.Ready))
        {
            ByYoung(dam, sire.Ready[q]!, q, season, 1, sire.Cost[q]);
        }

        if (couple is not null)
        {
            Array.Fill(_chance, 1.0);
            ByYoung(couple, _chance, 0, season, 1, 0.0);
        }
    }

    private ClassBound Couple(int brother, int sister)
    {
        if (!_couples.TryGetValue((brother, sister), out var bound))
        {
            _couples.Add((brother, sister), bound = new(Sex.Female, sister, _levels, _settings.Seasons, 1));
        }

        return bound;
    }

    private void Direct(ClassBound of, double[] best, double[] mate, int level, int season, double trust, double fail, double cost)
    {
        var got = 0.0;
        for (var t = season; t <= _settings.Seasons; t++)
        {
            got += (mate[t] - got) * (1.0 - fail);
            for (var q = level; q < _levels; q++)
            {
                ref var here = ref best[of.At(q, season) + t];
                if (here >= trust * got)
                {
                    break;
                }

                here = trust * got;
            }
        }

        LowerCost(of, level, season, cost);
    }

    private void LowerCost(ClassBound of, int level, int season, double cost)
    {
        for (var q = level; q < _levels && cost < of.BestCost[of.CostAt(q, season)]; q++)
        {
            of.BestCost[of.CostAt(q, season)] = cost;
        }
    }

    private void ByYoung(ClassBound of, double[] mate, int level, int season, int dams, double cost)
    {
        foreach (var sex in RouteWorld.Sexes)
        {
            var age = AgeOf(sex);
            foreach (var child in _children[GroupStates.Index(sex)])
            {
                if (!_classes[GroupStates.Index(sex)].TryGetValue(child.Class, out var young))
                {
                    continue;
                }

                _work++;
                var steps = _pairing / (1.0 - child.Fail);
                Through(of, young, age, mate, level + 1, season, Power(child.Fail, dams), child.Trust * _settings.Rearing, cost + steps + _settings.RearingCost);
                if (sex == Sex.Female)
                {
                    ThroughCouples(of, child, mate, level + 2, season, dams, cost + steps + (2.0 * _settings.RearingCost));
                }
            }
        }
    }

    private void ThroughCouples(ClassBound of, YoungClass sister, double[] mate, int level, int season, int dams, double cost)
    {
        foreach (var brother in _children[GroupStates.Index(Sex.Male)])
        {
            if (_world.SexInGroups ? _world.AreAlike(brother.Class, sister.Class) : brother.Class == sister.Class)
            {
                if (_couples.TryGetValue((brother.Class, sister.Class), out var couple))
                {
                    // Both are ready no sooner than the one that breeds later.
                    var (age, fail) = _settings.FemaleMaturity >= _settings.MaleMaturity
                        ? (_settings.FemaleMaturity, sister.Fail)
                        : (_settings.MaleMaturity, brother.Fail);
                    Through(of, couple, age, mate, level, season, Power(fail, dams),
                        sister.Trust * brother.Trust * _settings.Rearing * _settings.Rearing, cost);
                }

                if (!_world.SexInGroups)
                {
                    return;
                }
            }
        }
    }

    private void Through(ClassBound of, ClassBound young, int age, double[] mate, int level, int season, double fail, double trust, double cost)
    {
        var seasons = _settings.Seasons;
        var top = _levels - 1;
        var got = 0.0;
        var isBetter = false;
        var (lowest, soonest) = (of.At(Math.Min(top, level), season), young.At(top, season + age));
        for (var t = season; t + age <= seasons; t++)
        {
            var before = got;
            got += (mate[t] - got) * (1.0 - fail);
            _sum[t] = trust * (got - before);

            // As if all that is ready by then had been ready from the start.
            isBetter |= trust * got * young.Best[soonest + t + age] > of.Best[lowest + t + age];
        }

        for (var q = 0; q < _levels; q++)
        {
            // The one level that stands for any number takes what is beyond.
            if (q < top && level + q > top)
            {
                continue;
            }

            var total = Math.Min(top, level + q);
            var after = young.BestCost[young.CostAt(q, season + age)];
            if (double.IsPositiveInfinity(after))
            {
                continue;
            }

            LowerCost(of, total, season, cost + after);
            for (var by = season + age; isBetter && by <= seasons; by++)
            {
                var sum = 0.0;
                for (var t = season; t + age <= by; t++)
                {
                    sum += _sum[t] * young.Best[young.At(q, t + age) + by];
                }

                for (var into = total; into < _levels && sum > of.Best[of.At(into, season) + by]; into++)
                {
                    of.Best[of.At(into, season) + by] = sum;
                }
            }
        }
    }

    private static double Power(double fail, int dams)
    {
        var power = fail;
        for (var i = 1; i < dams; i++)
        {
            power *= fail;
        }

        return power;
    }
}
