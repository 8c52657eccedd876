using Clutchwright.Genetics.Loci;

namespace Clutchwright.Planning.Routes;

/// <summary>One try at a programme: clutches are drawn, hatchlings held back by their look, and the plan is followed or chosen anew each season.</summary>
/// <remarks>One thread at a time; the plans' buffers are its own.</remarks>
internal sealed class RouteTrial
{
    private readonly RouteWorld _world;
    private readonly RouteSettings _settings;
    private readonly RouteChances[] _plans;
    private readonly RolePlace[][] _roles;
    private readonly bool _isReplanned;
    private readonly RouteSampler _sampler;
    private readonly int[] _named;
    private readonly List<TrialAnimal> _animals = [];
    private readonly List<TrialAnimal> _born = [];
    private readonly List<TrialAnimal> _there = [];
    private readonly HashSet<TrialAnimal> _busy = [];
    private readonly int[][] _have;
    private readonly TrialAnimal?[][] _who;

    /// <param name="world">The world; only read here.</param>
    /// <param name="draws">What clutches and young are drawn from.</param>
    /// <param name="plans">The route followed, or those to choose from; the first is the one asked about.</param>
    /// <param name="isReplanned">Whether the plan is chosen anew each season, and losses are noticed.</param>
    /// <param name="seed">The seed of all tries.</param>
    public RouteTrial(RouteWorld world, RouteDraws draws, IReadOnlyList<Route> plans, bool isReplanned, ulong seed)
    {
        _world = world;
        _settings = world.Problem.Settings;
        _plans = [.. plans.Select(p => new RouteChances(world, p))];
        _roles = [.. plans.Select(p => p.Roles.Select(r => RolePlace.Of(world, r)).ToArray())];
        _isReplanned = isReplanned;
        _sampler = new RouteSampler(world, draws, seed);
        _named = [.. plans.SelectMany(p => p.Roles).SelectMany(r => r.Animals).Distinct().Order()];
        _have = [.. plans.Select(p => new int[p.Roles.Count])];
        _who = [.. plans.Select(p => new TrialAnimal?[p.Roles.Count])];
    }

    public int Clutches { get; private set; }

    public int Raised { get; private set; }

    public double Price { get; private set; }

    /// <summary>The first step of the first plan that was still waited for at the end.</summary>
    public int Waiting { get; private set; }

    /// <summary>Runs one try and gives the season in which the wanted hatched; 0: it did not.</summary>
    public int Run(ulong stream)
    {
        _sampler.Start(stream);
        _animals.Clear();
        (Clutches, Raised, Price, Waiting) = (0, 0, 0.0, 0);
        foreach (var i in _named)
        {
            var animal = _world.Problem.Animals[i];
            _animals.Add(new(animal.Sex, i, -1, -1, _sampler.Founder(animal), Math.Max(1, animal.ReadySeason)) { Price = animal.Price });
        }

        for (var season = 1; season <= _settings.Seasons; season++)
        {
            if (Choose(season) is >= 0 and var plan && Breed(plan, season) is { } isRight)
            {
                return isRight ? season : 0;
            }
        }

        Cast(0, _settings.Seasons + 1);
        Waiting = Enumerable.Range(0, _plans[0].Route.Steps.Count).First(s => _plans[0].IsOpen(s, _have[0]));
        return 0;
    }

    // The plan with the best chance in the seasons left, given what is there.
    private int Choose(int season)
    {
        var (best, chance) = (-1, 0.0);
        for (var p = 0; p < _plans.Length; p++)
        {
            Cast(p, season);
            var here = _plans.Length == 1 ? 1.0 : _plans[p].Of(_have[p], season - 1)[^1];
            if (here > chance)
            {
                (best, chance) = (p, here);
            }
        }

        return best;
    }

    private void Cast(int plan, int season)
    {
        var roles = _plans[plan].Route.Roles;
        for (var r = 0; r < roles.Count; r++)
        {
            _there.Clear();
            foreach (var animal in _animals)
            {
                if (Fills(animal, plan, r))
                {
                    _there.Add(animal);
                }
            }

            // Sisters are paired together, so that the last one needed counts.
            var needed = roles[r].FromStep is null ? 1 : roles[r].Count;
            if (_there.Count > 1)
            {
                _there.Sort((a, b) => a.Ready.CompareTo(b.Ready));
            }

            var isThere = _there.Count >= needed;
            _have[plan][r] = isThere ? Math.Max(1, _there[needed - 1].Ready - season + 1) : 0;
            _who[plan][r] = isThere ? _there[0] : null;
        }
    }

    private bool Fills(TrialAnimal animal, int plan, int role)
    {
        var asked = _plans[plan].Route.Roles[role];
        if (animal.Sex != asked.Sex)
        {
            return false;
        }

        if (animal.Founder >= 0 || asked.FromStep is null)
        {
            return animal.Founder >= 0 && asked.Animals.Contains(animal.Founder);
        }

        return _isReplanned ? _world.IsAtLeast(animal.Sex, animal.Taken, _roles[plan][role].Class) : animal.Role == role;
    }

