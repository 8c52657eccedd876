using Clutchwright.Genetics.Loci;

namespace Clutchwright.Planning.Routes;

/// <summary>What comes of pairing: the target, or animals held back, each with what it takes.</summary>
/// <remarks>Classes are looked at before the ways to have them: where even the best of these together could give nothing that is listed, none is tried.</remarks>
internal sealed class RouteBreeding
{
    private readonly RouteWorld _world;
    private readonly RouteSettings _settings;
    private readonly PairYoung _young;
    private readonly RouteFinishes _finishes;
    private readonly RouteLabels _labels;
    private readonly RouteBound? _bound;
    private readonly RouteStakes _stakes;
    private readonly IReadOnlyList<FounderType> _types;
    private readonly Dictionary<int, int> _kinds;
    private readonly Dictionary<int, bool>[] _owned = [[], []];
    private readonly List<YoungClass>[] _children = [[], []];
    private readonly List<(YoungClass Brother, YoungClass Sister)> _couples = [];
    private readonly List<(RouteTarget Target, double Seen, double Trust, double Fail)> _targets = [];
    private readonly double[] _ready;
    private readonly double[] _hatched;
    private readonly double[] _later;
    private readonly double _leastSeen;
    private readonly double _pairing;
    private readonly bool _isChoosy;

    public RouteBreeding(
        RouteWorld world, PairYoung young, IReadOnlyList<FounderType> types, RouteStakes stakes, RouteFinishes finishes, RouteLabels labels, RouteBound? bound)
    {
        (_world, _young, _types, _stakes, _finishes, _labels, _bound) = (world, young, types, stakes, finishes, labels, bound);
        _settings = world.Problem.Settings;
        _kinds = Founders.Kinds(types);
        _ready = new double[_settings.Seasons + 1];
        _hatched = new double[_settings.Seasons + 1];
        _later = new double[_settings.Seasons + 1];
        _leastSeen = LeastSeen(_settings);
        _pairing = _settings.ClutchCost * _settings.Laying;
        _isChoosy = world.Problem.Forbidden is not null;
    }

    /// <summary>How much was tried.</summary>
    public long Work { get; private set; }

    /// <summary>A step that gives what is wanted of it less often than once in a hundred seasons is not taken.</summary>
    public static double LeastSeen(RouteSettings settings) => 0.01 / Math.Max(settings.Clutch.Mean, 0.01);

    /// <summary>Pairs every way to have one class with every way to have another, those that are both ready for the first time in a season.</summary>
    public void Breed(ClassLabels sires, ClassLabels dams, int season)
    {
        if (_world.IsDangerous(sires.Class, dams.Class))
        {
            return;
        }

        Work++;
        var single = dams.Labels.Any(l => l.Copies == 1);
        LookAt(sires.Class, dams.Class, season, single);
        LeaveOut(sires, dams, season);
        if (_targets.Count + _children[0].Count + _children[1].Count + _couples.Count == 0)
        {
            return;
        }

        foreach (var sire in sires.Labels)
        {
            foreach (var dam in dams.Labels)
            {
                if ((sire.Effort.First == season || dam.Effort.First == season) && !sire.IsRemoved && !dam.IsRemoved && MayPair(sire, dam))
                {
                    Breed(sire, dam);
                }
            }
        }
    }

    /// <summary>Mates a brother and a sister from one pairing: their readiness is tied, so that they are reckoned as one.</summary>
    public void Breed(RouteCouple couple)
    {
        LookAt(couple.Brother, couple.Sister, couple.Effort.First, true);
        LeaveOutIdle(couple.Brother, couple.Sister);
        var from = new Pair(couple.Effort, null, null, couple);
        couple.Effort.Ready.CopyTo(_ready, 0);
        foreach (var target in _targets)
        {
            Finish(from, target, 1);
        }

        HoldBack(from, Sex.Male, 1);
        HoldBack(from, Sex.Female, 1);
        HoldBackCouples(from, 1);
    }

