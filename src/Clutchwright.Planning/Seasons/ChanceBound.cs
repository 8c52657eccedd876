namespace Clutchwright.Planning.Seasons;

/// <summary>Bounds the chance of at least k of a want.</summary>
/// <remarks>
/// For any z in [0, 1), 1{N ≥ k} ≤ (1 - z^N) / (1 - z^k), so the chance is at most (1 - E z^N) / (1 - z^k); at k = 1 and z = 0 the two are equal.
/// E z^N is a product over males of a mixture, over what he may be, of products over his clutches: log E z^N is a sum of
/// log-sum-exp functions of the choices, hence convex, and 1 - exp of it concave. The tangents of log-sum-exp are those of Gibbs'
/// inequality: log Σ w e^r ≥ Σ q (log(w / q) + r) for any weights q. As z nears 1 the bound becomes E N / k, Markov's, which is a row of its own.
/// </remarks>
internal sealed class ChanceBound : GoalBound
{
    private static readonly double[] Points = [0.0, 0.5, 0.8];

    private readonly SeasonProblem _problem;
    private readonly SeasonGoal.AtLeast _goal;
    private readonly IReadOnlyList<int?> _columns;
    private readonly List<Term> _terms = [];
    private readonly ShortfallBound? _shortfall;

    public ChanceBound(LinearProgramme programme, SeasonProblem problem, IReadOnlyList<int?> columns, SeasonGoal.AtLeast goal)
        : base(programme, programme.AddColumn(goal.Least ?? 0.0, 1.0, goal.Weight, isChoice: false))
    {
        (_problem, _goal, _columns) = (problem, goal, columns);
        var pairs = Enumerable.Range(0, columns.Count).Where(p => columns[p] is not null && goal.Yields[p] is not null).ToArray();
        foreach (var z in goal.Count == 1 ? Points[..1] : Points)
        {
            _terms.Add(new(this, pairs, z));
        }

        if (goal.Count > 1)
        {
            _shortfall = new(programme, Figure, problem, columns, goal);
            programme.AddRow(double.NegativeInfinity, 0.0,
            [
                (Figure, goal.Count),
                .. pairs.Select(p => (columns[p]!.Value, -goal.SireCases[problem.Pairs[p].Sire].Select((w, c) => w * goal.Yields[p]!.Mean(c)).Sum())),
            ]);
        }
    }

    public override bool Cut(IReadOnlyList<double> choices, IReadOnlyList<double> values, double tolerance)
    {
        var isCut = _shortfall?.Cut(choices, values, tolerance) ?? false;
        foreach (var term in _terms)
        {
            isCut |= term.Cut(choices, values, tolerance);
        }

        return isCut;
    }

    /// <inheritdoc/>
    /// <remarks>For k above 1. The chance of a plan that holds S and more is at most that of S and, for each further pair p, the chance that S
    /// falls short while p gives one: a union of events. Of a plan that does not hold all of S it is no more.</remarks>
    public override void CutAt(IReadOnlyList<int> chosen, double figure)
    {
        if (_goal.Count == 1)
        {
            return;
        }

        var bySire = chosen.ToLookup(p => _problem.Pairs[p].Sire);
        var few = Enumerable.Range(0, _problem.Sires.Count).Select(m => SeasonFigures.Few(_goal, m, bySire[m])).ToArray();
        var inPlan = chosen.ToHashSet();
        var row = new List<(int, double)> { (Figure, 1.0) };
        for (var m = 0; m < few.Length; m++)
        {
            var others = new double[_goal.Count];
            others[0] = 1.0;
            others = Enumerable.Range(0, few.Length).Where(o => o != m && bySire[o].Any()).Aggregate(others, (sum, o) => SeasonFigures.Convolve(sum, few[o]));
            var shortByCase = Enumerable.Range(0, _goal.SireCases[m].Count).Select(c =>
            {
                var number = (double[])others.Clone();
                foreach (var p in bySire[m].Where(p => _goal.Yields[p] is not null))
                {
                    number = SeasonFigures.Convolve(number, _goal.Yields[p]!.Numbers[c]);
                }

                return _goal.SireCases[m][c] * number.Sum();
            }).ToArray();
            foreach (var p in Enumerable.Range(0, _columns.Count).Where(p => _problem.Pairs[p].Sire == m && !inPlan.Contains(p)))
            {
                if (_columns[p] is { } column && _goal.Yields[p] is { } yield)
                {
                    row.Add((column, -shortByCase.Select((s, c) => s * (1.0 - yield.Generating(c, 0.0))).Sum()));
                }
            }
        }

        Programme.AddRow(double.NegativeInfinity, figure, row);
    }

    // The bound at one z.
    private sealed class Term
    {
        private static readonly double[] First = [0.0, -0.25, -0.6, -1.0, -1.6, -2.4, -3.5, -6.0];

