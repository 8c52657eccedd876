using Clutchwright.Genetics.Loci;

namespace Clutchwright.Planning.Routes;

/// <summary>The first half of the bounds: when an animal of each class can be ready at best, season by season forward.</summary>
internal sealed class ReadyBound
{
    /// <summary>Less is no chance.</summary>
    private const double Negligible = 1e-9;

    private readonly RouteWorld _world;
    private readonly RouteSettings _settings;
    private readonly PairYoung _young;
    private readonly RouteBound _bound;
    private readonly List<YoungClass>[] _children = [[], []];
    private readonly int _levels;
    private readonly double[] _ready;
    private readonly double[] _before;
    private readonly long _mostWork;
    private readonly CancellationToken _cancel;
    private long _work;

    public ReadyBound(RouteWorld world, PairYoung young, RouteBound bound, long mostWork, CancellationToken cancel)
    {
        (_world, _settings, _young, _bound, _mostWork, _cancel) = (world, world.Problem.Settings, young, bound, mostWork, cancel);
        _levels = bound.Levels;
        _ready = new double[_settings.Seasons + 1];
        _before = new double[_settings.Seasons + 1];
    }

    // Season by season: who can be ready for it is known, and what they give is ready later.
    public bool Run(IReadOnlyList<FounderType> types)
    {
        foreach (var type in types)
        {
            var bound = _bound.Class(type.Sex, type.Class);
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

        for (var season = 1; season + _settings.LeastAge <= _settings.Seasons; season++)
        {
            foreach (var sire in _bound.ReadyBy(Sex.Male, season))
            {
                _cancel.ThrowIfCancellationRequested();
                foreach (var dam in _bound.ReadyBy(Sex.Female, season))
                {
                    if (_world.IsDangerous(sire.Class, dam.Class))
                    {
                        continue;
                    }

                    if (_work > _mostWork || _bound.IsFull)
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
        var isAny = false;
        foreach (var sex in RouteWorld.Sexes)
        {
            var ready = season + _settings.AgeOf(sex);
            var into = _children[GroupStates.Index(sex)];
            into.Clear();
            if (ready <= _settings.Seasons)
            {
                _young.Of(sire.Class, dam.Class, sex, _settings.LeastSeen, ready + _settings.LeastAge > _settings.Seasons, into);
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
            var ready = season + _settings.AgeOf(sex);
            foreach (var child in _children[GroupStates.Index(sex)])
            {
                _work++;
                var success = 1.0 - SeasonSums.Power(child.Fail, dams);
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

                var bound = _bound.Class(sex, child.Class);
                bound.Raise(bound.Ready, level, ready, got);
                bound.Lower(level, cost + (_settings.PairingCost / (1.0 - child.Fail)) + _settings.RearingCost);
                if (sex == Sex.Female && _settings.MostDams > 1 && child.Trust >= 1.0 - 1e-9 && _young.CanFinish(sex, child.Class))
                {
                    Sisters(bound, child, season, dams, level);
                }
            }
        }
    }

    private void Sisters(ClassBound bound, YoungClass child, int season, int dams, int level)
    {
        var number = _world.Clutches.NumberOf(child.Seen, dams);
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
}
