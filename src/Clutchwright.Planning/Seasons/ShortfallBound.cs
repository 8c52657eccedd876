namespace Clutchwright.Planning.Seasons;

/// <summary>Bounds the chance of at least k of a want, k above 1, by a curve that rises slowly at first and then like the chance itself.</summary>
/// <remarks>
/// With P_n the chances of a clutch and a = -log P_0, let c be the largest number with P_n / P_0 ≥ (c a)^n / n! for n below k in every clutch. Then the
/// chance of fewer than k is, for what the males are, at least H(s) = e^-s Σ (c s)^j / j! over j below k, s the sum of a over the clutches: generating
/// functions multiply, term by term. 1 - H is replaced by its least concave majorant, a line from 0 that touches it and the curve from there, and mixed over what
/// the males are. Where these are too many, males are taken at their mean, which by Jensen's inequality is no less.
/// </remarks>
internal sealed class ShortfallBound
{
    private const int MostMixtures = 32;
    private const double Smallest = 1e-12;
    private const double Longest = 120.0;

    private readonly LinearProgramme _programme;
    private readonly int _count;
    private readonly double _density;
    private readonly double _touch;
    private readonly double _slope;
    private readonly List<Mixture> _mixtures = [];

    public ShortfallBound(LinearProgramme programme, int figure, SeasonProblem problem, IReadOnlyList<int?> columns, SeasonGoal.AtLeast goal)
    {
        (_programme, _count) = (programme, goal.Count);
        var pairs = Enumerable.Range(0, columns.Count).Where(p => columns[p] is not null && goal.Yields[p] is not null).ToArray();
        _density = pairs.SelectMany(p => goal.Yields[p]!.Numbers).Select(DensityOf).Append(1.0).Min();
        (_touch, _slope) = Touch();
        var apart = pairs.Select(p => problem.Pairs[p].Sire).Distinct().Where(m => goal.SireCases[m].Count > 1)
            .OrderByDescending(m => pairs.Where(p => problem.Pairs[p].Sire == m).Sum(p => Spread(goal, m, goal.Yields[p]!)))
            .ToList();
        var mixed = new List<(Dictionary<int, int> Cases, double Weight)> { ([], 1.0) };
        foreach (var male in apart)
        {
            if (mixed.Count * goal.SireCases[male].Count > MostMixtures)
            {
                break;
            }

            mixed = [.. mixed.SelectMany(_ => Enumerable.Range(0, goal.SireCases[male].Count), (m, c) =>
                (new Dictionary<int, int>(m.Cases) { [male] = c }, m.Weight * goal.SireCases[male][c]))];
        }

        foreach (var (cases, weight) in mixed)
        {
            var logs = pairs.Select(p =>
            {
                var male = problem.Pairs[p].Sire;
                return (Pair: p, Log: cases.TryGetValue(male, out var c)
                    ? Log(goal.Yields[p]!.Numbers[c])
                    : goal.SireCases[male].Select((w, i) => w * Log(goal.Yields[p]!.Numbers[i])).Sum());
            }).Where(l => l.Log > 0.0).ToArray();
            var (share, sum) = (programme.AddColumn(0.0, 1.0, 0.0, isChoice: false), programme.AddColumn(0.0, Longest, 0.0, isChoice: false));
            programme.AddRow(double.NegativeInfinity, 0.0, [(sum, 1.0), .. logs.Select(l => (columns[l.Pair]!.Value, -l.Log))]);
            var mixture = new Mixture(weight, share, sum, logs);
            _mixtures.Add(mixture);
            foreach (var factor in new[] { 0.0, 1.0, 1.3, 1.7, 2.3, 3.2, 4.5 })
            {
                Tangent(mixture, factor == 0.0 ? 0.0 : Math.Max(_touch, 0.2) * factor);
            }
        }

        programme.AddRow(double.NegativeInfinity, 0.0, [(figure, 1.0), .. _mixtures.Select(m => (m.Share, -m.Weight))]);
    }

    public bool Cut(IReadOnlyList<double> choices, IReadOnlyList<double> values, double tolerance)
    {
        var isCut = false;
        foreach (var mixture in _mixtures)
        {
            var sum = Math.Min(Longest, mixture.Logs.Sum(l => l.Log * choices[l.Pair]));
            if (values[mixture.Share] > Majorant(sum) + tolerance)
            {
                Tangent(mixture, sum);
                isCut = true;
            }
        }

        return isCut;
    }

    private static double Log(IReadOnlyList<double> numbers) => -Math.Log(Math.Max(numbers[0], Smallest));

    private static double Spread(SeasonGoal.AtLeast goal, int male, SeasonYield yield)
    {
        var logs = goal.SireCases[male].Select((w, c) => (Weight: w, Log: Log(yield.Numbers[c]))).ToArray();
        var mean = logs.Sum(l => l.Weight * l.Log);
        return logs.Sum(l => l.Weight * (l.Log - mean) * (l.Log - mean));
    }

    private double DensityOf(IReadOnlyList<double> numbers)
    {
        var log = Log(numbers);
        if (log <= 0.0)
        {
            return 1.0;
        }

        var (least, factorial) = (1.0, 1.0);
        for (var n = 1; n < _count; n++)
        {
            factorial *= n;
            var chance = n < numbers.Count ? numbers[n] : 0.0;
            least = Math.Min(least, Math.Pow(chance / Math.Max(numbers[0], Smallest) * factorial, 1.0 / n) / log);
        }

        return least;
    }

    private double Curve(double sum)
    {
        var (term, total) = (1.0, 1.0);
        for (var j = 1; j < _count; j++)
        {
            term *= _density * sum / j;
            total += term;
        }

        return 1.0 - (Math.Exp(-sum) * total);
    }

    // H' = e^-s (c Σ over j below k-1 - Σ over j below k) of (c s)^j / j!
    private double Slope(double sum)
    {
        var (term, total, shorter) = (1.0, 1.0, 0.0);
        for (var j = 1; j < _count; j++)
        {
            shorter += term;
            term *= _density * sum / j;
            total += term;
        }

        return Math.Exp(-sum) * (total - (_density * shorter));
    }

    private double Majorant(double sum) => sum < _touch ? _slope * sum : Curve(sum);

    // Where the line from 0 is steepest: the curve is convex before its one turn and concave after it.
    private (double Touch, double Slope) Touch()
    {
        var (low, high) = (1e-6, 4.0 * _count);
        for (var i = 0; i < 200; i++)
        {
            var (a, b) = (low + ((high - low) / 3.0), high - ((high - low) / 3.0));
            (low, high) = Curve(a) / a < Curve(b) / b ? (a, high) : (low, b);
        }

        // Taken a hair steeper, so that what the search leaves cannot put the line below the curve.
        var touch = (low + high) / 2.0;
        return touch < 1e-4 ? (0.0, 0.0) : (touch, (Curve(touch) / touch) + 1e-9);
    }

    private void Tangent(Mixture mixture, double at)
    {
        var (value, slope) = at < _touch ? (_slope * at, _slope) : (Curve(at) + 1e-9, Slope(at));
        _programme.AddRow(double.NegativeInfinity, value - (slope * at), [(mixture.Share, 1.0), (mixture.Sum, -slope)]);
    }

    private sealed record Mixture(double Weight, int Share, int Sum, (int Pair, double Log)[] Logs);
}
