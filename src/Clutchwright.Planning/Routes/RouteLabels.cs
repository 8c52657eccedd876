using Clutchwright.Genetics.Loci;

namespace Clutchwright.Planning.Routes;

/// <summary>The ways known to have animals: by sex and class those of which no other is as good on every count.</summary>
internal sealed class RouteLabels
{
    private readonly RouteWorld _world;
    private readonly RouteStakes _stakes;
    private readonly TargetNearness _nearness;
    private readonly Dictionary<int, List<RouteLabel>>[] _labels = [[], []];
    private readonly Dictionary<(int Brother, int Sister), List<RouteCouple>> _couples = [];
    private readonly List<RouteCouple>[] _freshCouples;
    private readonly int _mostClasses;
    private readonly int _mostLabels;
    private readonly bool _isChoosy;

    /// <param name="world">The world.</param>
    /// <param name="stakes">The founders' doubts and prices.</param>
    /// <param name="nearness">Which classes come first where not all can.</param>
    /// <param name="mostClasses">The most classes of a sex that are bred from.</param>
    /// <param name="mostLabels">The most ways kept of one class.</param>
    public RouteLabels(RouteWorld world, RouteStakes stakes, TargetNearness nearness, int mostClasses, int mostLabels)
    {
        (_world, _stakes, _nearness, _mostClasses, _mostLabels) = (world, stakes, nearness, mostClasses, mostLabels);
        _isChoosy = world.Problem.Forbidden is not null;
        var seasons = world.Problem.Settings.Seasons;
        _freshCouples = [.. Enumerable.Range(0, seasons + 1).Select(_ => new List<RouteCouple>())];
    }

    /// <summary>Whether ways were left out for want of room.</summary>
    public bool IsCut { get; private set; }

    /// <summary>The couples that can first be mated in a season.</summary>
    public IEnumerable<RouteCouple> CouplesFrom(int season) => _freshCouples[season].Where(c => !c.IsRemoved);

    /// <summary>The classes that can be bred from by a season, each with its ways; those first ready in it are told apart.</summary>
    public List<ClassLabels> By(Sex sex, int season)
    {
        var all = new List<ClassLabels>();
        foreach (var (of, labels) in _labels[GroupStates.Index(sex)])
        {
            RouteLabel[] here = [.. labels.Where(l => l.Effort.First <= season)];
            if (here.Length > 0)
            {
                all.Add(new(of, here, here.Any(l => l.Effort.First == season)));
            }
        }

        if (all.Count <= _mostClasses)
        {
            return all;
        }

        // Those that promise most, and every founder.
        IsCut = true;
        return
        [
            .. all
                .OrderByDescending(c => c.Labels.Any(l => l.Founder is not null)
                    ? double.PositiveInfinity
                    : c.Labels.Max(l => Math.Log(l.Promise)) + _nearness.Closeness(sex, c.Class))
                .ThenBy(c => c.Class)
                .Where((c, i) => i < _mostClasses || c.Labels.Any(l => l.Founder is not null)),
        ];
    }

    public void Keep(RouteLabel label)
    {
        var labels = _labels[GroupStates.Index(label.Sex)];
        var here = labels.TryGetValue(label.Class, out var known) ? known : labels[label.Class] = [];
        foreach (var other in here)
        {
            if (Beats(other, label))
            {
                return;
            }
        }

        // An animal one step better at one group that is had as easily.
        foreach (var better in _world.BetterThan(label.Sex, label.Class))
        {
            if (labels.TryGetValue(better, out var there) && there.Exists(l => Beats(l, label)))
            {
                return;
            }
        }

        here.RemoveAll(l => Beats(label, l) && (l.IsRemoved = true));
        here.Add(label);
        if (here.Count > _mostLabels)
        {
            IsCut = true;
            var worst = here.Where(l => l.Founder is null).MinBy(l => l.Promise) ?? label;
            worst.IsRemoved = true;
            here.Remove(worst);
        }
    }

    public void Keep(RouteCouple couple)
    {
        var key = (couple.Brother, couple.Sister);
        var here = _couples.TryGetValue(key, out var known) ? known : _couples[key] = [];
        if (here.Exists(c => c.Effort.Dominates(couple.Effort, _stakes)))
        {
            return;
        }

        here.RemoveAll(c => couple.Effort.Dominates(c.Effort, _stakes) && (c.IsRemoved = true));
        here.Add(couple);
        _freshCouples[couple.Effort.First].Add(couple);
        if (here.Count > _mostLabels)
        {
            IsCut = true;
            var worst = here.MinBy(c => c.Effort.Promise)!;
            worst.IsRemoved = true;
            here.Remove(worst);
        }
    }

    // Where some pairs are forbidden, a founder may be refused a mate that another gets: it takes no one's place, and no one takes its.
    private bool Beats(RouteLabel one, RouteLabel other) =>
        !(_isChoosy && (one.Founder is not null || other.Founder is not null)) && one.Dominates(other, _stakes);
}

/// <summary>The ways to have a class.</summary>
/// <param name="Class">The class.</param>
/// <param name="Labels">The ways.</param>
/// <param name="IsFresh">Whether one of them is first ready in the season asked for.</param>
internal sealed record ClassLabels(int Class, RouteLabel[] Labels, bool IsFresh);
