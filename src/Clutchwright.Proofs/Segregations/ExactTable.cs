using Clutchwright.Proofs.Distributions;

namespace Clutchwright.Proofs.Segregations;

/// <summary>The exact test of a table with both its margins given: the chance of any table no likelier than the one observed.</summary>
/// <remarks>Rows are filled one after the other over all tables, within a budget; past it tables are drawn by shuffling.</remarks>
internal sealed class ExactTable
{
    private const double Tie = 1e-7;

    private readonly int[] _rows;
    private readonly int[] _columns;
    private readonly double[] _logFactorials;
    private readonly double _bound;
    private readonly long _mostBranches;
    private long _branches;

    private ExactTable(int[][] table, long mostBranches)
    {
        _rows = Array.ConvertAll(table, r => r.Sum());
        _columns = [.. Enumerable.Range(0, table[0].Length).Select(c => table.Sum(r => r[c]))];
        _mostBranches = mostBranches;
        _logFactorials = new double[_rows.Sum() + 1];
        for (var i = 2; i < _logFactorials.Length; i++)
        {
            _logFactorials[i] = _logFactorials[i - 1] + Math.Log(i);
        }

        _bound = table.Sum(r => r.Sum(n => -_logFactorials[n])) + Tie;
    }

    public static ExactChance Of(IReadOnlyList<IReadOnlyList<int>> clutches, ExactSettings settings)
    {
        // Empty rows and columns change nothing.
        var columns = Enumerable.Range(0, clutches[0].Count).Where(c => clutches.Any(r => r[c] > 0)).ToArray();
        var table = clutches.Select(r => columns.Select(c => r[c]).ToArray()).Where(r => r.Sum() > 0).ToArray();
        if (table.Length < 2 || columns.Length < 2)
        {
            return new(1.0, 0.0, 0);
        }

        var test = new ExactTable(table, settings.MostBranches);
        var log = test._rows.Concat(test._columns).Sum(n => test._logFactorials[n]) - test._logFactorials[^1];
        return test.Add(0, [.. test._columns], 0.0, log) is { } value
            ? new(Math.Clamp(value, 0.0, 1.0), 0.0, 0)
            : test.Draw(settings);
    }

    private double? Add(int row, int[] left, double weight, double log)
    {
        if (row == _rows.Length - 1)
        {
            foreach (var n in left)
            {
                weight -= _logFactorials[n];
            }

            return weight <= _bound ? Math.Exp(log + weight) : 0.0;
        }

        return Fill(row, 0, _rows[row], left, weight, log);
    }

    private double? Fill(int row, int column, int toPlace, int[] left, double weight, double log)
    {
        if (++_branches > _mostBranches)
        {
            return null;
        }

        if (column == left.Length - 1)
        {
            if (toPlace > left[column])
            {
                return 0.0;
            }

            left[column] -= toPlace;
            var rest = Add(row + 1, left, weight - _logFactorials[toPlace], log);
            left[column] += toPlace;
            return rest;
        }

        var sum = 0.0;
        for (var n = Math.Min(toPlace, left[column]); n >= 0; n--)
        {
            left[column] -= n;
            var part = Fill(row, column + 1, toPlace - n, left, weight - _logFactorials[n], log);
            left[column] += n;
            if (part is null)
            {
                return null;
            }

            sum += part.Value;
        }

        return sum;
    }

    private ExactChance Draw(ExactSettings settings)
    {
        var chance = new SplitMix(settings.Seed);
        var eggs = _columns.SelectMany((n, c) => Enumerable.Repeat(c, n)).ToArray();
        var counts = new int[_columns.Length];
        var counted = 0;
        for (var draw = 0; draw < settings.Draws; draw++)
        {
            var (weight, next) = (0.0, 0);
            foreach (var row in _rows)
            {
                Array.Clear(counts);
                for (var i = 0; i < row; i++, next++)
                {
                    var other = next + chance.Below(eggs.Length - next);
                    (eggs[next], eggs[other]) = (eggs[other], eggs[next]);
                    counts[eggs[next]]++;
                }

                foreach (var n in counts)
                {
                    weight -= _logFactorials[n];
                }
            }

            counted += weight <= _bound ? 1 : 0;
        }

        var value = (counted + 1.0) / (settings.Draws + 1.0);
        return new(value, Math.Sqrt(value * (1.0 - value) / settings.Draws), settings.Draws);
    }
}
