namespace Clutchwright.Pedigrees.Beliefs.Contradictions;

/// <summary>How many times likelier the looks would be if an animal had been taken for another hatchling of its season.</summary>
/// <remarks>Over all hatchlings it may have been exchanged with (of other parents, near in time, of a sex that fits), each as probable as another: the mean of the two looks' chances the
/// other way round over those as recorded. The two animals' chances given all other records are taken as independent of each other.</remarks>
internal sealed class ExchangeFactors
{
    private readonly CauseRates _rates;
    private readonly PedigreeFrame _frame;
    private readonly int[] _look;
    private readonly double[][] _log10;
    private readonly int[] _hatchlings;

    /// <summary>Works out how each look would sit on each hatchling.</summary>
    /// <param name="rates">The rates.</param>
    /// <param name="frame">The animals.</param>
    /// <param name="lookOf">The look of each node; <c>null</c>: not looked at.</param>
    /// <param name="log10">The logarithm of the chance of a look on a node, given all other records.</param>
    public ExchangeFactors(CauseRates rates, PedigreeFrame frame, string?[] lookOf, Func<string, int, double> log10)
    {
        (_rates, _frame) = (rates, frame);
        var looks = lookOf.OfType<string>().Distinct(StringComparer.Ordinal).ToArray();
        var number = looks.Select((l, i) => (l, i)).ToDictionary(p => p.l, p => p.i, StringComparer.Ordinal);
        _look = Array.ConvertAll(lookOf, l => l is null ? -1 : number[l]);
        _hatchlings = [.. Enumerable.Range(0, frame.RecordedCount).Where(n => _look[n] >= 0 && !frame.IsFounder(n) && frame.Records[n]!.Count == 1)];
        _log10 = new double[frame.RecordedCount][];
        foreach (var node in _hatchlings)
        {
            _log10[node] = Array.ConvertAll(looks, l => log10(l, node));
        }
    }

    /// <summary>The base-10 logarithm of the factor; <c>null</c> where there is no hatchling to be exchanged with.</summary>
    public double? Of(int node)
    {
        if (_log10[node] is not { } own)
        {
            return null;
        }

        var (count, most, sum) = (0, double.NegativeInfinity, 0.0);
        foreach (var other in _hatchlings)
        {
            if (!CouldBe(node, other))
            {
                continue;
            }

            var factor = own[_look[other]] + _log10[other][_look[node]] - own[_look[node]] - _log10[other][_look[other]];
            count++;
            (most, sum) = factor > most
                ? (factor, (sum * Math.Pow(10.0, most - factor)) + 1.0)
                : (most, sum + Math.Pow(10.0, factor - most));
        }

        return count == 0 ? null : most + Math.Log10(sum / count);
    }

    private bool CouldBe(int node, int other)
    {
        var (a, b) = (_frame.Records[node]!, _frame.Records[other]!);
        return (a.Dam != b.Dam || a.Sire != b.Sire)
            && (a.Sex is null || b.Sex is null || a.Sex == b.Sex)
            && (a.Hatched is { } x && b.Hatched is { } y ? Math.Abs(x.DayNumber - y.DayNumber) <= _rates.SwapDays : a.Hatched is null && b.Hatched is null);
    }
}
