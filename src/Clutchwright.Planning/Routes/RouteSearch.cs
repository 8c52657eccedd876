using Clutchwright.Genetics.Loci;

namespace Clutchwright.Planning.Routes;

/// <summary>Finds every way to the target that no other beats on all counts, round by round: each round breeds what the one before found.</summary>
/// <remarks>Exact among routes in which a held-back animal serves one pairing, and a brother and sister of one pairing may be mated, unless
/// <see cref="IsCut"/>. See docs/model/routes.md.</remarks>
internal sealed class RouteSearch
{
    private const int MostFinishes = 400;
    private const double LeastTrust = 1e-3;
    private const double LeastReady = 1e-4;

    /// <summary>A route with less than this share of the best one's chance within the horizon is not looked for.</summary>
    private const double LeastShare = 0.05;

    private readonly RouteWorld _world;
    private readonly RouteSettings _settings;
    private readonly PairYoung _young;
    private readonly Dictionary<int, List<RouteLabel>>[] _labels = [[], []];
    private readonly Dictionary<(int Brother, int Sister), List<RouteCouple>> _couples = [];
    private readonly List<RouteFinish> _finishes = [];
    private readonly Dictionary<int, bool>[] _owned = [[], []];
    private readonly List<YoungClass> _sons = [];
    private readonly List<YoungClass> _daughters = [];
    private readonly List<(YoungClass Brother, YoungClass Sister)> _pairs = [];
    private readonly Dictionary<int, int> _kinds = [];
    private readonly TargetBound _bound;
    private readonly double[] _hatched;
    private readonly double[] _ones;
    private readonly double[] _ceiling;
    private readonly double _leastSeen;
    private readonly bool _isChoosy;
    private int _mostClasses;
    private int _mostLabels;
    private long _mostWork;
    private long _work;
    private double _best;

    public RouteSearch(RouteWorld world)
    {
        _world = world;
        _settings = world.Problem.Settings;
        _young = new PairYoung(world);
        _bound = new TargetBound(world);
        _hatched = new double[_settings.Seasons + 1];
        _ones = new double[_settings.Seasons + 1];
        Array.Fill(_ones, 1.0);
        _ceiling = new double[_settings.Seasons + 1];

        // Less than one season in a hundred gives it.
        _leastSeen = 0.01 / Math.Max(_settings.Clutch.Mean, 0.01);
        _isChoosy = world.Problem.Forbidden is not null;
        Types = Founders.Of(world);
        foreach (var type in Types)
        {
            _kinds[type.Animals[0]] = Math.Max(type.Animals.Count, _kinds.GetValueOrDefault(type.Animals[0]));
        }
    }

    public IReadOnlyList<FounderType> Types { get; }

    public IReadOnlyList<RouteFinish> Finishes => _finishes;

    /// <summary>Whether something was left out for want of time or room, so that the best is not proven.</summary>
    public bool IsCut { get; private set; }

    /// <summary>Searches with few ways kept of each class, then with more, until none was left out or the work is done.</summary>
    public int Run(long mostWork, Action<int, int>? progress, CancellationToken cancel)
    {
        var rounds = 0;
        _mostWork = mostWork;
        foreach (var (classes, labels) in ((int, int)[])[(40, 2), (160, 4), (int.MaxValue, 8), (int.MaxValue, 64)])
        {
            _mostClasses = classes;
            _mostLabels = labels;
            IsCut = false;
            Start();
            var round = 1;
            for (; Breed(round, cancel); round++)
            {
                progress?.Invoke(round, _finishes.Count);
            }

            rounds = Math.Max(rounds, round);
            if (!IsCut || _work > _mostWork)
            {
                break;
            }
        }

        _finishes.RemoveAll(f => f.Chance[^1] < LeastShare * _best);
        return rounds;
    }

    private void Start()
    {
        _labels[0].Clear();
        _labels[1].Clear();
        _couples.Clear();
        foreach (var type in Types)
        {
            var ready = new double[_settings.Seasons + 1];
            for (var t = type.ReadySeason; t < ready.Length; t++)
            {
                ready[t] = 1.0;
            }

            Keep(new RouteLabel
            {
                Sex = type.Sex, Class = type.Class, Founder = type, Ready = ready, Trust = type.Trust, Pairings = 0.0, Raised = 0, Price = type.Price ?? 0.0,
            });
        }
    }

