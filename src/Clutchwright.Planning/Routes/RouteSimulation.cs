namespace Clutchwright.Planning.Routes;

/// <summary>Tries programmes many times over.</summary>
/// <remarks>Every try draws from a stream of its own, counted from the seed: the same on any number of threads. See docs/model/routes.md.</remarks>
public static class RouteSimulation
{
    /// <summary>Follows one route to the letter: the closed form's own assumptions, drawn instead of summed.</summary>
    /// <param name="problem">What was asked.</param>
    /// <param name="route">A route of its answer.</param>
    /// <param name="tries">How many tries, from 1.</param>
    /// <param name="seed">The seed.</param>
    /// <param name="threads">How many threads, from 1.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <exception cref="OperationCanceledException"><paramref name="cancel"/> was set.</exception>
    public static RouteOutlook Follow(RouteProblem problem, Route route, int tries, ulong seed, int threads = 1, CancellationToken cancel = default) =>
        Run(problem, [route], false, tries, seed, threads, cancel);

    /// <summary>Plans anew after every hatch: each season the route is chosen that then has the best chance, a loss is noticed and made good, and an
    /// animal serves in every role that asks for no more than it is.</summary>
    /// <param name="problem">What was asked.</param>
    /// <param name="routes">Routes of its answer to choose from; the first is the one asked about.</param>
    /// <param name="tries">How many tries, from 1.</param>
    /// <param name="seed">The seed.</param>
    /// <param name="threads">How many threads, from 1.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <exception cref="OperationCanceledException"><paramref name="cancel"/> was set.</exception>
    public static RouteOutlook Replan(
        RouteProblem problem, IReadOnlyList<Route> routes, int tries, ulong seed, int threads = 1, CancellationToken cancel = default) =>
        Run(problem, routes, true, tries, seed, threads, cancel);

    private static RouteOutlook Run(
        RouteProblem problem, IReadOnlyList<Route> routes, bool isReplanned, int tries, ulong seed, int threads, CancellationToken cancel)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(tries, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(threads, 1);
        var world = RouteWorld.Of(problem, routes[0]);
        var draws = new RouteDraws(world);
        var settings = problem.Settings;
        var seasons = new int[tries];
        var waiting = new int[tries];
        var (clutches, raised, cost) = (new double[tries], new double[tries], new double[tries]);
        var trials = Enumerable.Range(0, threads).Select(_ => new RouteTrial(world, draws, routes, isReplanned, seed)).ToArray();
        Parallel.For(0, threads, new ParallelOptions { MaxDegreeOfParallelism = threads, CancellationToken = cancel }, thread =>
        {
            var trial = trials[thread];
            for (var i = thread; i < tries; i += threads)
            {
                cancel.ThrowIfCancellationRequested();
                seasons[i] = trial.Run((ulong)i);
                waiting[i] = trial.Waiting;
                clutches[i] = trial.Clutches;
                raised[i] = trial.Raised;
                cost[i] = trial.Price + (trial.Clutches * settings.ClutchCost) + (trial.Raised * settings.RearingCost);
            }
        });

        var chance = new double[settings.Seasons + 1];
        foreach (var season in seasons.Where(s => s > 0))
        {
            for (var t = season; t < chance.Length; t++)
            {
                chance[t] += 1.0;
            }
        }

        var shares = Array.ConvertAll(chance, c => c / tries);
        var failed = seasons.Count(s => s == 0);
        var stuck = new double[routes[0].Steps.Count];
        for (var i = 0; i < tries; i++)
        {
            if (seasons[i] == 0)
            {
                stuck[waiting[i]] += 1.0 / failed;
            }
        }

        return new(
            tries, shares, Array.ConvertAll(shares, p => Math.Sqrt(p * (1.0 - p) / tries)),
            SpreadOfTries.Of(clutches), SpreadOfTries.Of(raised), SpreadOfTries.Of(cost), stuck);
    }
}