    private int Youngest => Math.Min(_settings.MaleMaturity, _settings.FemaleMaturity);

    private int AgeOf(Sex sex) => sex == Sex.Male ? _settings.MaleMaturity : _settings.FemaleMaturity;

    // What the two classes can give, worked out once for all ways to have them.
    private void LookAt(int sire, int dam, int season, bool withYoung)
    {
        _targets.Clear();
        foreach (var target in _world.Targets)
        {
            var (seen, met) = _young.Of(sire, dam, target);
            if (met > 0.0)
            {
                _targets.Add((target, seen, met / seen, _world.NoneOf(seen)));
            }
        }

        _couples.Clear();
        foreach (var sex in RouteWorld.Sexes)
        {
            var into = _children[GroupStates.Index(sex)];
            into.Clear();
            var ready = season + AgeOf(sex);
            if (withYoung && ready <= _settings.Seasons)
            {
                _young.Of(sire, dam, sex, _leastSeen, ready + Youngest > _settings.Seasons, into);
            }
        }

        if (_children[0].Count == 0 || _children[1].Count == 0 || _settings.MostRaised < 2)
        {
            return;
        }

        var sisters = _children[0].ToDictionary(c => c.Class);
        foreach (var brother in _children[1])
        {
            if (_world.SexInGroups)
            {
                _couples.AddRange(_children[0].Where(s => _world.AreAlike(brother.Class, s.Class)).Select(s => (brother, s)));
            }
            else if (sisters.TryGetValue(brother.Class, out var sister))
            {
                _couples.Add((brother, sister));
            }
        }

        _couples.RemoveAll(c => _world.IsDangerous(c.Brother.Class, c.Sister.Class));
    }

    // Leaves out what could give nothing listed even if the best of all ways to have either class came together.
    private void LeaveOut(ClassLabels sires, ClassLabels dams, int season)
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

        _targets.RemoveAll(t =>
        {
            SeasonSums.Until(_ready, 1.0 - Power(t.Fail, most), _hatched);
            Scale(_hatched, t.Trust);
            return _finishes.Covers(_hatched, raised, cost + (_pairing / (1.0 - t.Fail)));
        });
        if (_bound is null)
        {
            return;
        }