        private readonly ChanceBound _bound;
        private readonly double _share;
        private readonly int _log;
        private readonly (int Pair, double Log)[] _certain;
        private readonly List<Male> _males = [];

        public Term(ChanceBound bound, int[] pairs, double z)
        {
            _bound = bound;
            _share = 1.0 / (1.0 - Math.Pow(z, bound._goal.Count));
            var programme = bound.Programme;
            _log = programme.AddColumn(LeastLog, 0.0, 0.0, isChoice: false);
            var certain = new List<(int, double)>();
            foreach (var male in pairs.GroupBy(p => bound._problem.Pairs[p].Sire))
            {
                var weights = bound._goal.SireCases[male.Key];
                var logs = male.Select(p => (Pair: p, Logs: Enumerable.Range(0, weights.Count)
                    .Select(c => Math.Log(Math.Max(bound._goal.Yields[p]!.Generating(c, z), Smallest))).ToArray())).ToArray();
                if (weights.Count == 1)
                {
                    certain.AddRange(logs.Select(l => (l.Pair, l.Logs[0])));
                }
                else
                {
                    _males.Add(new(bound, weights, logs));
                }
            }

            _certain = [.. certain];
            programme.AddRow(0.0, double.PositiveInfinity,
            [
                (_log, 1.0),
                .. _certain.Select(l => (bound._columns[l.Pair]!.Value, -l.Log)),
                .. _males.Select(m => (m.Column, -1.0)),
            ]);
            foreach (var at in First)
            {
                Tangent(at);
            }
        }

        public bool Cut(IReadOnlyList<double> choices, IReadOnlyList<double> values, double tolerance)
        {
            var log = _certain.Sum(l => l.Log * choices[l.Pair]);
            var isCut = false;
            foreach (var male in _males)
            {
                log += male.Cut(choices, values, tolerance, ref isCut);
            }

            log = Math.Max(log, LeastLog);
            if (values[_bound.Figure] > _share * (1.0 - Math.Exp(log)) + tolerance)
            {
                Tangent(log);
                isCut = true;
            }

            return isCut;
        }

        // figure ≤ share (1 - e^at - e^at (log - at))
        private void Tangent(double at)
        {
            var slope = _share * Math.Exp(at);
            _bound.Programme.AddRow(double.NegativeInfinity, _share - slope + (slope * at), [(_bound.Figure, 1.0), (_log, slope)]);
        }
    }

    // A male in doubt: a column for the logarithm of his mixture.
    private sealed class Male
    {
        private readonly ChanceBound _bound;
        private readonly double[] _weights;
        private readonly (int Pair, double[] Logs)[] _logs;

        public Male(ChanceBound bound, IReadOnlyList<double> weights, (int Pair, double[] Logs)[] logs)
        {
            (_bound, _weights, _logs) = (bound, [.. weights], logs);
            Column = bound.Programme.AddColumn(LeastLog, 0.0, 0.0, isChoice: false);
            Tangent(_weights);
            for (var c = 0; c < _weights.Length; c++)
            {
                if (_weights[c] > 0.0)
                {
                    Tangent([.. _weights.Select((_, i) => i == c ? 1.0 : 0.0)]);
                }
            }
        }

        public int Column { get; }

        public double Cut(IReadOnlyList<double> choices, IReadOnlyList<double> values, double tolerance, ref bool isCut)
        {
            var exponents = new double[_weights.Length];
            for (var c = 0; c < exponents.Length; c++)
            {
                exponents[c] = Math.Log(_weights[c]);
            }

            foreach (var (pair, logs) in _logs)
            {
                if (choices[pair] != 0.0)
                {
                    for (var c = 0; c < exponents.Length; c++)
                    {
                        exponents[c] += choices[pair] * logs[c];
                    }
                }
            }

            var most = exponents.Max();
            var shares = Array.ConvertAll(exponents, e => Math.Exp(e - most));
            var total = shares.Sum();
            var log = most + Math.Log(total);
            if (values[Column] < log - tolerance)
            {
                Tangent(Array.ConvertAll(shares, s => s / total));
                isCut = true;
            }

            return log;
        }

        // log ≥ Σ q (log(w / q) + r)
        private void Tangent(double[] shares)
        {
            var constant = 0.0;
            for (var c = 0; c < shares.Length; c++)
            {
                constant += shares[c] > 0.0 ? shares[c] * Math.Log(_weights[c] / shares[c]) : 0.0;
            }

            _bound.Programme.AddRow(constant, double.PositiveInfinity,
            [
                (Column, 1.0),
                .. _logs.Select(l => (_bound._columns[l.Pair]!.Value, -l.Logs.Select((x, c) => shares[c] * x).Sum())),
            ]);
        }
    }
}
