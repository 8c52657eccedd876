using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;

namespace Clutchwright.Planning.Routes;

/// <summary>Writes out a way to the target as roles and steps.</summary>
internal sealed class RouteBuilder
{
    private readonly RouteWorld _world;
    private readonly List<RouteRole> _roles = [];
    private readonly List<RouteStep> _steps = [];
    private readonly Dictionary<(FounderType Type, int Copy), int> _founders = [];

    private RouteBuilder(RouteWorld world) => _world = world;

    /// <summary>Writes out the route.</summary>
    public static Route Build(RouteWorld world, RouteFinish finish)
    {
        var builder = new RouteBuilder(world);
        if (finish.From is { } pairing)
        {
            builder.Step(pairing);
        }
        else
        {
            builder.Step(finish.FromCouple!);
        }

        return builder.Done(finish);
    }

    private Route Done(RouteFinish finish)
    {
        var settings = _world.Problem.Settings;
        var prices = _founders.Keys.Where(k => k.Type.Price is not null).Sum(k => k.Type.Price!.Value);
        var clutches = finish.Pairings * settings.Laying;
        var drawn = new Route(_roles, _steps, IndexOf(finish.Target), finish.Chance, finish.Pairings, clutches, finish.Raised, prices, 0.0);
        var chances = new RouteChances(_world, drawn);
        var chance = chances.Of(chances.Start());

        // An animal in doubt that serves in several pairings is in doubt once.
        return new(
            _roles, _steps, drawn.Alternative, chance, finish.Pairings, clutches, finish.Raised, prices,
            prices + (clutches * settings.ClutchCost) + (finish.Raised * settings.RearingCost))
        {
            World = _world,
            ClutchesWithin = chances.Pairings * settings.Laying,
        };
    }

    private int IndexOf(RouteTarget target)
    {
        for (var i = 0; i < _world.Targets.Count; i++)
        {
            if (ReferenceEquals(_world.Targets[i], target))
            {
                return i;
            }
        }

        throw new InvalidOperationException("A target of another world.");
    }

    private int Step(RoutePairing pairing, int count = 1)
    {
        var sire = Role(pairing.Sire);
        var dam = Role(pairing.Dam);
        var season = Math.Max(_roles[sire].Ready, _roles[dam].Ready);
        return Add(season, sire, dam, pairing.Dams, pairing.Seen, pairing.SeenSister, pairing.Trust, count);
    }

    private int Step(CouplePairing pairing, int count = 1)
    {
        var couple = pairing.Couple;
        var from = couple.From is { } parents ? Step(parents) : Step(couple.FromCouple!);
        var settings = _world.Problem.Settings;
        var hatched = _steps[from].Season;
        var brother = HeldBack(Sex.Male, couple.Brother, from, hatched + settings.MaleMaturity);
        var sister = HeldBack(Sex.Female, couple.Sister, from, hatched + settings.FemaleMaturity);
        var season = Math.Max(_roles[brother].Ready, _roles[sister].Ready);
        return Add(season, brother, sister, 1, pairing.Seen, pairing.SeenSister, pairing.Trust, count);
    }

    private int Add(int season, int sire, int dam, int dams, double seen, double seenSister, double trust, int count)
    {
        var success = seenSister > 0.0 ? 1.0 - Fail(seen, dams) - Fail(seenSister, dams) + Fail(seen + seenSister, dams)
            : count > 1 ? 1.0 - _world.Clutches.NumberOf(seen, dams).Take(count).Sum()
            : 1.0 - Fail(seen, dams);
        _steps.Add(new(season, sire, dam, dams, [], seenSister > 0.0 ? [seen, seenSister] : [seen], trust, success));
        return _steps.Count - 1;
    }

    private int Role(RouteLabel label)
    {
        if (label.Founder is { } type)
        {
            // One animal bought serves as often as it is asked for; a male of the stock too.
            if (!_founders.TryGetValue((type, 0), out var known))
            {
                _founders.Add((type, 0), known = _roles.Count);
                _roles.Add(new(label.Sex, GenotypeOf(label.Sex, label.Class), type.Animals, null, type.Trust, type.ReadySeason));
            }

            return known;
        }

        var from = label.From is { } pairing ? Step(pairing, label.Copies) : Step(label.FromCouple!, label.Copies);
        var age = label.Sex == Sex.Male ? _world.Problem.Settings.MaleMaturity : _world.Problem.Settings.FemaleMaturity;
        return HeldBack(label.Sex, label.Class, from, _steps[from].Season + age, label.Copies);
    }

    private int HeldBack(Sex sex, int of, int from, int ready, int count = 1)
    {
        var place = _roles.Count;
        _roles.Add(new(sex, GenotypeOf(sex, of), [], from, _steps[from].Trust, ready) { Count = count });
        _steps[from] = _steps[from] with { Keep = [.. _steps[from].Keep, place] };
        return place;
    }

    private Genotype GenotypeOf(Sex sex, int of)
    {
        var genotype = Genotype.Wild(_world.Problem.Species, sex);
        for (var g = 0; g < _world.Groups.Count; g++)
        {
            genotype = genotype.With(_world.Groups[g].Group, _world.Groups[g].State(sex, _world.StateAt(of, sex, g)));
        }

        return genotype;
    }

    private double Fail(double seen, int dams) => Math.Pow(_world.Clutches.NoneOf(seen), dams);
}