    // Whether the target was picked, and rightly; null: not yet.
    private bool? Breed(int plan, int season)
    {
        var route = _plans[plan].Route;
        _busy.Clear();
        _born.Clear();
        for (var s = route.Steps.Count - 1; s >= 0; s--)
        {
            var step = route.Steps[s];
            if (_have[plan][step.Sire] != 1 || _have[plan][step.Dam] != 1 || !_plans[plan].IsOpen(s, _have[plan]))
            {
                continue;
            }

            var sire = _who[plan][step.Sire]!;
            Buy(sire);
            var paired = 0;
            for (var i = 0; i < _animals.Count && paired < step.Dams; i++)
            {
                var dam = _animals[i];
                if (dam.Ready > season || !Fills(dam, plan, step.Dam) || !_busy.Add(dam))
                {
                    continue;
                }

                paired++;
                Buy(dam);
                if (Hatch(plan, step, sire, dam, season) is { } isRight)
                {
                    return isRight;
                }
            }
        }

        _animals.AddRange(_born);
        return null;
    }

    private bool? Hatch(int plan, RouteStep step, TrialAnimal sire, TrialAnimal dam, int season)
    {
        var clutch = _sampler.Clutch();
        if (clutch.Eggs == 0)
        {
            return null;
        }

        Clutches++;
        bool? picked = null;
        for (var e = 0; e < clutch.Good && !(sire.IsBarren || dam.IsBarren); e++)
        {
            if (_sampler.Egg(sire.States, dam.States) is not var (sex, states))
            {
                continue;
            }

            if (step.Keep.Count == 0)
            {
                var target = _world.Targets[_plans[plan].Route.Alternative];
                if (picked is null && (target.Wanted.Sex ?? sex) == sex && _sampler.LooksRight(sex, states, target.Requirements, target.Hidden))
                {
                    picked = IsRight(target, sex, states);
                }
            }
            else
            {
                HoldBack(plan, step, sex, states, season);
            }
        }

        return picked;
    }

    private void HoldBack(int plan, RouteStep step, Sex sex, int[] states, int season)
    {
        foreach (var role in step.Keep)
        {
            var asked = _plans[plan].Route.Roles[role];
            var place = _roles[plan][role];
            if (asked.Sex != sex || Count(plan, role) >= asked.Count || !_sampler.LooksRight(sex, states, place.Requirements, place.Hidden))
            {
                continue;
            }

            Raised++;
            var lives = _sampler.Rears();
            if (lives || !_isReplanned)
            {
                var age = sex == Sex.Male ? _settings.MaleMaturity : _settings.FemaleMaturity;
                _born.Add(new(sex, -1, role, place.Class, states, season + age) { IsBarren = !lives });
            }

            return;
        }
    }

    private int Count(int plan, int role) => _animals.Count(a => Fills(a, plan, role)) + _born.Count(a => Fills(a, plan, role));

    private bool IsRight(RouteTarget target, Sex sex, int[] states)
    {
        for (var g = 0; g < states.Length; g++)
        {
            if (!_world.Groups[g].Accepts(target.Requirements[g], sex, states[g]))
            {
                return false;
            }
        }

        return true;
    }

    private void Buy(TrialAnimal animal)
    {
        if (animal.Price is { } price && !animal.IsBought)
        {
            animal.IsBought = true;
            Price += price;
        }
    }
}

/// <summary>What a role asks for.</summary>
/// <param name="Class">The class.</param>
/// <param name="Requirements">The requirement at each group.</param>
/// <param name="Hidden">The groups of which nothing can be told by eye.</param>
internal sealed record RolePlace(int Class, IReadOnlyList<int> Requirements, uint Hidden)
{
    public static RolePlace Of(RouteWorld world, RouteRole role)
    {
        int[] states = [.. world.Groups.Select(g => g.StateOf(role.Sex, role.Genotype[g.Group]))];
        var of = world.ClassOf(role.Sex, states);
        return new(of, [.. world.Groups.Select((g, i) => g.AtLeast(role.Sex, states[i]))], world.HiddenIn(role.Sex, of));
    }
}

/// <summary>An animal of a try. Two are the same only if they are one.</summary>
internal sealed class TrialAnimal(Sex sex, int founder, int role, int taken, int[] states, int ready)
{
    public Sex Sex { get; } = sex;

    /// <summary>The place among the problem's animals; -1: held back.</summary>
    public int Founder { get; } = founder;

    /// <summary>The role it was held back for.</summary>
    public int Role { get; } = role;

    /// <summary>The class it is taken for.</summary>
    public int Taken { get; } = taken;

    /// <summary>What it really is.</summary>
    public int[] States { get; } = states;

    public int Ready { get; } = ready;

    public double? Price { get; init; }

    public bool IsBought { get; set; }

    /// <summary>Whether it died or does not breed; who follows a plan blindly does not learn of it.</summary>
    public bool IsBarren { get; init; }
}
