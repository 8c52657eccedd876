namespace Clutchwright.Planning.Seasons;

/// <summary>Finds which male goes to which female.</summary>
public static class SeasonPlanner
{
    /// <summary>Finds the best plan of a season.</summary>
    /// <param name="problem">The season.</param>
    /// <param name="settings">How to look; <c>null</c>: <see cref="SeasonSettings.Default"/>.</param>
    /// <param name="progress">Is told how the search stands; <c>null</c>: nobody.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <returns>The best plan found with a bound that holds for all plans, or which of the things asked for clash. The figures are
    /// exact; the bound is that of a linear programme of tangents, so it holds whatever their number. The same problem and settings give the same plan.</returns>
    /// <remarks>Assumes that what two males may be is independent, and clutch sizes too. Cost: some linear programmes of one column a pair.
    /// Source: docs/model/season.md.</remarks>
    /// <exception cref="OperationCanceledException"><paramref name="cancel"/> was set.</exception>
    public static SeasonPlan Plan(
        SeasonProblem problem, SeasonSettings? settings = null, IProgress<SeasonProgress>? progress = null, CancellationToken cancel = default)
    {
        settings ??= SeasonSettings.Default;
        if (SeasonClashes.OfBars(problem) is { Count: > 0 } barred)
        {
            return None(barred);
        }

        using var master = new SeasonMaster(problem);
        var found = new SeasonSearch(problem, master, settings, progress).Run(settings.Hint, cancel);
        if (found.Chosen is not { } chosen)
        {
            return None(SeasonClashes.Of(problem, settings, cancel));
        }

        var gap = found.Bound - found.Objective;
        var isOptimal = gap <= settings.Tolerance * Math.Max(1.0, Math.Abs(found.Objective));
        var choices = chosen.Select(p => Choice(problem, chosen, found.Figures!, p)).ToArray();
        if (settings.WithRunnersUp)
        {
            var quiet = new SeasonSearch(problem, master, settings, null);
            for (var i = 0; i < choices.Length; i++)
            {
                choices[i] = choices[i] with { RunnerUp = Without(problem, master, quiet, found, choices[i].Pair, cancel) };
                progress?.Report(new(i + 1, found.Objective, found.Bound));
            }
        }

        return new(
            isOptimal ? SeasonStatus.Optimal : SeasonStatus.Feasible, chosen, found.Figures!, found.Objective, Math.Max(found.Bound, found.Objective), choices, []);
    }

    /// <summary>The exact figures of the goals for pairings that somebody else has chosen.</summary>
    /// <param name="problem">The season.</param>
    /// <param name="chosen">The pairs, by their places.</param>
    /// <returns>The figure of each goal, in the order of the goals. Limits are not looked at.</returns>
    public static IReadOnlyList<double> FiguresOf(SeasonProblem problem, IReadOnlyList<int> chosen) => SeasonFigures.Of(problem, chosen);

    private static SeasonPlan None(IReadOnlyList<SeasonClash> clashes) => new(SeasonStatus.Infeasible, [], [], 0.0, 0.0, [], clashes);

    private static SeasonChoice Choice(SeasonProblem problem, IReadOnlyList<int> chosen, IReadOnlyList<double> figures, int pair)
    {
        var without = SeasonFigures.Of(problem, [.. chosen.Where(p => p != pair)]);
        return new(pair, [.. figures.Select((f, g) => f - without[g])], SeasonFigures.Of(problem, [pair]), null);
    }

    private static SeasonRunnerUp Without(
        SeasonProblem problem, SeasonMaster master, SeasonSearch search, SeasonFound found, int pair, CancellationToken cancel)
    {
        var column = master.ColumnOf(pair)!.Value;
        var (least, most) = master.Programme.BoundsOf(column);
        if (least > 0.0)
        {
            return new(null, 0.0, 0.0, 0.0, IsPossible: false);
        }

        master.Programme.Bound(column, 0.0, 0.0);
        try
        {
            var other = search.Run([.. found.Chosen!.Where(p => p != pair)], cancel);
            if (other.Chosen is not { } chosen)
            {
                return new(null, 0.0, 0.0, 0.0, IsPossible: false);
            }

            var cost = Math.Max(0.0, found.Objective - other.Objective);
            int? instead = chosen.Where(p => problem.Pairs[p].Dam == problem.Pairs[pair].Dam).Select(p => (int?)p).FirstOrDefault();
            return new(instead, cost, cost, Math.Clamp(found.Objective - other.Bound, 0.0, cost), IsPossible: true);
        }
        finally
        {
            master.Programme.Bound(column, least, most);
        }
    }
}