        foreach (var sex in RouteWorld.Sexes)
        {
            _children[GroupStates.Index(sex)].RemoveAll(c =>
            {
                SeasonSums.Until(_ready, 1.0 - Power(c.Fail, most), _hatched);
                var ready = Later(AgeOf(sex));
                var steps = cost + (_pairing / (1.0 - c.Fail));
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

        _couples.RemoveAll(c =>
        {
            var later = Math.Max(_settings.MaleMaturity, _settings.FemaleMaturity);
            SeasonSums.Until(_ready, 1.0 - Power(_settings.FemaleMaturity == later ? c.Sister.Fail : c.Brother.Fail, most), _hatched);
            return _bound.IsHopeless(
                _finishes, c.Brother.Class, c.Sister.Class, Later(later), c.Brother.Trust * c.Sister.Trust * _settings.Rearing * _settings.Rearing,
                raised + 2, cost + (_pairing / (1.0 - Math.Min(c.Brother.Fail, c.Sister.Fail))) + (2.0 * _settings.RearingCost));
        });
    }

    private void LeaveOutIdle(int sire, int dam)
    {
        foreach (var sex in RouteWorld.Sexes)
        {
            _children[GroupStates.Index(sex)].RemoveAll(c => IsIdle(sex, c.Class, sex == Sex.Male ? sire : dam));
        }
    }

    private int MostDams(RouteLabel dam) =>
        dam.Founder is { Price: null, Trust: >= 1.0 } founder ? Math.Min(founder.Animals.Count, _settings.MostDams) : dam.Copies;

    private void Breed(RouteLabel sire, RouteLabel dam)
    {
        var (one, other) = (sire.Effort, dam.Effort);
        var beside = DamUse.Beside(one.Uses, other.Uses);
        if (Array.Exists(beside, u => u.Count > _kinds[u.Kind]))
        {
            return;
        }

        var stakes = RouteStakes.Union(one.Stakes, other.Stakes);
        var (doubt, price) = ReferenceEquals(stakes, one.Stakes) ? (one.Doubt, one.Price)
            : ReferenceEquals(stakes, other.Stakes) ? (other.Doubt, other.Price)
            : (_stakes.Trust(stakes), _stakes.Price(stakes));
        for (var t = 1; t < _ready.Length; t++)
        {
            _ready[t] = one.Ready[t] * other.Ready[t];
        }

        var most = MostDams(dam);
        for (var dams = dam.Founder is null ? most : 1; dams <= most; dams++)
        {
            var effort = new RouteEffort(
                _ready, one.Trust * other.Trust, one.Pairings + other.Pairings, one.Raised + other.Raised, one.Cost + other.Cost, stakes, doubt, price,
                DamUse.Then(beside, dam.Founder, dams));
            var from = new Pair(effort, sire, dam, null);
            foreach (var target in _targets)
            {
                Finish(from, target, dams);
            }

            // Several sisters are for the last pairing.
            if (dam.Copies == 1)
            {
                HoldBack(from, Sex.Male, dams);
                HoldBack(from, Sex.Female, dams);
                HoldBackCouples(from, dams);
            }
        }
    }

    private void Finish(Pair from, (RouteTarget Target, double Seen, double Trust, double Fail) target, int dams)
    {
        Work++;
        var effort = from.Effort;
        var success = 1.0 - Power(target.Fail, dams);
        SeasonSums.Until(_ready, success, _hatched);
        Scale(_hatched, effort.Trust * effort.Doubt * target.Trust);
        var pairings = effort.Pairings + (dams / success);
        var cost = effort.FullCost + (_pairing * dams / success);
        if (!_finishes.Covers(_hatched, effort.Raised, cost))
        {
            _finishes.Add(new(
                target.Target, from.Of(dams, target.Seen, 0.0, target.Trust), from.OfCouple(target.Seen, 0.0, target.Trust), [.. _hatched], pairings, effort.Raised, cost));
        }
    }

    private void HoldBack(Pair from, Sex sex, int dams)
    {
        var age = AgeOf(sex);
        var effort = from.Effort;
        foreach (var child in _children[GroupStates.Index(sex)])
        {
            Work++;
            if (sex == Sex.Female && MayBeSisters(child))
            {
                HoldBackSisters(from, child, dams);
            }

            var success = 1.0 - Power(child.Fail, dams);
            SeasonSums.Until(_ready, success, _hatched);
            var trust = effort.Trust * child.Trust * _settings.Rearing;
            var cost = (_pairing * dams / success) + _settings.RearingCost;
            if (!IsHopeless(effort, sex, child.Class, 1, Later(age), trust, cost))
            {
                _labels.Keep(new RouteLabel
                {
                    Sex = sex, Class = child.Class, Effort = effort.Next([.. _later], trust, dams / success, 1, cost),
                    From = from.Of(dams, child.Seen, 0.0, child.Trust), FromCouple = from.OfCouple(child.Seen, 0.0, child.Trust),
                });
            }
        }
    }

    // Sisters alike give a clutch each: for the last pairing, and where what is held back is certain.
    private bool MayBeSisters(YoungClass child) =>
        _settings.MostDams > 1 && child.Trust >= 1.0 - 1e-9 && _young.CanFinish(Sex.Female, child.Class);

    private void HoldBackSisters(Pair from, YoungClass child, int dams)
    {
        var effort = from.Effort;
        var trust = effort.Trust * _settings.Rearing;
        var number = _world.NumberOf(child.Seen, dams);
        for (var copies = 2; copies <= _settings.MostDams; copies++)
        {
            Work++;
            trust *= _settings.Rearing;
            SeasonSums.UntilCount(_ready, number, copies, _hatched);
            var pairings = dams * SeasonSums.SeasonsFor(number, copies);
            var cost = (_pairing * pairings) + (copies * _settings.RearingCost);
            if (!IsHopeless(effort, Sex.Female, child.Class, copies, Later(_settings.FemaleMaturity), trust, cost))
            {
                _labels.Keep(new RouteLabel
                {
                    Sex = Sex.Female, Class = child.Class, Effort = effort.Next([.. _later], trust, pairings, copies, cost), Copies = copies,
                    From = from.Of(dams, child.Seen, 0.0, child.Trust), FromCouple = from.OfCouple(child.Seen, 0.0, child.Trust),
                });
            }
        }
    }

    private void HoldBackCouples(Pair from, int dams)
    {
        var effort = from.Effort;
        foreach (var (brother, sister) in _couples)
        {
            Work++;
            var right = brother.Trust * sister.Trust;
            var trust = effort.Trust * right * _settings.Rearing * _settings.Rearing;
            var (noBrother, noSister, neither) = (Power(brother.Fail, dams), Power(sister.Fail, dams), Power(_world.NoneOf(brother.Seen + sister.Seen), dams));
            var ready = SeasonSums.Both(_ready, noBrother, noSister, neither, _settings.MaleMaturity, _settings.FemaleMaturity).Ready;

            // The later of two waits: one, and the other, less the shorter.
            var pairings = dams * ((1.0 / (1.0 - noBrother)) + (1.0 / (1.0 - noSister)) - (1.0 / (1.0 - neither)));
            var held = effort.Next(ready, trust, pairings, 2, (_pairing * pairings) + (2.0 * _settings.RearingCost));
            if (trust * effort.Doubt * ready[^1] < _finishes.Least
                || (_bound?.IsHopeless(_finishes, brother.Class, sister.Class, ready, trust * effort.Doubt, held.Raised, held.Cost) ?? false))
            {
                continue;
            }

            _labels.Keep(new RouteCouple(brother.Class, sister.Class, held)
            {
                From = from.Of(dams, brother.Seen, sister.Seen, right, isCouple: true), FromCouple = from.OfCouple(brother.Seen, sister.Seen, right),
            });
        }
    }

    private bool IsHopeless(RouteEffort parents, Sex sex, int of, int copies, double[] ready, double trust, double cost)
    {
        var sure = trust * parents.Doubt;
        return parents.Raised + copies > (_settings.MostRaised ?? int.MaxValue)
            || sure * ready[^1] < _finishes.Least
            || (_bound?.IsHopeless(_finishes, sex, of, copies, ready, sure, parents.Raised + copies, parents.Cost + cost) ?? false);
    }

    private double[] Later(int age)
    {
        SeasonSums.Later(_hatched, age, _later);
        return _later;
    }

    private bool MayPair(RouteLabel sire, RouteLabel dam) =>
        _world.Problem.Forbidden is not { } forbidden
        || sire.Founder is not { } males
        || dam.Founder is not { } females
        || males.Animals.Any(m => females.Animals.Any(f => !forbidden(m, f)));

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

    private static void Scale(double[] chance, double by)
    {
        for (var t = 1; t < chance.Length; t++)
        {
            chance[t] *= by;
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

    // Two that are paired, and what it took to have both.
    private sealed record Pair(RouteEffort Effort, RouteLabel? Sire, RouteLabel? Dam, RouteCouple? Couple)
    {
        public RoutePairing? Of(int dams, double seen, double seenSister, double trust, bool isCouple = false) => Couple is not null ? null : new()
        {
            Sire = Sire!, Dam = Dam!, Dams = dams, Seen = seen, SeenSister = seenSister, Trust = trust, IsCouple = isCouple,
        };

        public CouplePairing? OfCouple(double seen, double seenSister, double trust) => Couple is null ? null : new(Couple, seen, seenSister, trust);
    }
}
