namespace Clutchwright.Planning.Routes;

/// <summary>The ways to the target known so far of which each is, for some number of seasons, beaten by no other: by none with as good a chance by then, as few
/// animals held back and as low a cost.</summary>
/// <param name="mostRaised">The most animals that may be held back.</param>
/// <param name="slack">By what share a chance must be better to count.</param>
internal sealed class RouteFinishes(int mostRaised, double slack)
{
    private const int MostFinishes = 1000;

    /// <summary>A way with less than this share of the best one's chance within the horizon is not looked for.</summary>
    private const double LeastShare = 0.05;

    /// <summary>Nor one with less chance than this.</summary>
    private const double LeastChance = 1e-4;

    private readonly List<RouteFinish> _all = [];
    private double _best;

    public IReadOnlyList<RouteFinish> All => _all;

    /// <summary>Whether ways were left out for want of room.</summary>
    public bool IsCut { get; private set; }

    /// <summary>The least chance within the horizon that is looked for.</summary>
    public double Least => Math.Max(LeastChance, LeastShare * _best);

    /// <summary>Whether a way with at best these figures could not be listed.</summary>
    /// <param name="chance">The chance by season.</param>
    /// <param name="raised">The animals held back, at least.</param>
    /// <param name="cost">The cost, at least.</param>
    public bool Covers(ReadOnlySpan<double> chance, int raised, double cost)
    {
        if (raised > mostRaised || chance[^1] < Least)
        {
            return true;
        }

        // Season by season from the last: mostly one way covers all.
        var open = chance.Length - 1;
        while (open >= 1 && chance[open] > 0.0)
        {
            var before = open;
            foreach (var finish in _all)
            {
                if (finish.Raised <= raised && finish.Cost <= cost + 1e-9)
                {
                    while (open >= 1 && finish.Chance[open] * (1.0 + slack) >= chance[open] - 1e-12)
                    {
                        open--;
                    }
                }
            }

            if (open == before)
            {
                return false;
            }
        }

        return true;
    }

    public void Add(RouteFinish finish)
    {
        if (Covers(finish.Chance, finish.Raised, finish.Cost))
        {
            return;
        }

        _best = Math.Max(_best, finish.Chance[^1]);
        _all.Add(finish);
        for (var i = _all.Count - 2; i >= 0; i--)
        {
            var other = _all[i];
            if (other.Raised < finish.Raised || other.Cost < finish.Cost - 1e-9)
            {
                continue;
            }

            _all.RemoveAt(i);
            if (!IsBeaten(other))
            {
                _all.Insert(i, other);
            }
        }

        if (_all.Count > MostFinishes)
        {
            IsCut = true;
            _all.Remove(_all.MinBy(f => f.Chance[^1])!);
        }
    }

    /// <summary>Drops what falls too far short of the best.</summary>
    public void Trim() => _all.RemoveAll(f => f.Chance[^1] < Least);

    private bool IsBeaten(RouteFinish other)
    {
        for (var t = 1; t < other.Chance.Length; t++)
        {
            var season = t;
            if (other.Chance[t] > 0.0 && !_all.Exists(f => f.Raised <= other.Raised && f.Cost <= other.Cost + 1e-9 && f.Chance[season] >= other.Chance[season] - 1e-12))
            {
                return false;
            }
        }

        return true;
    }
}
