namespace Clutchwright.Planning.Seasons;

/// <summary>A season to plan: which males, which females, what each pair would give, what is wanted and what limits there are.</summary>
/// <remarks>Knows nothing of genetics: all that a pair would give comes with it. Immutable.</remarks>
public sealed class SeasonProblem
{
    /// <summary>Makes a problem.</summary>
    /// <param name="sires">The males.</param>
    /// <param name="dams">The females.</param>
    /// <param name="pairs">The pairs that are thought of, each once; others are not in any plan.</param>
    /// <param name="goals">The goals.</param>
    /// <param name="limits">The limits; <c>null</c>: none.</param>
    /// <exception cref="ArgumentException">A list does not fit the others, a pair stands twice, or a number is out of its range.</exception>
    public SeasonProblem(
        IReadOnlyList<SeasonSire> sires,
        IReadOnlyList<SeasonDam> dams,
        IReadOnlyList<SeasonPair> pairs,
        IReadOnlyList<SeasonGoal> goals,
        SeasonLimits? limits = null)
    {
        (Sires, Dams, Pairs, Goals, Limits) = ([.. sires], [.. dams], [.. pairs], [.. goals], limits ?? new());
        if (Pairs.Select(p => (p.Sire, p.Dam)).Distinct().Count() != Pairs.Count)
        {
            throw new ArgumentException("A pair stands twice.", nameof(pairs));
        }

        if (Pairs.Any(p => p.Sire < 0 || p.Sire >= Sires.Count || p.Dam < 0 || p.Dam >= Dams.Count
            || p.Inbreeding is not (>= 0.0 and <= 1.0) || p.Eggs is not >= 0.0 || p.Hatchlings is not >= 0.0))
        {
            throw new ArgumentException("A pair names an animal that is not there, or a figure of it is out of range.", nameof(pairs));
        }

        if (Sires.Any(s => s.Matings < 0))
        {
            throw new ArgumentException("A male has fewer than 0 matings.", nameof(sires));
        }

        foreach (var goal in Goals)
        {
            Check(goal);
        }

        Bars = [.. Pairs.Select(BarOf)];
    }

    /// <summary>Gets the males.</summary>
    public IReadOnlyList<SeasonSire> Sires { get; }

    /// <summary>Gets the females.</summary>
    public IReadOnlyList<SeasonDam> Dams { get; }

    /// <summary>Gets the pairs.</summary>
    public IReadOnlyList<SeasonPair> Pairs { get; }

    /// <summary>Gets the goals.</summary>
    public IReadOnlyList<SeasonGoal> Goals { get; }

    /// <summary>Gets the limits.</summary>
    public SeasonLimits Limits { get; }

    /// <summary>Gets for each pair why it cannot be in a plan; <c>null</c>: it can.</summary>
    public IReadOnlyList<SeasonBar?> Bars { get; }

    /// <summary>The same season with other goals.</summary>
    internal SeasonProblem With(IReadOnlyList<SeasonGoal> goals) => new(Sires, Dams, Pairs, goals, Limits);

    /// <summary>The same season without one thing that is asked for.</summary>
    internal SeasonProblem Without(SeasonDemand kind, int? place) => new(
        kind == SeasonDemand.Matings ? [.. Sires.Select((s, i) => i == place ? s with { Matings = Dams.Count } : s)] : Sires,
        Dams,
        Pairs,
        Goals,
        kind switch
        {
            SeasonDemand.Clutches => Limits with { Clutches = null },
            SeasonDemand.Eggs => Limits with { Eggs = null },
            SeasonDemand.Hatchlings => Limits with { Hatchlings = null },
            SeasonDemand.MeanInbreeding => Limits with { MeanInbreeding = null },
            _ => Limits,
        });

    private SeasonBar? BarOf(SeasonPair pair)
    {
        var (sire, dam) = (Sires[pair.Sire], Dams[pair.Dam]);
        return !sire.IsReady ? SeasonBar.SireNotReady
            : !dam.IsReady ? SeasonBar.DamNotReady
            : sire.IsBanned ? SeasonBar.SireBanned
            : dam.IsBanned ? SeasonBar.DamBanned
            : pair.IsBanned ? SeasonBar.PairBanned
            : pair is { IsDangerous: true, IsLifted: false } ? SeasonBar.Danger
            : Limits.Inbreeding is { } most && pair.Inbreeding > most ? SeasonBar.Inbreeding
            : sire.Matings == 0 ? SeasonBar.NoMatings
            : null;
    }

    private void Check(SeasonGoal goal)
    {
        var isRight = goal switch
        {
            SeasonGoal.AtLeast g => g.Weight >= 0.0
                && g.Count >= 1
                && g.SireCases.Count == Sires.Count
                && g.SireCases.All(c => c.All(w => w >= 0.0) && Math.Abs(c.Sum() - 1.0) < 1e-9)
                && g.Yields.Count == Pairs.Count
                && Enumerable.Range(0, Pairs.Count).All(p => g.Yields[p] is not { } y
                    || (y.Numbers.Count == g.SireCases[Pairs[p].Sire].Count && y.Numbers.All(n => n.All(c => c >= 0.0) && Math.Abs(n.Sum() - 1.0) < 1e-6))),
            SeasonGoal.Doubt g => g is { Weight: >= 0.0, Prior: >= 0.0 and <= 1.0 }
                && g.Silences.Count == Pairs.Count
                && g.Silences.All(s => s is null || (s.Chances.Count == s.Silent.Count
                    && s.Chances.All(c => c >= 0.0) && Math.Abs(s.Chances.Sum() - 1.0) < 1e-6 && s.Silent.All(q => q is >= 0.0 and <= 1.0))),
            SeasonGoal.Sum g => double.IsFinite(g.Weight) && g.Values.Count == Pairs.Count && g.Values.All(double.IsFinite),
            _ => false,
        };
        if (!isRight)
        {
            throw new ArgumentException($"The goal '{goal.Name}' does not fit the males and pairs, or a number of it is out of range.", nameof(goal));
        }
    }
}
