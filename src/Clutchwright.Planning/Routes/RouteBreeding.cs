using Clutchwright.Genetics.Loci;

namespace Clutchwright.Planning.Routes;

/// <summary>What comes of pairing: the target, or animals held back, each with what it takes.</summary>
/// <remarks>Classes are looked at before the ways to have them: where even the best of these together could give nothing that is listed, none is tried.</remarks>
internal sealed class RouteBreeding
{
    private readonly RouteWorld _world;
    private readonly RouteSettings _settings;
    private readonly PairGifts _gifts;
    private readonly RouteFinishes _finishes;
    private readonly RouteLabels _labels;
    private readonly RouteBound? _bound;
    private readonly RouteStakes _stakes;
    private readonly Dictionary<int, int> _kinds;
    private readonly double[] _ready;
    private readonly double[] _hatched;
    private readonly double[] _later;

    public RouteBreeding(
        RouteWorld world, PairYoung young, IReadOnlyList<FounderType> types, RouteStakes stakes, RouteFinishes finishes, RouteLabels labels, RouteBound? bound)
    {
        (_world, _stakes, _finishes, _labels, _bound) = (world, stakes, finishes, labels, bound);
        _gifts = new PairGifts(world, young, types, finishes, bound);
        _settings = world.Problem.Settings;
        _kinds = Founders.Kinds(types);
        _ready = new double[_settings.Seasons + 1];
        _hatched = new double[_settings.Seasons + 1];
        _later = new double[_settings.Seasons + 1];
    }

    /// <summary>How much was tried.</summary>
    public long Work { get; private set; }

    /// <summary>Pairs every way to have one class with every way to have another, those that are both ready for the first time in a season.</summary>
    public void Breed(ClassLabels sires, ClassLabels dams, int season)
    {
        if (_world.IsDangerous(sires.Class, dams.Class))
        {
            return;
        }

        Work++;
        _gifts.Look(sires, dams, season);
        if (_gifts.IsNothing)
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
        _gifts.Look(couple);
        var from = new Pair(couple.Effort, null, null, couple);
        couple.Effort.Ready.CopyTo(_ready, 0);
        foreach (var target in _gifts.Targets)
        {
            Finish(from, target, 1);
        }

        HoldBack(from, Sex.Male, 1);
        HoldBack(from, Sex.Female, 1);
        HoldBackCouples(from, 1);
    }

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

        var most = _gifts.MostDams(dam);
        for (var dams = dam.Founder is null ? most : 1; dams <= most; dams++)
        {
            var effort = new RouteEffort(
                _ready, one.Trust * other.Trust, one.Pairings + other.Pairings, one.Raised + other.Raised, one.Cost + other.Cost, stakes, doubt, price,
                DamUse.Then(beside, dam.Founder, dams));
            var from = new Pair(effort, sire, dam, null);
            foreach (var target in _gifts.Targets)
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
        var success = 1.0 - SeasonSums.Power(target.Fail, dams);
        SeasonSums.Until(_ready, success, _hatched);
        PairGifts.Scale(_hatched, effort.Trust * effort.Doubt * target.Trust);
        var pairings = effort.Pairings + (dams / success);
        var cost = effort.FullCost + (_settings.PairingCost * dams / success);
        if (!_finishes.Covers(_hatched, effort.Raised, cost))
        {
            _finishes.Add(new(
                target.Target, from.Of(dams, target.Seen, 0.0, target.Trust), from.OfCouple(target.Seen, 0.0, target.Trust), [.. _hatched], pairings, effort.Raised, cost));
        }
    }

    private void HoldBack(Pair from, Sex sex, int dams)
    {
        var age = _settings.AgeOf(sex);
        var effort = from.Effort;
        foreach (var child in _gifts.Children[GroupStates.Index(sex)])
        {
            Work++;
            if (sex == Sex.Female && _gifts.MayBeSisters(child))
            {
                HoldBackSisters(from, child, dams);
            }

            var success = 1.0 - SeasonSums.Power(child.Fail, dams);
            SeasonSums.Until(_ready, success, _hatched);
            var trust = effort.Trust * child.Trust * _settings.Rearing;
            var cost = (_settings.PairingCost * dams / success) + _settings.RearingCost;
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

    private void HoldBackSisters(Pair from, YoungClass child, int dams)
    {
        var effort = from.Effort;
        var trust = effort.Trust * _settings.Rearing;
        var number = _world.Clutches.NumberOf(child.Seen, dams);
        for (var copies = 2; copies <= _settings.MostDams; copies++)
        {
            Work++;
            trust *= _settings.Rearing;
            SeasonSums.UntilCount(_ready, number, copies, _hatched);
            var pairings = dams * SeasonSums.SeasonsFor(number, copies);
            var cost = (_settings.PairingCost * pairings) + (copies * _settings.RearingCost);
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
        foreach (var (brother, sister) in _gifts.Couples)
        {
            Work++;
            var right = brother.Trust * sister.Trust;
            var trust = effort.Trust * right * _settings.Rearing * _settings.Rearing;
            var (noBrother, noSister, neither) = (SeasonSums.Power(brother.Fail, dams), SeasonSums.Power(sister.Fail, dams), SeasonSums.Power(_world.Clutches.NoneOf(brother.Seen + sister.Seen), dams));
            var ready = SeasonSums.Both(_ready, noBrother, noSister, neither, _settings.MaleMaturity, _settings.FemaleMaturity).Ready;

            // The later of two waits: one, and the other, less the shorter.
            var pairings = dams * ((1.0 / (1.0 - noBrother)) + (1.0 / (1.0 - noSister)) - (1.0 / (1.0 - neither)));
            var held = effort.Next(ready, trust, pairings, 2, (_settings.PairingCost * pairings) + (2.0 * _settings.RearingCost));
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
