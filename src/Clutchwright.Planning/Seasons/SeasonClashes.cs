namespace Clutchwright.Planning.Seasons;

/// <summary>Finds what of the things asked for cannot hold together, and the least change of each that would help.</summary>
/// <remarks>A deletion filter: each thing is dropped for good if there is still no plan without it. What is left clashes, and no part of it
/// does.</remarks>
internal static class SeasonClashes
{
    private const int MostRounds = 60;

    /// <summary>What is pinned although it is barred.</summary>
    public static IReadOnlyList<SeasonClash> OfBars(SeasonProblem problem)
    {
        var pairs = Enumerable.Range(0, problem.Pairs.Count).ToArray();
        foreach (var p in pairs.Where(p => problem.Pairs[p].IsPinned && problem.Bars[p] is not null))
        {
            return [new(SeasonDemand.PinnedPair, p, null, null), Barred(p)];
        }

        foreach (var d in Enumerable.Range(0, problem.Dams.Count).Where(d => problem.Dams[d].IsPinned))
        {
            if (Array.TrueForAll(pairs, p => problem.Pairs[p].Dam != d || problem.Bars[p] is not null))
            {
                return [new(SeasonDemand.PinnedDam, d, null, null), .. pairs.Where(p => problem.Pairs[p].Dam == d).Select(Barred)];
            }
        }

        foreach (var s in Enumerable.Range(0, problem.Sires.Count).Where(s => problem.Sires[s].IsPinned))
        {
            if (Array.TrueForAll(pairs, p => problem.Pairs[p].Sire != s || problem.Bars[p] is not null))
            {
                return [new(SeasonDemand.PinnedSire, s, null, null), .. pairs.Where(p => problem.Pairs[p].Sire == s).Select(Barred)];
            }
        }

        foreach (var dam in pairs.Where(p => problem.Pairs[p].IsPinned).GroupBy(p => problem.Pairs[p].Dam).Where(g => g.Count() > 1))
        {
            return [new(SeasonDemand.OneClutch, dam.Key, 1.0, dam.Count()), .. dam.Select(p => new SeasonClash(SeasonDemand.PinnedPair, p, null, null))];
        }

        return [];

        SeasonClash Barred(int pair) => problem.Bars[pair] == SeasonBar.Inbreeding
            ? new(SeasonDemand.Barred, pair, problem.Limits.Inbreeding, problem.Pairs[pair].Inbreeding)
            : new(SeasonDemand.Barred, pair, null, null);
    }

    /// <summary>What clashes in a problem that has no plan.</summary>
    public static IReadOnlyList<SeasonClash> Of(SeasonProblem problem, SeasonSettings settings, CancellationToken cancel)
    {
        var held = Demands(problem).ToHashSet();
        foreach (var demand in held.ToArray())
        {
            held.Remove(demand);
            if (IsPossible(problem, held, settings, cancel))
            {
                held.Add(demand);
            }
        }

        return [.. Demands(problem).Where(held.Contains).Select(d => new SeasonClash(d.Kind, d.Place, Asked(problem, d), Enough(problem, d, settings, cancel)))];
    }

    private static IEnumerable<(SeasonDemand Kind, int? Place)> Demands(SeasonProblem problem)
    {
        foreach (var (kind, isAsked) in new[]
        {
            (SeasonDemand.Clutches, problem.Limits.Clutches is not null),
            (SeasonDemand.Eggs, problem.Limits.Eggs is not null),
            (SeasonDemand.Hatchlings, problem.Limits.Hatchlings is not null),
            (SeasonDemand.MeanInbreeding, problem.Limits.MeanInbreeding is not null),
        })
        {
            if (isAsked)
            {
                yield return (kind, null);
            }
        }

        foreach (var s in Enumerable.Range(0, problem.Sires.Count))
        {
            yield return (SeasonDemand.Matings, s);
            if (problem.Sires[s].IsPinned)
            {
                yield return (SeasonDemand.PinnedSire, s);
            }
        }

        foreach (var d in Enumerable.Range(0, problem.Dams.Count).Where(d => problem.Dams[d].IsPinned))
        {
            yield return (SeasonDemand.PinnedDam, d);
        }

        foreach (var p in Enumerable.Range(0, problem.Pairs.Count).Where(p => problem.Pairs[p].IsPinned))
        {
            yield return (SeasonDemand.PinnedPair, p);
        }

        foreach (var g in Enumerable.Range(0, problem.Goals.Count).Where(g => problem.Goals[g].Least is not null))
        {
            yield return (SeasonDemand.Least, g);
        }
    }

