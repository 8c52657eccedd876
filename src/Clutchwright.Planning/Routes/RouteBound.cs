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

    private readonly Dictionary<int, ClassBound>[] _classes = [[], []];
    private readonly Dictionary<(int Brother, int Sister), ClassBound> _couples = [];
    private readonly RouteSettings _settings;
    private readonly double[] _chance;

    private RouteBound(RouteSettings settings)
    {
        _settings = settings;
        Levels = Math.Min(MostLevels, (settings.MostRaised ?? MostLevels) + 1);
        _chance = new double[settings.Seasons + 1];
    }

    /// <summary>How many numbers of animals held back are told apart.</summary>
    public int Levels { get; }

    /// <summary>Whether there are more classes than can be dealt with.</summary>
    public bool IsFull => _classes[0].Count + _classes[1].Count > MostClasses;

    public IEnumerable<ClassBound> Couples => _couples.Values;

    /// <summary>Works the bounds out; <c>null</c>: it is too much work.</summary>
    /// <param name="world">The world.</param>
    /// <param name="young">What can be held back.</param>
    /// <param name="types">The founders.</param>
    /// <param name="least">The least chance within the horizon that a route is listed with.</param>
    /// <param name="mostWork">After so many young tried it is given up.</param>
    /// <param name="cancel">Stops the work.</param>
    public static RouteBound? Of(
        RouteWorld world, PairYoung young, IReadOnlyList<FounderType> types, double least, long mostWork, CancellationToken cancel)
    {
        var bound = new RouteBound(world.Problem.Settings);
        if (!new ReadyBound(world, young, bound, mostWork, cancel).Run(types))
        {
            return null;
        }

        bound.Close(least);
        return new OutcomeBound(world, young, bound, least, mostWork, cancel).Run() ? bound : null;
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

        for (var q = 0; q < Levels; q++)
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

    // A class that is hardly ever ready is in no listed route.
    private void Close(double least)
    {
        foreach (var classes in _classes)
        {
            foreach (var (of, bound) in classes)
            {
                bound.Close();
                if (bound.Most < least)
                {
                    classes.Remove(of);
                }
            }
        }
    }

    /// <summary>The classes of which one can be ready by a season.</summary>
    public ClassBound[] ReadyBy(Sex sex, int season) => [.. _classes[GroupStates.Index(sex)].Values.Where(c => c.First <= season)];

    /// <summary>The bounds of a class; <c>null</c>: there is no way to have it.</summary>
    public ClassBound? Find(Sex sex, int of) => _classes[GroupStates.Index(sex)].GetValueOrDefault(of);

    /// <summary>The same of a couple.</summary>
    public ClassBound? Find(int brother, int sister) => _couples.GetValueOrDefault((brother, sister));

    public ClassBound Class(Sex sex, int of)
    {
        var known = _classes[GroupStates.Index(sex)];
        if (!known.TryGetValue(of, out var bound))
        {
            known.Add(of, bound = new(of, Levels, _settings.Seasons, sex == Sex.Female ? _settings.MostDams : 1));
        }

        return bound;
    }

    public ClassBound Couple(int brother, int sister)
    {
        if (!_couples.TryGetValue((brother, sister), out var bound))
        {
            _couples.Add((brother, sister), bound = new(sister, Levels, _settings.Seasons, 1));
        }

        return bound;
    }
}
