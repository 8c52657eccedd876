namespace Clutchwright.Planning.Seasons;

/// <summary>The master programme of a season: choices, limits, and for each goal a figure bounded from above, ever closer where it matters.</summary>
internal sealed class SeasonMaster : IDisposable
{
    private readonly SeasonProblem _problem;
    private readonly Func<SeasonDemand, int?, bool> _isHeld;
    private readonly int?[] _columns;
    private readonly GoalBound?[] _bounds;

    /// <summary>Makes the programme.</summary>
    /// <param name="problem">The season.</param>
    /// <param name="isHeld">Whether something asked for is held to; null: all of it is.</param>
    public SeasonMaster(SeasonProblem problem, Func<SeasonDemand, int?, bool>? isHeld = null)
    {
        (_problem, _isHeld) = (problem, isHeld ?? ((_, _) => true));
        Programme = new();
        _columns = new int?[problem.Pairs.Count];
        for (var p = 0; p < _columns.Length; p++)
        {
            if (problem.Bars[p] is null)
            {
                _columns[p] = Programme.AddColumn(0.0, 1.0, 0.0, isChoice: true);
            }
        }

        Rows();
        _bounds = [.. problem.Goals.Select(Bound)];
    }

    public LinearProgramme Programme { get; }

    /// <summary>The column of a pair; null where the pair is barred.</summary>
    public int? ColumnOf(int pair) => _columns[pair];

    /// <summary>Solves the relaxation with as many tangents as it takes.</summary>
    /// <returns>null where no choice, not even in shares, meets the rows.</returns>
    public Relaxation? Relax(int mostRounds, double tolerance, CancellationToken cancel)
    {
        for (var round = 1; ; round++)
        {
            cancel.ThrowIfCancellationRequested();
            var relaxed = Programme.Relax(cancel);
            if (relaxed is null)
            {
                return null;
            }

            var choices = Choices(relaxed.Values);
            var isCut = false;
            foreach (var bound in _bounds)
            {
                isCut |= bound?.Cut(choices, relaxed.Values, tolerance) ?? false;
            }

            if (!isCut || round == mostRounds)
            {
                return relaxed;
            }
        }
    }

    /// <summary>The pairs that a whole solution chooses.</summary>
    public int[] ChosenIn(double[] values) => [.. Enumerable.Range(0, _columns.Length).Where(p => _columns[p] is { } c && values[c] > 0.5)];

    /// <summary>How far the price of a choice may lie below worth choosing so that about so many are open.</summary>
    public double ReachOf(Relaxation relaxed, int count)
    {
        var far = _columns.OfType<int>().Select(c => -relaxed.Reduced[c]).Order().ToArray();
        return far.Length <= count ? double.PositiveInfinity : Math.Max(0.0, far[count]);
    }

    /// <summary>Adds the tangents at a plan.</summary>
    public void CutAt(IReadOnlyList<int> chosen, IReadOnlyList<double> figures, double[] values, double tolerance)
    {
        var choices = new double[_columns.Length];
        foreach (var p in chosen)
        {
            choices[p] = 1.0;
        }

        for (var g = 0; g < _bounds.Length; g++)
        {
            if (_bounds[g] is { } bound && values[bound.Figure] > figures[g] + tolerance)
            {
                bound.Cut(choices, values, tolerance);
                bound.CutAt(chosen, figures[g]);
            }
        }
    }

    /// <summary>Whether a plan meets every limit, pin and least figure.</summary>
    public bool Holds(IReadOnlyList<int> chosen, IReadOnlyList<double> figures)
    {
        var limits = _problem.Limits;
        var pairs = chosen.Select(p => _problem.Pairs[p]).ToArray();
        return chosen.All(p => _columns[p] is { } c && Programme.BoundsOf(c).Most > 0.0)
            && Enumerable.Range(0, _columns.Length).All(p => _columns[p] is not { } c || Programme.BoundsOf(c).Least <= 0.0 || chosen.Contains(p))
            && pairs.GroupBy(p => p.Dam).All(g => g.Count() == 1)
            && pairs.GroupBy(p => p.Sire).All(g => g.Count() <= _problem.Sires[g.Key].Matings)
            && Enumerable.Range(0, _problem.Sires.Count).All(s => !IsPinned(s) || Array.Exists(pairs, p => p.Sire == s))
            && Enumerable.Range(0, _problem.Dams.Count).All(d => !_problem.Dams[d].IsPinned || Array.Exists(pairs, p => p.Dam == d))
            && (limits.Clutches is not { } clutches || pairs.Length <= clutches)
            && (limits.Eggs is not { } eggs || pairs.Sum(p => p.Eggs) <= eggs + Rounding)
            && (limits.Hatchlings is not { } young || pairs.Sum(p => p.Hatchlings) <= young + Rounding)
            && (limits.MeanInbreeding is not { } mean || pairs.Sum(p => p.Inbreeding - mean) <= Rounding)
            && HoldsLeast(figures);

        bool IsPinned(int s) => _problem.Sires[s].IsPinned;
    }

