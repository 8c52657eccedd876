using Clutchwright.Genetics.Loci;

namespace Clutchwright.Planning.Tests.Routes;

/// <summary>The pairings of one scheme, reckoned season by season over the states of the stock: what has hatched, and when.</summary>
internal sealed class TwinPlan(Room room, Func<double, double> none)
{
    private readonly Dictionary<RoomTwin.Node, (int Step, bool IsSecond)> _places = new(ReferenceEqualityComparer.Instance);

    public List<TwinStep> Steps { get; } = [];

    public bool Has(RoomTwin.Node node) => _places.ContainsKey(node);

    public void Add(RoomTwin.Node sire, RoomTwin.Node dam, (RoomTwin.Node? Young, double Chance) first, (RoomTwin.Node Young, double Chance)? second)
    {
        if (first.Young is not null)
        {
            _places.Add(first.Young, (Steps.Count, false));
        }

        if (second is not null)
        {
            _places.Add(second.Value.Young, (Steps.Count, true));
        }

        Steps.Add(new(sire, dam, first, second));
    }

    /// <summary>The seasons waited for each step, summed until nothing is left to wait for.</summary>
    public double Pairings() => Steps.Sum(step =>
    {
        var (noFirst, noSecond, neither) = Fails(step);
        var (sum, a, b, c) = (0.0, 1.0, step.Second is null ? 0.0 : 1.0, step.Second is null ? 0.0 : 1.0);
        for (var t = 0; t < 1_000_000 && a + b - c > 1e-15; t++)
        {
            sum += a + b - c;
            (a, b, c) = (a * noFirst, b * noSecond, c * neither);
        }

        return sum;
    });

    /// <summary>The chance that the last step has given what it is for by the end of each season, all animals taken to be right.</summary>
    public double[] HatchedBy()
    {
        var result = new double[room.Seasons + 1];

        // A state: for each step the season in which the first and the second animal hatched, 0 for not yet.
        var states = new Dictionary<long, double> { [0] = 1.0 };
        for (var t = 1; t <= room.Seasons; t++)
        {
            var after = new Dictionary<long, double>();
            foreach (var (state, weight) in states)
            {
                Season(t, 0, state, state, weight, after);
            }

            states = after;
            result[t] = states.Where(s => When(s.Key, Steps.Count - 1, false) > 0).Sum(s => s.Value);
        }

        return result;
    }

    private static int When(long state, int step, bool second) => (int)((state >> ((8 * step) + (second ? 4 : 0))) & 15);

    private static long With(long state, int step, bool second, int season) => state | ((long)season << ((8 * step) + (second ? 4 : 0)));

    private (double NoFirst, double NoSecond, double Neither) Fails(TwinStep step) => step.Second is { } second
        ? (none(step.First.Chance), none(second.Chance), none(step.First.Chance + second.Chance))
        : (none(step.First.Chance), 0.0, 0.0);

    private void Season(int t, int step, long before, long state, double weight, Dictionary<long, double> into)
    {
        if (step == Steps.Count)
        {
            into[state] = into.GetValueOrDefault(state) + weight;
            return;
        }

        var here = Steps[step];
        var (hasFirst, hasSecond) = (When(before, step, false) > 0, here.Second is null || When(before, step, true) > 0);
        if ((hasFirst && hasSecond) || !IsReady(here.Sire, before, t) || !IsReady(here.Dam, before, t))
        {
            Season(t, step + 1, before, state, weight, into);
            return;
        }

        var (noFirst, noSecond, neither) = Fails(here);
        if (here.Second is null)
        {
            Season(t, step + 1, before, state, weight * noFirst, into);
            Season(t, step + 1, before, With(state, step, false, t), weight * (1 - noFirst), into);
            return;
        }

        foreach (var (one, two, chance) in ((bool, bool, double)[])
            [(false, false, neither), (true, false, noSecond - neither), (false, true, noFirst - neither), (true, true, 1 - noFirst - noSecond + neither)])
        {
            if (chance > 0.0)
            {
                var now = !hasFirst && one ? With(state, step, false, t) : state;
                now = !hasSecond && two ? With(now, step, true, t) : now;
                Season(t, step + 1, before, now, weight * chance, into);
            }
        }
    }

    private bool IsReady(RoomTwin.Node node, long state, int season) => node.Sire is null
        ? node.Ready <= season
        : _places[node] is var (step, isSecond) && When(state, step, isSecond) is > 0 and var hatched
            && hatched + (node.Sex == Sex.Male ? room.MaleAge : room.FemaleAge) <= season;
}

/// <summary>A pairing of a scheme.</summary>
/// <param name="Sire">The sire.</param>
/// <param name="Dam">The dam.</param>
/// <param name="First">What is waited for, none being the target, and the chance per good egg that a hatchling looks so.</param>
/// <param name="Second">The sister, where both of a couple are waited for.</param>
internal sealed record TwinStep(
    RoomTwin.Node Sire, RoomTwin.Node Dam, (RoomTwin.Node? Young, double Chance) First, (RoomTwin.Node Young, double Chance)? Second);
