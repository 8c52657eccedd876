using Clutchwright.Genetics.Loci;

namespace Clutchwright.Planning.Routes;

/// <summary>What two classes can give, worked out once for all ways to have them, less what could not be listed even if the best of these came together.</summary>
internal sealed class PairGifts
{
    private readonly RouteWorld _world;
    private readonly RouteSettings _settings;
    private readonly PairYoung _young;
    private readonly IReadOnlyList<FounderType> _types;
    private readonly RouteFinishes _finishes;
    private readonly RouteBound? _bound;
    private readonly Dictionary<int, bool>[] _owned = [[], []];
    private readonly Dictionary<int, YoungClass> _sisters = [];
    private readonly double[] _ready;
    private readonly double[] _hatched;
    private readonly double[] _later;
    private readonly bool _isChoosy;

    public PairGifts(RouteWorld world, PairYoung young, IReadOnlyList<FounderType> types, RouteFinishes finishes, RouteBound? bound)
    {
        (_world, _young, _types, _finishes, _bound) = (world, young, types, finishes, bound);
        _settings = world.Problem.Settings;
        _ready = new double[_settings.Seasons + 1];
        _hatched = new double[_settings.Seasons + 1];
        _later = new double[_settings.Seasons + 1];
        _isChoosy = world.Problem.Forbidden is not null;
    }

    /// <summary>The targets, with the chance per good egg to look so, the chance that one which does is right, and that of a clutch without.</summary>
    public List<(RouteTarget Target, double Seen, double Trust, double Fail)> Targets { get; } = [];

    /// <summary>Daughters, and sons, worth holding back.</summary>
    public List<YoungClass>[] Children { get; } = [[], []];

    /// <summary>Brothers and sisters worth holding back for each other.</summary>
    public List<(YoungClass Brother, YoungClass Sister)> Couples { get; } = [];

    public bool IsNothing => Targets.Count + Children[0].Count + Children[1].Count + Couples.Count == 0;

    /// <summary>Looks at the mating of a couple.</summary>
    public void Look(RouteCouple couple)
    {
        LookAt(couple.Brother, couple.Sister, couple.Effort.First, true);
        LeaveOutIdle(couple.Brother, couple.Sister);
    }

    /// <summary>Looks at two classes, in the season in which one of the ways to have either is first ready: what is left may be listed.</summary>
    public void Look(ClassLabels sires, ClassLabels dams, int season)
    {
        LookAt(sires.Class, dams.Class, season, dams.Labels.Any(l => l.Copies == 1));
        LeaveOut(sires, dams);
    }

    private void LookAt(int sire, int dam, int season, bool withYoung)
    {
        Targets.Clear();
        foreach (var target in _world.Targets)
        {
            var (seen, met) = _young.Of(sire, dam, target);
            if (met > 0.0)
            {
                Targets.Add((target, seen, met / seen, _world.Clutches.NoneOf(seen)));
            }
        }

        Couples.Clear();
        foreach (var sex in RouteWorld.Sexes)
        {
            var into = Children[GroupStates.Index(sex)];
            into.Clear();
            var ready = season + _settings.AgeOf(sex);
            if (withYoung && ready <= _settings.Seasons)
            {
                _young.Of(sire, dam, sex, _settings.LeastSeen, ready + _settings.LeastAge > _settings.Seasons, into);
            }
        }

        if (Children[0].Count == 0 || Children[1].Count == 0 || _settings.MostRaised < 2)
        {
            return;
        }

        _sisters.Clear();
        foreach (var sister in Children[0])
        {
            _sisters.Add(sister.Class, sister);
        }

        foreach (var brother in Children[1])
        {
            if (_world.SexInGroups)
            {
                Couples.AddRange(Children[0].Where(s => _world.AreAlike(brother.Class, s.Class)).Select(s => (brother, s)));
            }
            else if (_sisters.TryGetValue(brother.Class, out var sister))
            {
                Couples.Add((brother, sister));
            }
        }

        Couples.RemoveAll(c => _world.IsDangerous(c.Brother.Class, c.Sister.Class));
    }

