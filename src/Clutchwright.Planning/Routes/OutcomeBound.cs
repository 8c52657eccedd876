using Clutchwright.Genetics.Loci;

namespace Clutchwright.Planning.Routes;

/// <summary>The second half of the bounds: what can come at best of an animal that is ready in a season, from the last season back.</summary>
internal sealed class OutcomeBound
{
    private readonly RouteWorld _world;
    private readonly RouteSettings _settings;
    private readonly PairYoung _young;
    private readonly RouteBound _bound;
    private readonly List<YoungClass>[] _children = [[], []];
    private readonly Dictionary<int, YoungClass> _brothers = [];
    private readonly List<(YoungClass Brother, YoungClass Sister, ClassBound Couple)> _couples = [];
    private readonly int _levels;
    private readonly double[] _chance;
    private readonly double[] _sum;
    private readonly double _least;
    private readonly long _mostWork;
    private readonly CancellationToken _cancel;
    private long _work;

    public OutcomeBound(RouteWorld world, PairYoung young, RouteBound bound, double least, long mostWork, CancellationToken cancel)
    {
        (_world, _settings, _young, _bound, _least, _mostWork, _cancel) = (world, world.Problem.Settings, young, bound, least, mostWork, cancel);
        _levels = bound.Levels;
        _chance = new double[_settings.Seasons + 1];
        _sum = new double[_settings.Seasons + 1];
    }

    // From the last season back: what comes of one that is then ready, with the best mate, at once or by young.
    public bool Run()
    {
        for (var season = _settings.Seasons; season >= 1; season--)
        {
            var males = _bound.ReadyBy(Sex.Male, season);
            var females = _bound.ReadyBy(Sex.Female, season);
            foreach (var bound in males.Concat(females).Concat(_bound.Couples))
            {
                bound.CarryBack(season);
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

                    Breed(sire, dam, season);
                }
            }
        }