    private bool Breed(int round, CancellationToken cancel)
    {
        var males = Standing(Sex.Male);
        var females = Standing(Sex.Female);
        var found = false;
        foreach (var (sireClass, sires) in males)
        {
            cancel.ThrowIfCancellationRequested();
            var freshSire = sires.Any(l => l.Round == round - 1);
            foreach (var (damClass, dams) in females)
            {
                if (!freshSire && !dams.Any(l => l.Round == round - 1))
                {
                    continue;
                }

                if (_work > _mostWork)
                {
                    IsCut = true;
                    return false;
                }

                if (_world.IsDangerous(sireClass, damClass))
                {
                    continue;
                }

                var targets = _world.Targets.Select(t => (Target: t, Chance: _young.Of(sireClass, damClass, t))).Where(t => t.Chance.Met > 0.0).ToArray();
                Bear(sireClass, damClass);
                foreach (var sire in sires)
                {
                    foreach (var dam in dams)
                    {
                        if ((sire.Round == round - 1 || dam.Round == round - 1) && !sire.IsRemoved && !dam.IsRemoved && MayPair(sire, dam))
                        {
                            found |= Breed(sire, dam, targets, round);
                        }
                    }
                }
            }
        }

        return found | Inbreed(round, cancel);
    }

    private bool Breed(RouteLabel sire, RouteLabel dam, (RouteTarget Target, (double Seen, double Met) Chance)[] targets, int round)
    {
        var found = false;
        var beside = DamUse.Of(sire.Uses, dam.Uses, null, 0);
        if (Array.Exists(beside, u => u.Count > _kinds[u.Kind]))
        {
            return false;
        }

        var uses = beside;
        var trust = sire.Trust * dam.Trust;
        var raised = sire.Raised + dam.Raised;
        var price = sire.Price + dam.Price;
        var most = dam.Founder is { Price: null } founder ? Math.Min(founder.Animals.Count, _settings.MostDams) : dam.Copies;
        for (var dams = dam.Founder is null ? most : 1; dams <= most; dams++)
        {
            uses = DamUse.Of(sire.Uses, dam.Uses, dam.Founder, dams);
            foreach (var (target, (seen, met)) in targets)
            {
                _work++;
                var success = Success(seen, dams);
                SeasonSums.Until(sire.Ready, dam.Ready, success, dams, _hatched);
                Finish(new(target, new() { Sire = sire, Dam = dam, Dams = dams, Seen = seen, Trust = met / seen }, null, trust * (met / seen),
                    sire.Pairings + dam.Pairings + (dams / success), raised, price), round);
            }

            found |= HoldBack(_sons, Sex.Male, dams) | HoldBack(_daughters, Sex.Female, dams) | HoldBackCouples(dams);
        }

        return found;

        bool HoldBack(List<YoungClass> young, Sex sex, int dams)
        {
            var any = false;
            var age = sex == Sex.Male ? _settings.MaleMaturity : _settings.FemaleMaturity;
            foreach (var child in young)
            {
                var all = trust * child.Trust * _settings.Rearing;
                if (child.IsIdle || all < LeastTrust)
                {
                    continue;
                }

                any |= sex == Sex.Female && HoldBackSisters(child, dams);

                _work++;
                var success = 1.0 - Power(child.Fail, dams);
                SeasonSums.Until(sire.Ready, dam.Ready, success, dams, _hatched);
                var pairings = sire.Pairings + dam.Pairings + (dams / success);
                if (_hatched.Length - 1 - age < 1 || _hatched[_hatched.Length - 1 - age] < LeastReady
                    || IsHopeless(sex, child.Class, _hatched, age, all, pairings, raised + 1, price))
                {
                    continue;
                }

                any |= Keep(new RouteLabel
                {
                    Sex = sex, Class = child.Class, Ready = SeasonSums.Later(_hatched, age), Trust = all, Pairings = pairings,
                    Raised = raised + 1, Price = price, Round = round, Uses = uses,
                    From = new() { Sire = sire, Dam = dam, Dams = dams, Seen = child.Seen, Trust = child.Trust },
                });
            }

            return any;
        }

        // Sisters alike give a clutch each: for the last pairing, and where what is held back is certain.
        bool HoldBackSisters(YoungClass child, int dams)
        {
            if (child.Trust < 1.0 - 1e-9 || _settings.MostDams < 2 || _bound.Of(Sex.Female, child.Class).Wait > 0)
            {
                return false;
            }

            var any = false;
            var all = trust * _settings.Rearing;
            var number = _world.NumberOf(child.Seen, dams);
            for (var copies = 2; copies <= _settings.MostDams; copies++)
            {
                _work++;
                all *= _settings.Rearing;
                SeasonSums.UntilCount(sire.Ready, dam.Ready, number, copies, dams, _hatched);
                var pairings = sire.Pairings + dam.Pairings + (dams * SeasonSums.SeasonsFor(number, copies));
                if (_hatched.Length - 1 - _settings.FemaleMaturity < 1 || _hatched[_hatched.Length - 1 - _settings.FemaleMaturity] < LeastReady
                    || IsHopeless(Sex.Female, child.Class, _hatched, _settings.FemaleMaturity, all, pairings, raised + copies, price, copies))
                {
                    break;
                }

                any |= Keep(new RouteLabel
                {
                    Sex = Sex.Female, Class = child.Class, Ready = SeasonSums.Later(_hatched, _settings.FemaleMaturity), Trust = all, Pairings = pairings,
                    Raised = raised + copies, Price = price, Round = round, Copies = copies, Uses = uses,
                    From = new() { Sire = sire, Dam = dam, Dams = dams, Seen = child.Seen, Trust = child.Trust },
                });
            }

            return any;
        }

        bool HoldBackCouples(int dams)
        {
            var any = false;
            foreach (var (brother, sister) in _pairs)
            {
                var right = brother.Trust * sister.Trust;
                var all = trust * right * _settings.Rearing * _settings.Rearing;
                if (all < LeastTrust)
                {
                    continue;
                }

                _work++;
                var (noBrother, noSister, neither) = (Power(brother.Fail, dams), Power(sister.Fail, dams), Fail(brother.Seen + sister.Seen, dams));
                var ready = SeasonSums.Both(
                    sire.Ready, dam.Ready, noBrother, noSister, neither, dams, _settings.MaleMaturity, _settings.FemaleMaturity).Ready;

                // The later of two waits: one, and the other, less the shorter.
                var pairings = sire.Pairings + dam.Pairings
                    + (dams * ((1.0 / (1.0 - noBrother)) + (1.0 / (1.0 - noSister)) - (1.0 / (1.0 - neither))));
                if (ready[^1] < LeastReady || IsHopeless(Sex.Male, brother.Class, ready, 0, all, pairings, raised + 2, price)
                    || IsHopeless(Sex.Female, sister.Class, ready, 0, all, pairings, raised + 2, price))
                {
                    continue;
                }

                any |= Keep(new RouteCouple(brother.Class, sister.Class, ready, all, pairings, raised + 2, price, round)
                {
                    Uses = uses,
                    From = new() { Sire = sire, Dam = dam, Dams = dams, Seen = brother.Seen, SeenSister = sister.Seen, Trust = right, IsCouple = true },
                });
            }

            return any;
        }
    }