    /// <summary>What a sum over a plan may pass a limit by, for the rounding of its terms.</summary>
    public const double Rounding = 1e-9;

    /// <summary>Whether a plan meets the least figures that are held to.</summary>
    public bool HoldsLeast(IReadOnlyList<double> figures) => Enumerable.Range(0, figures.Count)
        .All(g => _problem.Goals[g].Least is not { } least || !_isHeld(SeasonDemand.Least, g) || figures[g] >= least - Rounding);

    public void Dispose() => Programme.Dispose();

    private double[] Choices(double[] values) => Array.ConvertAll(_columns, c => c is { } column ? values[column] : 0.0);

    private void Rows()
    {
        var pairs = _problem.Pairs;
        var open = Enumerable.Range(0, pairs.Count).Where(p => _columns[p] is not null).ToArray();
        foreach (var dam in open.GroupBy(p => pairs[p].Dam))
        {
            Row(dam, _problem.Dams[dam.Key].IsPinned && _isHeld(SeasonDemand.PinnedDam, dam.Key) ? 1.0 : 0.0, 1.0, _ => 1.0);
        }

        foreach (var sire in open.GroupBy(p => pairs[p].Sire))
        {
            var matings = _isHeld(SeasonDemand.Matings, sire.Key) ? _problem.Sires[sire.Key].Matings : sire.Count();
            Row(sire, _problem.Sires[sire.Key].IsPinned && _isHeld(SeasonDemand.PinnedSire, sire.Key) ? 1.0 : 0.0, matings, _ => 1.0);
        }

        foreach (var p in open.Where(p => pairs[p].IsPinned && _isHeld(SeasonDemand.PinnedPair, p)))
        {
            Programme.Bound(_columns[p]!.Value, 1.0, 1.0);
        }

        var limits = _problem.Limits;
        Limit(SeasonDemand.Clutches, limits.Clutches, _ => 1.0);
        Limit(SeasonDemand.Eggs, limits.Eggs, p => pairs[p].Eggs);
        Limit(SeasonDemand.Hatchlings, limits.Hatchlings, p => pairs[p].Hatchlings);
        if (limits.MeanInbreeding is { } mean && _isHeld(SeasonDemand.MeanInbreeding, null))
        {
            Row(open, double.NegativeInfinity, 0.0, p => pairs[p].Inbreeding - mean);
        }

        void Limit(SeasonDemand demand, double? most, Func<int, double> each)
        {
            if (most is { } limit && _isHeld(demand, null))
            {
                Row(open, double.NegativeInfinity, limit, each);
            }
        }

        void Row(IEnumerable<int> over, double least, double most, Func<int, double> each) =>
            Programme.AddRow(least, most, [.. over.Select(p => (_columns[p]!.Value, each(p)))]);
    }

    private GoalBound? Bound(SeasonGoal goal, int place)
    {
        var held = _isHeld(SeasonDemand.Least, place) ? goal : goal with { Least = null };
        switch (held)
        {
            case SeasonGoal.AtLeast g:
                return new ChanceBound(Programme, _problem, _columns, g);
            case SeasonGoal.Doubt g:
                return new DoubtBound(Programme, _columns, g);
            case SeasonGoal.Sum g:
                var terms = Enumerable.Range(0, _columns.Length).Where(p => _columns[p] is not null).Select(p => (_columns[p]!.Value, g.Values[p])).ToArray();
                foreach (var (column, value) in terms)
                {
                    Programme.Value(column, Programme.WorthOf(column) + (g.Weight * value));
                }

                if (g.Least is { } least)
                {
                    Programme.AddRow(least, double.PositiveInfinity, terms);
                }

                return null;
            default:
                throw new ArgumentException("A goal of an unknown kind.", nameof(goal));
        }
    }
}
