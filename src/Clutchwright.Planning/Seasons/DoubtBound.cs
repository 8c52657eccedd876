namespace Clutchwright.Planning.Seasons;

/// <summary>Bounds the information on a doubt.</summary>
/// <remarks>
/// With Q the chance that all clutches are silent and S = 1 - prior + prior Q, the derivative of the information by -log Q is prior Q log2(S / (prior Q)),
/// which falls as Q falls; so it is concave in the sum of -log over the clutches. The mean over what is seen of them is by Jensen's inequality at most the
/// information of the mean sum. What further clutches add falls with each one (it is submodular), so that at a plan S it is at most the figure of S and, for
/// each further pair, what that one would add to S. [Nemhauser1978]
/// </remarks>
internal sealed class DoubtBound : GoalBound
{
    private static readonly double[] First = [0.0, 0.35, 0.7, 1.4, 2.1, 3.5, 6.0];

    private readonly SeasonGoal.Doubt _goal;
    private readonly IReadOnlyList<int?> _columns;
    private readonly (int Pair, double Log)[] _logs;
    private readonly int _sum;

    public DoubtBound(LinearProgramme programme, IReadOnlyList<int?> columns, SeasonGoal.Doubt goal)
        : base(programme, programme.AddColumn(goal.Least ?? 0.0, 1.0, goal.Weight, isChoice: false))
    {
        (_goal, _columns) = (goal, columns);
        _logs = [.. Enumerable.Range(0, columns.Count)
            .Where(p => columns[p] is not null && goal.Silences[p] is not null)
            .Select(p => (p, goal.Silences[p]!.Chances.Select((c, i) => -c * Math.Log(Math.Max(goal.Silences[p]!.Silent[i], Smallest))).Sum()))];
        _sum = programme.AddColumn(0.0, -LeastLog, 0.0, isChoice: false);
        programme.AddRow(double.NegativeInfinity, 0.0, [(_sum, 1.0), .. _logs.Select(l => (columns[l.Pair]!.Value, -l.Log))]);
        foreach (var at in First)
        {
            Tangent(at);
        }

        CutAt([], 0.0);
    }

    public override bool Cut(IReadOnlyList<double> choices, IReadOnlyList<double> values, double tolerance)
    {
        var sum = Math.Min(-LeastLog, _logs.Sum(l => l.Log * choices[l.Pair]));
        if (values[Figure] <= SeasonFigures.Bits(_goal.Prior, Math.Exp(-sum)) + tolerance)
        {
            return false;
        }

        Tangent(sum);
        return true;
    }

    public override void CutAt(IReadOnlyList<int> chosen, double figure)
    {
        var telling = chosen.Where(p => _goal.Silences[p] is not null).ToArray();
        Programme.AddRow(double.NegativeInfinity, figure,
        [
            (Figure, 1.0),
            .. _logs.Where(l => !telling.Contains(l.Pair))
                .Select(l => (_columns[l.Pair]!.Value, figure - SeasonFigures.Bits(_goal, [.. telling, l.Pair]))),
        ]);
    }

    private void Tangent(double at)
    {
        var silent = Math.Exp(-at);
        var missed = _goal.Prior * silent;
        var slope = missed <= 0.0 ? 0.0 : missed * Math.Log2((1.0 - _goal.Prior + missed) / missed);
        Programme.AddRow(
            double.NegativeInfinity, SeasonFigures.Bits(_goal.Prior, silent) - (slope * at), [(Figure, 1.0), (_sum, -slope)]);
    }
}