    // Leaves out what could give nothing listed even if the best of all ways to have either class came together.
    private void LeaveOut(ClassLabels sires, ClassLabels dams)
    {
        LeaveOutIdle(sires.Class, dams.Class);
        var most = 1;
        var (raised, cost) = (sires.Labels.Min(l => l.Effort.Raised) + dams.Labels.Min(l => l.Effort.Raised), sires.Labels.Min(l => l.Effort.Cost) + dams.Labels.Min(l => l.Effort.Cost));
        foreach (var dam in dams.Labels)
        {
            most = Math.Max(most, MostDams(dam));
        }

        for (var t = 1; t < _ready.Length; t++)
        {
            var (one, other) = (0.0, 0.0);
            foreach (var sire in sires.Labels)
            {
                one = Math.Max(one, sire.Effort.Trust * sire.Effort.Doubt * sire.Effort.Ready[t]);
            }

            foreach (var dam in dams.Labels)
            {
                other = Math.Max(other, dam.Effort.Trust * dam.Effort.Ready[t]);
            }

            _ready[t] = one * other;
        }

        Targets.RemoveAll(t =>
        {
            SeasonSums.Until(_ready, 1.0 - SeasonSums.Power(t.Fail, most), _hatched);
            Scale(_hatched, t.Trust);
            return _finishes.Covers(_hatched, raised, cost + (_settings.PairingCost / (1.0 - t.Fail)));
        });
        if (_bound is null)
        {
            return;
        }

        foreach (var sex in RouteWorld.Sexes)
        {
            Children[GroupStates.Index(sex)].RemoveAll(c =>
            {
                SeasonSums.Until(_ready, 1.0 - SeasonSums.Power(c.Fail, most), _hatched);
                var ready = Later(_settings.AgeOf(sex));
                var steps = cost + (_settings.PairingCost / (1.0 - c.Fail));
                var trust = c.Trust * _settings.Rearing;
                if (!_bound.IsHopeless(_finishes, sex, c.Class, 1, ready, trust, raised + 1, steps + _settings.RearingCost))
                {
                    return false;
                }

                // Sisters are asked about for themselves: they may do what one may not.
                for (var copies = 2; sex == Sex.Female && MayBeSisters(c) && copies <= _settings.MostDams; copies++)
                {
                    trust *= _settings.Rearing;
                    if (!_bound.IsHopeless(_finishes, sex, c.Class, copies, ready, trust, raised + copies, steps + (copies * _settings.RearingCost)))
                    {
                        return false;
                    }
                }

                return true;
            });
        }

        Couples.RemoveAll(c =>
        {
            var later = Math.Max(_settings.MaleMaturity, _settings.FemaleMaturity);
            SeasonSums.Until(_ready, 1.0 - SeasonSums.Power(_settings.FemaleMaturity == later ? c.Sister.Fail : c.Brother.Fail, most), _hatched);
            return _bound.IsHopeless(
                _finishes, c.Brother.Class, c.Sister.Class, Later(later), c.Brother.Trust * c.Sister.Trust * _settings.Rearing * _settings.Rearing,
                raised + 2, cost + (_settings.PairingCost / (1.0 - Math.Min(c.Brother.Fail, c.Sister.Fail))) + (2.0 * _settings.RearingCost));
        });
    }

    private void LeaveOutIdle(int sire, int dam)
    {
        foreach (var sex in RouteWorld.Sexes)
        {
            Children[GroupStates.Index(sex)].RemoveAll(c => IsIdle(sex, c.Class, sex == Sex.Male ? sire : dam));
        }
    }

    // An animal as good is there: from the start, or the parent of that sex. To breed another adds nothing.
    private bool IsIdle(Sex sex, int of, int parent)
    {
        if (_isChoosy)
        {
            return false;
        }

        if (_world.Replaces(sex, parent, of))
        {
            return true;
        }

        var known = _owned[GroupStates.Index(sex)];
        if (!known.TryGetValue(of, out var owned))
        {
            owned = _types.Any(t => t.Sex == sex && t is { Price: null, ReadySeason: 1, Trust: >= 1.0 } && _world.Replaces(sex, t.Class, of));
            known.Add(of, owned);
        }

        return owned;
    }

    /// <summary>Takes a share of every chance.</summary>
    public static void Scale(double[] chance, double by)
    {
        for (var t = 1; t < chance.Length; t++)
        {
            chance[t] *= by;
        }
    }

    /// <summary>How many females alike may be paired at once: of founders in doubt one, since all need not be what one is.</summary>
    public int MostDams(RouteLabel dam) =>
        dam.Founder is { Price: null, Trust: >= 1.0 } founder ? Math.Min(founder.Animals.Count, _settings.MostDams) : dam.Copies;

    /// <summary>Whether several sisters may be held back, to give a clutch each: for the last pairing, and where what is held back is certain.</summary>
    public bool MayBeSisters(YoungClass child) =>
        _settings.MostDams > 1 && child.Trust >= 1.0 - 1e-9 && _young.CanFinish(Sex.Female, child.Class);

    private double[] Later(int age)
    {
        SeasonSums.Later(_hatched, age, _later);
        return _later;
    }
}
