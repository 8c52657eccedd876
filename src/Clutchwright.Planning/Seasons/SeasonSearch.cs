namespace Clutchwright.Planning.Seasons;

/// <summary>The search for the best plan over a master programme: relax, solve the choices that can still matter in whole numbers, weigh the
/// plan exactly, tighten the bound there, and again until the two meet.</summary>
internal sealed class SeasonSearch(SeasonProblem problem, SeasonMaster master, SeasonSettings settings, IProgress<SeasonProgress>? progress)
{
    private const int FewPerDam = 4;
    private const double Coarse = 1e-3;
    private const double Standstill = 1e-4;

    private int _step;

    /// <summary>Searches.</summary>
    /// <param name="hint">A plan to begin from; null: none.</param>
    /// <param name="cancel">Stops the search.</param>
    public SeasonFound Run(IReadOnlyList<int>? hint, CancellationToken cancel)
    {
        var scale = problem.Goals.Sum(g => Math.Abs(g.Weight) * (g is SeasonGoal.Sum s ? s.Values.Select(Math.Abs).DefaultIfEmpty().Max() : 1.0));
        var tolerance = settings.Tolerance * Math.Max(1e-9, Math.Min(1.0, scale));
        var weights = problem.Goals.Where(g => g is not SeasonGoal.Sum).Sum(g => g.Weight);
        Best? best = null;
        if (hint is not null)
        {
            Try(hint);
        }

        var bound = double.PositiveInfinity;
        var isExhausted = false;
        var (work, stalled) = (0L, 0);
        for (var round = 1; round <= settings.MostRounds && work <= settings.MostWork && stalled < settings.MostStalled; round++)
        {
            var relaxed = master.Relax(round == 1 ? 40 : 8, Fineness(), cancel);
            if (relaxed is null)
            {
                return new(best?.Chosen, best?.Figures, best?.Objective ?? 0.0, best?.Objective ?? double.NegativeInfinity);
            }

            bound = Math.Min(bound, Math.Max(relaxed.Bound, best?.Objective ?? double.NegativeInfinity));
            Tell(bound);
            if (IsDone())
            {
                break;
            }

            // A choice whose price puts every plan with it below the best one known need not be looked at. While that leaves many,
            // a plan is sought among the likeliest first.
            var full = best is { } known ? Math.Max(0.0, relaxed.Bound - known.Objective) + tolerance : double.PositiveInfinity;
            var reach = isExhausted ? full : Math.Min(full, master.ReachOf(relaxed, FewPerDam * problem.Dams.Count) + tolerance);
            var whole = master.Programme.Solve(j => relaxed.Reduced[j] >= -reach, best?.Values, settings.MostNodes, cancel);
            var before = best;
            work += whole.Work * master.Programme.RowCount;
            if (whole.Values is { } values)
            {
                var chosen = master.ChosenIn(values);
                var figures = Try(chosen);
                master.CutAt(chosen, figures, values, settings.Tolerance / 8.0);
            }
            isExhausted = reach < full && whole.Bound <= (best?.Objective ?? double.PositiveInfinity) + tolerance;
            var outside = relaxed.Bound - reach;
            var (boundBefore, bestBefore) = (bound, before?.Objective);
            bound = Math.Min(bound, Math.Max(Math.Max(whole.Bound, outside), best?.Objective ?? double.NegativeInfinity));
            stalled = best?.Objective == bestBefore && boundBefore - bound < Standstill * Math.Abs(bound) ? stalled + 1 : 0;
            Tell(bound);
            if (IsDone())
            {
                break;
            }
        }

        return new(best?.Chosen, best?.Figures, best?.Objective ?? 0.0, bound);

        bool IsDone() => best is { } b && bound - b.Objective <= Math.Max(tolerance, settings.Tolerance * Math.Abs(b.Objective));

        // Tangents closer than the gap would only weigh the programme down.
        double Fineness() => best is { } b && !double.IsInfinity(bound)
            ? Math.Clamp((bound - b.Objective) / Math.Max(1e-9, weights) / 20.0, settings.Tolerance / 4.0, Coarse)
            : Coarse;

        double[] Try(IReadOnlyList<int> chosen)
        {
            var figures = SeasonFigures.Of(problem, chosen);
            var objective = SeasonFigures.Weigh(problem, figures);
            if (master.Holds(chosen, figures) && (best is null || objective > best.Objective))
            {
                best = new([.. chosen.Order()], figures, objective, Values(chosen));
            }

            return figures;
        }

        void Tell(double at) => progress?.Report(new(++_step, best?.Objective, at));
    }

    private double[] Values(IReadOnlyList<int> chosen)
    {
        var values = new double[master.Programme.ColumnCount];
        foreach (var p in chosen)
        {
            values[master.ColumnOf(p)!.Value] = 1.0;
        }

        return values;
    }

    private sealed record Best(int[] Chosen, double[] Figures, double Objective, double[] Values);
}

/// <summary>What a search found.</summary>
/// <param name="Chosen">The best plan; null: none.</param>
/// <param name="Figures">Its figures.</param>
/// <param name="Objective">What they weigh.</param>
/// <param name="Bound">No plan weighs more; minus infinity: there is no plan.</param>
internal sealed record SeasonFound(IReadOnlyList<int>? Chosen, IReadOnlyList<double>? Figures, double Objective, double Bound);