    // Brother to sister, from one pairing: their readiness is tied, so that they are reckoned as one.
    private bool Inbreed(int round, CancellationToken cancel)
    {
        var found = false;
        foreach (var couple in _couples.SelectMany(c => c.Value).Where(c => c.Round == round).ToArray())
        {
            cancel.ThrowIfCancellationRequested();
            foreach (var target in _world.Targets)
            {
                var (seen, met) = _young.Of(couple.Brother, couple.Sister, target);
                if (met > 0.0)
                {
                    _work++;
                    var success = Success(seen, 1);
                    SeasonSums.Until(couple.Ready, _ones, success, 1, _hatched);
                    Finish(new(target, null, new(couple, seen, met / seen), couple.Trust * (met / seen), couple.Pairings + (1.0 / success), couple.Raised, couple.Price), round);
                }
            }

            Bear(couple.Brother, couple.Sister);
            foreach (var sex in RouteWorld.Sexes)
            {
                var age = sex == Sex.Male ? _settings.MaleMaturity : _settings.FemaleMaturity;
                foreach (var child in sex == Sex.Male ? _sons : _daughters)
                {
                    var all = couple.Trust * child.Trust * _settings.Rearing;
                    if (child.IsIdle || all < LeastTrust)
                    {
                        continue;
                    }

                    _work++;
                    SeasonSums.Until(couple.Ready, _ones, 1.0 - child.Fail, 1, _hatched);
                    var pairings = couple.Pairings + (1.0 / (1.0 - child.Fail));
                    if (_hatched.Length - 1 - age < 1 || _hatched[_hatched.Length - 1 - age] < LeastReady
                        || IsHopeless(sex, child.Class, _hatched, age, all, pairings, couple.Raised + 1, couple.Price))
                    {
                        continue;
                    }

                    found |= Keep(new RouteLabel
                    {
                        Sex = sex, Class = child.Class, Ready = SeasonSums.Later(_hatched, age), Trust = all, Pairings = pairings,
                        Raised = couple.Raised + 1, Price = couple.Price, Round = round, FromCouple = new(couple, child.Seen, child.Trust), Uses = couple.Uses,
                    });
                }
            }
        }

        return found;
    }