    // Possible also where it could not be shown to be impossible.
    private static bool IsPossible(SeasonProblem problem, HashSet<(SeasonDemand, int?)> held, SeasonSettings settings, CancellationToken cancel)
    {
        var goals = problem.Goals.Select(g => g with { Weight = g.Least is null ? 0.0 : 1.0 }).ToArray();
        using var master = new SeasonMaster(problem.With(goals), (kind, place) => held.Contains((kind, place)));
        for (var round = 0; round < MostRounds; round++)
        {
            if (master.Relax(10, settings.Tolerance, cancel) is null)
            {
                return false;
            }

            var whole = master.Programme.Solve(_ => true, null, settings.MostNodes, cancel);
            if (whole.Values is not { } values)
            {
                return double.IsPositiveInfinity(whole.Bound);
            }

            var chosen = master.ChosenIn(values);
            var figures = SeasonFigures.Of(problem, chosen);
            if (master.HoldsLeast(figures))
            {
                return true;
            }

            master.CutAt(chosen, figures, values, settings.Tolerance / 8.0);
        }

        return true;
    }

    private static double? Asked(SeasonProblem problem, (SeasonDemand Kind, int? Place) demand) => demand.Kind switch
    {
        SeasonDemand.Clutches => problem.Limits.Clutches,
        SeasonDemand.Eggs => problem.Limits.Eggs,
        SeasonDemand.Hatchlings => problem.Limits.Hatchlings,
        SeasonDemand.MeanInbreeding => problem.Limits.MeanInbreeding,
        SeasonDemand.Matings => problem.Sires[demand.Place!.Value].Matings,
        SeasonDemand.Least => problem.Goals[demand.Place!.Value].Least,
        _ => null,
    };

    // With all else held and this one dropped: the least of what it limits, or the most of what it asks for.
    private static double? Enough(SeasonProblem problem, (SeasonDemand Kind, int? Place) demand, SeasonSettings settings, CancellationToken cancel)
    {
        Func<SeasonPair, double>? counted = demand.Kind switch
        {
            SeasonDemand.Clutches => _ => 1.0,
            SeasonDemand.Eggs => p => p.Eggs,
            SeasonDemand.Hatchlings => p => p.Hatchlings,
            SeasonDemand.Matings => p => p.Sire == demand.Place ? 1.0 : 0.0,
            SeasonDemand.MeanInbreeding => p => p.Inbreeding,
            _ => null,
        };
        if (demand.Kind == SeasonDemand.Least)
        {
            return Best([.. problem.Goals.Select((g, i) => i == demand.Place ? g with { Least = null, Weight = 1.0 } : g with { Weight = 0.0 })])?.Objective;
        }

        if (counted is null)
        {
            return null;
        }

        var off = 0.0;
        for (var round = 0; ; round++)
        {
            var goals = problem.Goals.Select(g => g with { Weight = 0.0 })
                .Append(new SeasonGoal.Sum("counted", -1.0, [.. problem.Pairs.Select(p => counted(p) - off)]));
            if (Best([.. goals]) is not { } found)
            {
                return null;
            }

            if (demand.Kind != SeasonDemand.MeanInbreeding)
            {
                return -found.Objective;
            }

            // The least mean: a ratio, so the mean found is taken off each until none is below it (Dinkelbach 1967).
            if (found.Chosen!.Count == 0)
            {
                return 0.0;
            }

            var mean = found.Chosen.Average(p => problem.Pairs[p].Inbreeding);
            if (round > 20 || Math.Abs(mean - off) < 1e-9)
            {
                return mean;
            }

            off = mean;
        }

        SeasonFound? Best(SeasonGoal[] goals)
        {
            var changed = problem.Without(demand.Kind, demand.Place).With(goals);
            using var master = new SeasonMaster(changed);
            var found = new SeasonSearch(changed, master, settings, null).Run(null, cancel);
            return found.Chosen is null ? null : found;
        }
    }
}