        return true;
    }

    private void Breed(ClassBound sire, ClassBound dam, int season)
    {
        // No route with both has more than the chance that both are ready, and one with a couple of them no more than that of either.
        var (both, either) = (sire.Most * dam.Most, Math.Min(sire.Most, dam.Most));
        var isCouple = either >= _least && _world.AreAlike(sire.Class, dam.Class);
        if (both < _least && !isCouple)
        {
            return;
        }

        foreach (var sex in RouteWorld.Sexes)
        {
            var into = _children[GroupStates.Index(sex)];
            into.Clear();
            if (season + _settings.AgeOf(sex) <= _settings.Seasons)
            {
                _young.Of(sire.Class, dam.Class, sex, _settings.LeastSeen, season + _settings.AgeOf(sex) + _settings.LeastAge > _settings.Seasons, into);
            }
        }

        var couple = isCouple ? _bound.Couple(sire.Class, dam.Class) : null;
        foreach (var target in _world.Targets)
        {
            var (seen, met) = _young.Of(sire.Class, dam.Class, target);
            if (met <= 0.0)
            {
                continue;
            }

            var fail = _world.Clutches.NoneOf(seen);
            var cost = _settings.PairingCost / (1.0 - fail);
            foreach (var q in dam.ReadyLevels)
            {
                Direct(sire, sire.Best, dam.Ready[q]!, q, season, met / seen, fail, dam.Cost[q] + cost);
            }

            if (dam.FounderDams > 1)
            {
                for (var t = 1; t <= _settings.Seasons; t++)
                {
                    _chance[t] = t >= dam.FounderReady ? 1.0 : 0.0;
                }

                Direct(sire, sire.Best, _chance, 0, season, met / seen, SeasonSums.Power(fail, dam.FounderDams), cost);
            }

            for (var k = 0; k < dam.Sisters.Length; k++)
            {
                foreach (var q in dam.SisterLevels[k])
                {
                    Direct(sire, sire.Best, dam.Sisters[k][q]!, q, season, met / seen, SeasonSums.Power(fail, k + 2), cost);
                }
            }

            foreach (var q in sire.ReadyLevels)
            {
                Direct(dam, dam.Best, sire.Ready[q]!, q, season, met / seen, fail, sire.Cost[q] + cost);
                for (var k = 0; k < dam.Sisters.Length; k++)
                {
                    Direct(dam, dam.BestOfSisters[k], sire.Ready[q]!, q, season, met / seen, SeasonSums.Power(fail, k + 2), sire.Cost[q] + cost);
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

        FindCouples();

        foreach (var q in dam.ReadyLevels)
        {
            ByYoung(sire, dam.Ready[q]!, q, season, 1, dam.Cost[q], both);
        }

        if (dam.FounderDams > 1)
        {
            for (var t = 1; t <= _settings.Seasons; t++)
            {
                _chance[t] = t >= dam.FounderReady ? 1.0 : 0.0;
            }

            ByYoung(sire, _chance, 0, season, dam.FounderDams, 0.0, both);
        }

        foreach (var q in sire.ReadyLevels)
        {
            ByYoung(dam, sire.Ready[q]!, q, season, 1, sire.Cost[q], both);
        }

        if (couple is not null)
        {
            Array.Fill(_chance, 1.0);
            ByYoung(couple, _chance, 0, season, 1, 0.0, either);
        }
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

        of.LowerBest(level, season, cost);
    }

    private void ByYoung(ClassBound of, double[] mate, int level, int season, int dams, double cost, double most)
    {
        foreach (var sex in RouteWorld.Sexes)
        {
            var age = _settings.AgeOf(sex);
            foreach (var child in _children[GroupStates.Index(sex)])
            {
                if (_bound.Find(sex, child.Class) is not { } young)
                {
                    continue;
                }

                _work += _settings.Seasons - season - age + 1;
                var steps = _settings.PairingCost / (1.0 - child.Fail);
                if (IsEnough(young, season + age, most * child.Trust * _settings.Rearing))
                {
                    Through(of, young, age, mate, level + 1, season, SeasonSums.Power(child.Fail, dams), child.Trust * _settings.Rearing, cost + steps + _settings.RearingCost);
                }
            }
        }

        // Both are ready no sooner than the one that breeds later.
        var isSister = _settings.FemaleMaturity >= _settings.MaleMaturity;
        var later = Math.Max(_settings.MaleMaturity, _settings.FemaleMaturity);
        foreach (var (brother, sister, couple) in _couples)
        {
            var trust = sister.Trust * brother.Trust * _settings.Rearing * _settings.Rearing;
            if (IsEnough(couple, season + later, most * trust))
            {
                Through(
                    of, couple, later, mate, level + 2, season, SeasonSums.Power(isSister ? sister.Fail : brother.Fail, dams), trust,
                    cost + (_settings.PairingCost / (1.0 - sister.Fail)) + (2.0 * _settings.RearingCost));
            }
        }
    }

    // Brothers and sisters that can be held back for each other, of the young at hand.
    private void FindCouples()
    {
        _couples.Clear();
        if (_children[0].Count == 0 || _children[1].Count == 0)
        {
            return;
        }

        _brothers.Clear();
        foreach (var brother in _children[1])
        {
            _brothers.TryAdd(brother.Class, brother);
        }

        foreach (var sister in _children[0])
        {
            if (!_world.SexInGroups)
            {
                if (_brothers.TryGetValue(sister.Class, out var brother) && _bound.Find(sister.Class, sister.Class) is { } couple)
                {
                    _couples.Add((brother, sister, couple));
                }

                continue;
            }

            foreach (var brother in _children[1])
            {
                if (_world.AreAlike(brother.Class, sister.Class) && _bound.Find(brother.Class, sister.Class) is { } couple)
                {
                    _couples.Add((brother, sister, couple));
                }
            }
        }
    }

    // Whether something listed may come through an animal, if so much is sure of all before.
    private bool IsEnough(ClassBound young, int ready, double most) =>
        most * young.Best[young.At(_levels - 1, ready) + _settings.Seasons] >= _least;

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

            of.LowerBest(total, season, cost + after);
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
}
