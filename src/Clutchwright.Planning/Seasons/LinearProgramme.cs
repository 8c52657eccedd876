using Google.OrTools.LinearSolver;

namespace Clutchwright.Planning.Seasons;

/// <summary>A linear programme to be maximized, some of whose columns are yes or no. The one type that calls the solver.</summary>
/// <remarks>The simplex method (GLOP) for the relaxation, kept warm between calls; branch and cut (SCIP), one thread and a fixed seed, for whole
/// numbers. Bounds on the relaxation are worked out here from the solver's prices and hold whatever its tolerances are.</remarks>
internal sealed class LinearProgramme : IDisposable
{
    private const double Infinite = double.PositiveInfinity;

    private readonly List<Column> _columns = [];
    private readonly List<Row> _rows = [];
    private readonly Solver _relaxed = Solver.CreateSolver("GLOP");
    private readonly List<Variable> _variables = [];
    private readonly List<Constraint> _constraints = [];

    public int ColumnCount => _columns.Count;

    public int RowCount => _rows.Count;

    /// <summary>Adds a column.</summary>
    /// <param name="least">Its least value; finite.</param>
    /// <param name="most">Its greatest value; finite.</param>
    /// <param name="worth">What one unit of it is worth.</param>
    /// <param name="isChoice">Whether it is 0 or 1 in a whole solution; then rows must keep it from passing 1.</param>
    public int AddColumn(double least, double most, double worth, bool isChoice)
    {
        _columns.Add(new(least, most, worth, isChoice));
        var variable = _relaxed.MakeNumVar(least, isChoice ? Infinite : most, string.Empty);
        _relaxed.Objective().SetCoefficient(variable, worth);
        _variables.Add(variable);
        return _columns.Count - 1;
    }

    /// <summary>Adds a row: the weighted sum of columns lies within limits, which may be infinite.</summary>
    public void AddRow(double least, double most, IReadOnlyList<(int Column, double Factor)> terms)
    {
        var row = new Row(least, most, [.. terms.Where(t => t.Factor != 0.0)]);
        _rows.Add(row);
        var constraint = _relaxed.MakeConstraint(least, most, string.Empty);
        foreach (var (column, factor) in row.Terms)
        {
            constraint.SetCoefficient(_variables[column], factor);
        }

        _constraints.Add(constraint);
    }

    /// <summary>Changes what a column may be.</summary>
    public void Bound(int column, double least, double most)
    {
        var old = _columns[column];
        _columns[column] = old with { Least = least, Most = most };
        _variables[column].SetBounds(least, old.IsChoice && most > 0.0 ? Infinite : most);
    }

    /// <summary>Changes what a column is worth.</summary>
    public void Value(int column, double worth)
    {
        _columns[column] = _columns[column] with { Worth = worth };
        _relaxed.Objective().SetCoefficient(_variables[column], worth);
    }

    public (double Least, double Most) BoundsOf(int column) => (_columns[column].Least, _columns[column].Most);

    public double WorthOf(int column) => _columns[column].Worth;

    /// <summary>Solves it without asking for whole numbers.</summary>
    /// <returns>The solution, or null where there is none.</returns>
    /// <exception cref="OperationCanceledException"><paramref name="cancel"/> was set.</exception>
    public Relaxation? Relax(CancellationToken cancel)
    {
        _relaxed.Objective().SetMaximization();
        var status = Run(_relaxed);
        if (status is Solver.ResultStatus.INFEASIBLE)
        {
            return null;
        }

        if (status is not (Solver.ResultStatus.OPTIMAL or Solver.ResultStatus.FEASIBLE))
        {
            return RelaxAfresh(Run);
        }

        return Read(_variables, _constraints);

        Solver.ResultStatus Run(Solver solver)
        {
            using (cancel.Register(() => solver.InterruptSolve()))
            {
                var result = solver.Solve();
                cancel.ThrowIfCancellationRequested();
                return result;
            }
        }
    }

