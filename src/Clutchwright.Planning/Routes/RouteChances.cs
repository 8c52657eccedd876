using Clutchwright.Genetics.Loci;

namespace Clutchwright.Planning.Routes;

/// <summary>The chance of a route by season from where things stand: some of its animals may be there already.</summary>
/// <remarks>The closed form of docs/model/routes.md. Cost: linear in steps and seasons.</remarks>
internal sealed class RouteChances
{
    private readonly RouteSettings _settings;
    private readonly Route _route;
    private readonly double[][] _ready;
    private readonly double[][] _hatched;
    private readonly double[] _never;
    private readonly double[] _parents;
    private readonly double[]?[] _numbers;

    public RouteChances(RouteWorld world, Route route)
    {
        _settings = world.Problem.Settings;
        _route = route;
        var seasons = _settings.Seasons;
        _ready = [.. route.Roles.Select(_ => new double[seasons + 1])];
        _hatched = [.. route.Steps.Select(_ => new double[seasons + 1])];
        _never = new double[seasons + 1];
        _parents = new double[seasons + 1];
        Fails = [.. route.Steps.Select(s => s.Seen.Select(seen => Math.Pow(world.Clutches.NoneOf(seen), s.Dams)).ToArray())];
        _numbers = [.. route.Steps.Select(s => s.Keep.Any(k => route.Roles[k].Count > 1) ? world.Clutches.NumberOf(s.Seen[0], s.Dams) : null)];
        CoupleFails = [.. route.Steps.Select(s => s.Seen.Count == 2 ? Math.Pow(world.Clutches.NoneOf(s.Seen[0] + s.Seen[1]), s.Dams) : 0.0)];
    }

    public Route Route => _route;

    /// <summary>Gets the pairings expected within the horizon, as last reckoned.</summary>
    public double Pairings { get; private set; }

    /// <summary>For each step the chance that a season gives none of each animal held back from it.</summary>
    public double[][] Fails { get; }

    public double[] CoupleFails { get; }

    /// <summary>The chance within the seasons left.</summary>
    /// <param name="have">For each role the season from which an animal that fills it can be paired, counted from now; 0: there is none yet.</param>
    /// <param name="now">How many seasons are over.</param>
    /// <param name="certain">A step taken to succeed in its first season, or -1.</param>
    public double[] Of(ReadOnlySpan<int> have, int now = 0, int certain = -1)
    {
        var last = _settings.Seasons - now;
        var trust = 1.0;
        Pairings = 0.0;
        var target = _hatched[^1];
        for (var s = 0; s < _route.Steps.Count; s++)
        {
            var step = _route.Steps[s];
            if (!IsOpen(s, have))
            {
                foreach (var role in step.Keep)
                {
                    Fill(_ready[role], have[role], last);
                }

                continue;
            }

            var sire = ReadyOf(step.Sire, have, last);
            var dam = ReadyOf(step.Dam, have, last);
            for (var t = 1; t < _parents.Length; t++)
            {
                _parents[t] = sire[t] * dam[t];
            }

            trust *= step.Trust * Math.Pow(_settings.Rearing, step.Keep.Sum(k => _route.Roles[k].Count));
            if (step.Keep.Count == 2 && have[step.Keep[0]] == 0 && have[step.Keep[1]] == 0)
            {
                var (brother, sister, neither) = certain == s ? (0.0, 0.0, 0.0) : (Fails[s][0], Fails[s][1], CoupleFails[s]);
                var (both, tried) = SeasonSums.Both(_parents, brother, sister, neither, _settings.MaleMaturity, _settings.FemaleMaturity);
                Pairings += tried * step.Dams;
                both.CopyTo(_ready[step.Keep[0]], 0);
                Array.Fill(_ready[step.Keep[1]], 1.0);
                continue;
            }

            var lacking = step.Keep.Count == 0 ? 0 : have[step.Keep[0]] == 0 ? 0 : 1;
            var hatched = _hatched[s];
            if (step.Keep.Count > 0 && _route.Roles[step.Keep[lacking]].Count is > 1 and var count && certain != s)
            {
                Pairings += step.Dams * SeasonSums.UntilCount(_parents, _numbers[s]!, count, hatched);
            }
            else
            {
                Pairings += step.Dams * SeasonSums.Until(_parents, certain == s ? 1.0 : 1.0 - Fails[s][lacking], hatched);
            }

            foreach (var role in step.Keep)
            {
                if (have[role] > 0)
                {
                    Fill(_ready[role], have[role], last);
                }
                else
                {
                    var age = _route.Roles[role].Sex == Sex.Male ? _settings.MaleMaturity : _settings.FemaleMaturity;
                    SeasonSums.Later(hatched, age, _ready[role]);
                }
            }
        }

        foreach (var role in _route.Roles)
        {
            trust *= role.FromStep is null ? role.Trust : 1.0;
        }

        var result = new double[_settings.Seasons + 1];
        for (var t = 1; t <= last; t++)
        {
            result[t + now] = trust * target[t];
        }

        return result;
    }

    /// <summary>What is there at the start: the founders.</summary>
    public int[] Start() => [.. _route.Roles.Select(r => r.FromStep is null ? Math.Max(r.Ready, 1) : 0)];

    /// <summary>Whether a step still has something to give.</summary>
    public bool IsOpen(int step, ReadOnlySpan<int> have)
    {
        var keep = _route.Steps[step].Keep;
        var lacks = keep.Count == 0;
        foreach (var role in keep)
        {
            lacks |= have[role] == 0 && !IsServed(role, have);
        }

        return lacks;
    }

    // A role is served when all that its pairing is for is there without it.
    private bool IsServed(int role, ReadOnlySpan<int> have)
    {
        for (var s = 0; s < _route.Steps.Count; s++)
        {
            var step = _route.Steps[s];
            if (step.Sire != role && step.Dam != role)
            {
                continue;
            }

            if (step.Keep.Count == 0)
            {
                return false;
            }

            foreach (var kept in step.Keep)
            {
                if (have[kept] == 0 && !IsServed(kept, have))
                {
                    return false;
                }
            }
        }

        return true;
    }

    private double[] ReadyOf(int role, ReadOnlySpan<int> have, int last)
    {
        if (have[role] > 0)
        {
            Fill(_ready[role], have[role], last);
        }

        return have[role] > 0 || _route.Roles[role].FromStep is not null ? _ready[role] : _never;
    }

    private static void Fill(double[] ready, int from, int last)
    {
        for (var t = 0; t < ready.Length; t++)
        {
            ready[t] = from > 0 && t >= Math.Max(from, 1) && t <= last ? 1.0 : 0.0;
        }
    }
}
