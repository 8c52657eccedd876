namespace Clutchwright.Planning.Seasons;

/// <summary>Bounds the information on a doubt: a concave function of the sum of -log(silent) over the pairs chosen.</summary>
/// <remarks>With Q the chance that all clutches are silent and S = 1 - prior + prior Q, the derivative by -log Q is prior Q log2(S / (prior Q)),
/// which falls as Q falls; so the information is concave in -log Q.</remarks>
internal sealed class DoubtBound : GoalBound
{
    private static readonly double[] First = [0.0, 0.35, 0.7, 1.4, 2.1, 3.5, 6.0];

    private readonly double _prior;
    private readonly (int Pair, double Log)[] _logs;
    private readonly int _sum;

    public DoubtBound(LinearProgramme programme, IReadOnlyList<int?> columns, SeasonGoal.Doubt goal)
        : base(programme, programme.AddColumn(goal.Least ?? 0.0, 1.0, goal.Weight, isChoice: false))
    {
        _prior = goal.Prior;
        _logs = [.. Enumerable.Range(0, columns.Count)
            .Where(p => columns[p] is not null && goal.Silent[p] < 1.0)
            .Select(p => (p, -Math.Log(Math.Max(goal.Silent[p], Smallest))))];
        _sum = programme.AddColumn(0.0, -LeastLog, 0.0, isChoice: false);
        programme.AddRow(double.NegativeInfinity, 0.0, [(_sum, 1.0), .. _logs.Select(l => (columns[l.Pair]!.Value, -l.Log))]);
        foreach (var at in First)
        {
            Tangent(at);
        }
    }

    public override bool Cut(IReadOnlyList<double> choices, IReadOnlyList<double> values, double tolerance)
    {
        var sum = Math.Min(-LeastLog, _logs.Sum(l => l.Log * choices[l.Pair]));
        if (values[Figure] <= SeasonFigures.Bits(_prior, Math.Exp(-sum)) + tolerance)
        {
            return false;
        }

        Tangent(sum);
        return true;
    }

    private void Tangent(double at)
    {
        var silent = Math.Exp(-at);
        var missed = _prior * silent;
        var slope = missed <= 0.0 ? 0.0 : missed * Math.Log2((1.0 - _prior + missed) / missed);
        Programme.AddRow(
            double.NegativeInfinity, SeasonFigures.Bits(_prior, silent) - (slope * at), [(Figure, 1.0), (_sum, -slope)]);
    }
}
