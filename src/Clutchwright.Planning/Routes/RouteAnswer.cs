namespace Clutchwright.Planning.Routes;

/// <summary>The routes to what is wanted that no other beats: for some number of seasons none has as good a chance by then, with as few animals held back, at as
/// low a cost.</summary>
/// <param name="Routes">The likeliest within the horizon first.</param>
/// <param name="IsProven">Whether the search was complete: no route of the model beats these. Routes with less than a twentieth of the best one's chance, or less
/// than 0.0001, are not looked for.</param>
/// <param name="Rounds">How many generations there is time for.</param>
public sealed record RouteAnswer(IReadOnlyList<Route> Routes, bool IsProven, int Rounds)
{
    /// <summary>The most steps of work a search takes if nothing else is said: some seconds.</summary>
    public const long UsualWork = 30_000_000;

    /// <summary>Searches.</summary>
    /// <param name="problem">What is asked.</param>
    /// <param name="mostWork">After so many tried steps the search ends with what it has, not proven.</param>
    /// <param name="progress">Told after each season looked at: the generations there was time for, and how many routes are known.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <remarks>Cost: grows with the square of the number of classes that can be bred, a product over the wanted loci of three or more each. Six free loci and
    /// sixty animals over eight seasons take some seconds, the first route a fraction of one; over twelve seasons the search is mostly cut.</remarks>
    /// <exception cref="ArgumentException">The settings are out of range, or more than 128 dangers are in reach.</exception>
    /// <exception cref="OperationCanceledException"><paramref name="cancel"/> was set.</exception>
    public static RouteAnswer Of(
        RouteProblem problem, long mostWork = UsualWork, Action<int, int>? progress = null, CancellationToken cancel = default)
    {
        Check(problem.Settings);
        var world = RouteWorld.Of(problem);
        var search = new RouteSearch(world, mostWork);
        var rounds = search.Run(progress, cancel);
        var routes = search.Finishes.Select(f => RouteBuilder.Build(world, f));
        return new(
            [.. routes.OrderByDescending(r => r.Chance).ThenBy(r => r.Pairings).ThenBy(r => r.Raised).ThenBy(r => r.FirstSeason)],
            !search.IsCut,
            rounds);
    }

    private static void Check(RouteSettings settings)
    {
        if (settings.Seasons is < 1 or > RouteSettings.MostSeasons)
        {
            throw new ArgumentException($"A horizon has 1 to {RouteSettings.MostSeasons} seasons.");
        }

        if (settings.MaleMaturity < 1 || settings.FemaleMaturity < 1 || settings.MostDams < 1)
        {
            throw new ArgumentException("Maturity and the females a step are 1 or more.");
        }

        if (settings.Rearing is not (> 0.0 and <= 1.0) || settings.Laying is not (> 0.0 and <= 1.0))
        {
            throw new ArgumentException("Shares lie above 0 and up to 1.");
        }
    }
}
