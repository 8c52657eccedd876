using Clutchwright.Genetics.Loci;

namespace Clutchwright.Planning.Routes;

/// <summary>Finds the ways to the target that no other beats, season by season: whoever can first be paired in a season was bred in the ones before.</summary>
/// <remarks>Exact in the model of docs/model/routes.md unless <see cref="IsCut"/>.</remarks>
internal sealed class RouteSearch
{
    private readonly RouteWorld _world;
    private readonly RouteSettings _settings;
    private readonly PairYoung _young;
    private readonly TargetNearness _nearness;
    private readonly RouteStakes _stakes;
    private readonly RouteFinishes _finishes;
    private readonly long _mostWork;
    private long _work;

    public RouteSearch(RouteWorld world, long mostWork)
    {
        _world = world;
        _settings = world.Problem.Settings;
        _young = new PairYoung(world);
        _nearness = new TargetNearness(world);
        _mostWork = mostWork;
        Types = Founders.Of(world);
        _stakes = new RouteStakes(Types);
        _finishes = new RouteFinishes(_settings.MostRaised ?? int.MaxValue, 0.0);
    }

    public IReadOnlyList<FounderType> Types { get; }

    public IReadOnlyList<RouteFinish> Finishes => _finishes.All;

    /// <summary>Whether something was left out for want of time or room, so that the best is not proven.</summary>
    public bool IsCut { get; private set; } = true;

    /// <summary>Searches among the most promising classes first, then among all, with bounds from what can come of each.</summary>
    /// <param name="progress">Told after each season.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <param name="mostClasses">How many classes the first search is among.</param>
    /// <returns>How many generations there was time for.</returns>
    public int Run(Action<int, int>? progress, CancellationToken cancel, int mostClasses = 40)
    {
        Search(mostClasses, mostClasses == int.MaxValue ? int.MaxValue : 2, null, progress, cancel);
        if (IsCut && mostClasses < int.MaxValue && _work <= _mostWork)
        {
            SearchWithBounds(progress, cancel);
        }

        _finishes.Trim();
        return Generations(_settings.Seasons);
    }

    private void SearchWithBounds(Action<int, int>? progress, CancellationToken cancel)
    {
        var bound = RouteBound.Of(_world, _young, Types, _finishes.Least, 2 * _mostWork, cancel);
        if (bound is null)
        {
            Search(160, 4, null, progress, cancel);
            return;
        }

        Search(int.MaxValue, int.MaxValue, bound, progress, cancel);
        if (IsCut)
        {
            // There was no time for the last seasons: with few ways to have each class there is.
            _work -= _mostWork / 3;
            Search(int.MaxValue, 2, bound, progress, cancel);
            IsCut = true;
        }
    }

    private int Generations(int season) => 1 + ((season - 1) / _settings.LeastAge);

    private void Search(int mostClasses, int mostLabels, RouteBound? bound, Action<int, int>? progress, CancellationToken cancel)
    {
        var labels = new RouteLabels(_world, _stakes, _nearness, mostClasses, mostLabels);
        var breeding = new RouteBreeding(_world, _young, Types, _stakes, _finishes, labels, bound);
        foreach (var type in Types)
        {
            var ready = new double[_settings.Seasons + 1];
            for (var t = type.ReadySeason; t < ready.Length; t++)
            {
                ready[t] = 1.0;
            }

            labels.Keep(new RouteLabel
            {
                Sex = type.Sex, Class = type.Class, Founder = type,
                Effort = new(ready, 1.0, 0.0, 0, 0.0, RouteStakes.Of(type), type.Trust, type.Price ?? 0.0, DamUse.None),
            });
        }

        for (var season = 1; season <= _settings.Seasons; season++)
        {
            var females = labels.By(Sex.Female, season);
            foreach (var sires in labels.By(Sex.Male, season))
            {
                cancel.ThrowIfCancellationRequested();
                foreach (var dams in females)
                {
                    if (sires.IsFresh || dams.IsFresh)
                    {
                        breeding.Breed(sires, dams, season);
                    }
                }

                if (_work + breeding.Work > _mostWork)
                {
                    _work += breeding.Work;
                    IsCut = true;
                    return;
                }
            }

            foreach (var couple in labels.CouplesFrom(season))
            {
                cancel.ThrowIfCancellationRequested();
                breeding.Breed(couple);
            }

            progress?.Invoke(Generations(season), _finishes.All.Count);
        }

        _work += breeding.Work;
        IsCut = labels.IsCut || _finishes.IsCut;
    }
}