    /// <summary>Solves it in whole numbers.</summary>
    /// <param name="isOpen">The choices that may be 1; those that must be are open anyhow.</param>
    /// <param name="hint">A solution to begin from, by column; null: none.</param>
    /// <param name="mostNodes">After so many nodes of the search it stops with what it has.</param>
    /// <param name="cancel">Stops the search.</param>
    /// <exception cref="OperationCanceledException"><paramref name="cancel"/> was set.</exception>
    public WholeSolution Solve(Func<int, bool> isOpen, IReadOnlyList<double>? hint, long mostNodes, CancellationToken cancel)
    {
        using var solver = Solver.CreateSolver("SCIP");
        using var settings = new MPSolverParameters();
        settings.SetDoubleParam(MPSolverParameters.DoubleParam.RELATIVE_MIP_GAP, 0.0);
        solver.SetSolverSpecificParametersAsString($"limits/totalnodes = {mostNodes}\n");
        var variables = new Variable?[_columns.Count];
        for (var j = 0; j < variables.Length; j++)
        {
            var column = _columns[j];
            if (column.IsChoice && (column.Most <= 0.0 || (column.Least <= 0.0 && !isOpen(j))))
            {
                continue;
            }

            variables[j] = column.IsChoice
                ? solver.MakeIntVar(column.Least, column.Most, string.Empty)
                : solver.MakeNumVar(column.Least, column.Most, string.Empty);
            solver.Objective().SetCoefficient(variables[j], column.Worth);
        }

        foreach (var row in _rows)
        {
            var constraint = solver.MakeConstraint(row.Least, row.Most, string.Empty);
            foreach (var (column, factor) in row.Terms)
            {
                if (variables[column] is { } variable)
                {
                    constraint.SetCoefficient(variable, factor);
                }
            }
        }

        solver.Objective().SetMaximization();
        if (hint is not null)
        {
            var given = Enumerable.Range(0, variables.Length).Where(j => variables[j] is not null).ToArray();
            solver.SetHint([.. given.Select(j => variables[j]!)], [.. given.Select(j => hint[j])]);
        }

        using (cancel.Register(() => solver.InterruptSolve()))
        {
            var status = solver.Solve(settings);
            cancel.ThrowIfCancellationRequested();
            return status switch
            {
                Solver.ResultStatus.OPTIMAL => new([.. variables.Select(v => v?.SolutionValue() ?? 0.0)], solver.Objective().Value(), solver.Iterations()),
                Solver.ResultStatus.FEASIBLE => new([.. variables.Select(v => v?.SolutionValue() ?? 0.0)], solver.Objective().BestBound(), solver.Iterations()),
                Solver.ResultStatus.INFEASIBLE => new(null, double.NegativeInfinity, 0),
                _ => new(null, double.PositiveInfinity, solver.Iterations()),
            };
        }
    }

    public void Dispose() => _relaxed.Dispose();

    // Where one simplex code loses its way another, started afresh, does not.
    private Relaxation? RelaxAfresh(Func<Solver, Solver.ResultStatus> run)
    {
        using var solver = Solver.CreateSolver("CLP");
        var variables = _columns.ConvertAll(c => solver.MakeNumVar(c.Least, c.IsChoice && c.Most > 0.0 ? Infinite : c.Most, string.Empty));
        for (var j = 0; j < variables.Count; j++)
        {
            solver.Objective().SetCoefficient(variables[j], _columns[j].Worth);
        }

        var constraints = new List<Constraint>(_rows.Count);
        foreach (var row in _rows)
        {
            var constraint = solver.MakeConstraint(row.Least, row.Most, string.Empty);
            foreach (var (column, factor) in row.Terms)
            {
                constraint.SetCoefficient(variables[column], factor);
            }

            constraints.Add(constraint);
        }

        solver.Objective().SetMaximization();
        return run(solver) switch
        {
            Solver.ResultStatus.OPTIMAL or Solver.ResultStatus.FEASIBLE => Read(variables, constraints),
            Solver.ResultStatus.INFEASIBLE => null,
            var status => throw new InvalidOperationException($"The solver left the relaxation with {status}."),
        };
    }

    private Relaxation Read(List<Variable> variables, List<Constraint> constraints)
    {
        var values = variables.ConvertAll(v => v.SolutionValue()).ToArray();
        var (bound, reduced) = BoundOf(constraints.ConvertAll(c => c.DualValue()).ToArray());
        return new(values, bound, reduced);
    }

    // Weak duality: any prices of the right sign give a bound; of others the wrong part is dropped.
    private (double Bound, double[] Reduced) BoundOf(double[] prices)
    {
        var reduced = _columns.ConvertAll(c => c.Worth).ToArray();
        var bound = 0.0;
        for (var i = 0; i < prices.Length; i++)
        {
            var (row, price) = (_rows[i], prices[i]);
            var limit = price > 0.0 ? row.Most : row.Least;
            if (price == 0.0 || double.IsInfinity(limit))
            {
                continue;
            }

            bound += price * limit;
            foreach (var (column, factor) in row.Terms)
            {
                reduced[column] -= price * factor;
            }
        }

        for (var j = 0; j < reduced.Length; j++)
        {
            bound += reduced[j] * (reduced[j] > 0.0 ? _columns[j].Most : _columns[j].Least);
        }

        return (bound, reduced);
    }

    private sealed record Column(double Least, double Most, double Worth, bool IsChoice);

    private sealed record Row(double Least, double Most, (int Column, double Factor)[] Terms);
}

/// <summary>A solution of the relaxation.</summary>
/// <param name="Values">By column.</param>
/// <param name="Bound">No solution is worth more.</param>
/// <param name="Reduced">By column: what one unit more adds to the bound; below 0 a column that is not worth choosing.</param>
internal sealed record Relaxation(double[] Values, double Bound, double[] Reduced);

/// <summary>A solution in whole numbers.</summary>
/// <param name="Values">By column; null: none was found.</param>
/// <param name="Bound">No solution with the open choices is worth more.</param>
/// <param name="Work">How many steps of the simplex method it took.</param>
internal sealed record WholeSolution(double[]? Values, double Bound, long Work);