    // What the two classes can give, worked out once for all ways to have them.
    private void Bear(int sire, int dam)
    {
        foreach (var sex in RouteWorld.Sexes)
        {
            var into = sex == Sex.Male ? _sons : _daughters;
            _young.Of(sire, dam, sex, _leastSeen, into);
            for (var i = 0; i < into.Count; i++)
            {
                var of = into[i].Class;
                into[i] = into[i] with
                {
                    Fail = _world.NoneOf(into[i].Seen),
                    IsIdle = !_isChoosy && (IsOwned(sex, of) || _world.IsAtLeast(sex, sex == Sex.Male ? sire : dam, of)),
                };
            }
        }

        _pairs.Clear();
        foreach (var brother in _sons)
        {
            foreach (var sister in _daughters)
            {
                if (AreAlike(brother.Class, sister.Class) && !_world.IsDangerous(brother.Class, sister.Class))
                {
                    _pairs.Add((brother, sister));
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

    private bool MayPair(RouteLabel sire, RouteLabel dam) =>
        _world.Problem.Forbidden is not { } forbidden
        || sire.Founder is not { } males
        || dam.Founder is not { } females
        || males.Animals.Any(m => females.Animals.Any(f => !forbidden(m, f)));

    private double Fail(double seen, int dams) => Power(_world.NoneOf(seen), dams);

    private double Success(double seen, int dams) => 1.0 - Fail(seen, dams);

    // Those that promise most, and every founder.
    private List<(int Class, RouteLabel[] Labels)> Standing(Sex sex)
    {
        var all = _labels[GroupStates.Index(sex)].Where(p => p.Value.Count > 0).Select(p => (Class: p.Key, Labels: p.Value.ToArray())).ToList();
        if (all.Count <= _mostClasses)
        {
            return all;
        }

        IsCut = true;
        return
        [
            .. all
                .OrderByDescending(p => p.Labels.Any(l => l.Founder is not null) ? double.PositiveInfinity : p.Labels.Max(l => Math.Log(l.Promise)) + _bound.Closeness(sex, p.Class))
                .ThenBy(p => p.Class)
                .Where((p, i) => i < _mostClasses || p.Labels.Any(l => l.Founder is not null)),
        ];
    }

    // Alike where it can be compared: the sex chromosomes of a brother and a sister differ in any case.
    private bool AreAlike(int brother, int sister)
    {
        for (var g = 0; g < _world.Groups.Count; g++)
        {
            if (!_world.Groups[g].TellsSex && _world.StateAt(brother, Sex.Male, g) != _world.StateAt(sister, Sex.Female, g))
            {
                return false;
            }
        }

        return true;
    }

    // An animal as good is there from the start: to breed another adds nothing.
    private bool IsOwned(Sex sex, int of)
    {
        var known = _owned[GroupStates.Index(sex)];
        if (!known.TryGetValue(of, out var owned))
        {
            owned = Types.Any(t => t.Sex == sex && t is { Price: null, ReadySeason: 1, Trust: >= 1.0 } && _world.IsAtLeast(sex, t.Class, of));
            known.Add(of, owned);
        }

        return owned;
    }

    // Whether nothing bred from it can be listed: a known route beats even the best that could still come of it.
    private bool IsHopeless(Sex sex, int of, double[] hatched, int age, double trust, double pairings, int raised, double price, int copies = 1)
    {
        if (_settings.MostRaised is { } most && raised > most)
        {
            return true;
        }

        var (success, wait) = _bound.Of(sex, of);
        success = sex == Sex.Male ? 1.0 - Power(1.0 - success, _settings.MostDams) : copies > 1 ? 1.0 - Power(1.0 - success, copies) : success;
        var shift = age + wait;
        var ceiling = _ceiling;
        var got = 0.0;
        for (var t = 1; t < ceiling.Length; t++)
        {
            if (t > shift)
            {
                got += (hatched[t - shift] - got) * success;
            }

            ceiling[t] = trust * got;
        }

        if (ceiling[^1] < LeastShare * _best || ceiling[^1] < LeastReady)
        {
            return true;
        }

        foreach (var finish in _finishes)
        {
            if (finish.Pairings <= pairings && finish.Raised <= raised && finish.Price <= price && Covers(finish.Chance, ceiling))
            {
                return true;
            }
        }

        return false;

        static bool Covers(double[] chance, double[] ceiling)
        {
            for (var t = chance.Length - 1; t >= 1; t--)
            {
                if (chance[t] < ceiling[t] - 1e-12)
                {
                    return false;
                }
            }

            return true;
        }
    }

    private bool Keep(RouteLabel label)
    {
        var labels = _labels[GroupStates.Index(label.Sex)];
        var here = labels.TryGetValue(label.Class, out var known) ? known : labels[label.Class] = [];
        if (here.Exists(l => Beats(l, label)) || IsBeatenByBetter(label, labels))
        {
            return false;
        }

        here.RemoveAll(l => Beats(label, l) && (l.IsRemoved = true));
        here.Add(label);
        if (here.Count > _mostLabels)
        {
            IsCut = true;
            var worst = here.MinBy(l => l.Promise)!;
            worst.IsRemoved = true;
            here.Remove(worst);
            return worst != label;
        }

        return true;
    }

    // Where some pairs are forbidden, a founder may be refused a mate that another gets: it takes no one's place, and no one takes its.
    private bool Beats(RouteLabel one, RouteLabel other) => !(_isChoosy && (one.Founder is not null || other.Founder is not null)) && one.Dominates(other);

    // An animal one step better at one group that is had as easily.
    private bool IsBeatenByBetter(RouteLabel label, Dictionary<int, List<RouteLabel>> labels)
    {
        foreach (var better in _world.BetterThan(label.Sex, label.Class))
        {
            if (labels.TryGetValue(better, out var there) && there.Exists(l => Beats(l, label)))
            {
                return true;
            }
        }

        return false;
    }

    private bool Keep(RouteCouple couple)
    {
        var key = (couple.Brother, couple.Sister);
        var here = _couples.TryGetValue(key, out var known) ? known : _couples[key] = [];
        if (here.Exists(c => c.Dominates(couple)))
        {
            return false;
        }

        here.RemoveAll(couple.Dominates);
        here.Add(couple);
        if (here.Count > _mostLabels)
        {
            IsCut = true;
            here.Remove(here.MinBy(c => c.Trust * c.Ready.Sum())!);
        }

        return true;
    }

    private void Finish(RouteFinish finish, int round)
    {
        if (_settings.MostRaised is { } most && finish.Raised > most)
        {
            return;
        }

        var chance = new double[_hatched.Length];
        for (var t = 1; t < chance.Length; t++)
        {
            chance[t] = finish.Trust * _hatched[t];
        }

        if (chance[^1] < LeastReady || chance[^1] < LeastShare * _best)
        {
            return;
        }

        _best = Math.Max(_best, chance[^1]);

        var full = finish with { Chance = chance, Round = round };
        if (_finishes.Exists(f => f.Dominates(full)))
        {
            return;
        }

        _finishes.RemoveAll(full.Dominates);
        _finishes.Add(full);
        if (_finishes.Count > MostFinishes)
        {
            IsCut = true;
            _finishes.Remove(_finishes.MinBy(f => f.Chance[^1])!);
        }
    }
}
