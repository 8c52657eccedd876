namespace Clutchwright.Pedigrees.Charts;

/// <summary>Orders the blocks of every row so that few lines cross: sweeps by barycentre, then exchanges of neighbours.</summary>
/// <remarks>After Sugiyama, Tagawa and Toda 1981 (docs/references.md [Sugiyama1981]). Every choice is by a fixed order, so that the result repeats.</remarks>
internal sealed class RowOrder
{
    private const int Sweeps = 12;
    private const int MostPasses = 8;

    private readonly ChartDrawing _drawing;
    private readonly List<Block>[] _rows;

    private RowOrder(ChartDrawing drawing)
    {
        _drawing = drawing;
        _rows = drawing.Rows;
        for (var row = 0; row < _rows.Length; row++)
        {
            Number(row);
        }
    }

    public static void Improve(ChartDrawing drawing)
    {
        var order = new RowOrder(drawing);
        var best = long.MaxValue;
        var kept = Array.Empty<(Block Block, IReadOnlyList<Tie> Mates)[]>();
        for (var sweep = 0; sweep < Sweeps; sweep++)
        {
            order.Sweep(downwards: sweep % 2 == 0);
            order.ExchangeNeighbours();
            var crossings = order.Crossings();
            if (crossings < best)
            {
                best = crossings;
                kept = [.. order._rows.Select(r => r.Select(b => (b, b.MateOrder)).ToArray())];
            }

            if (crossings == 0 && sweep > 0)
            {
                break;
            }
        }

        for (var row = 0; row < kept.Length; row++)
        {
            order._rows[row].Clear();
            foreach (var (block, mates) in kept[row])
            {
                block.MateOrder = mates;
                order._rows[row].Add(block);
            }

            order.Number(row);
        }

        order.MirrorPairs();
        order.ExchangeNeighbours();
    }

    private void Sweep(bool downwards)
    {
        for (var step = 0; step < _rows.Length; step++)
        {
            var row = downwards ? step : _rows.Length - 1 - step;
            foreach (var block in _rows[row])
            {
                block.Sort(t => Mean(Block.Beyond(t).SelectMany(s => Above(s).Concat(s.Ties.SelectMany(Below))).Select(p => (double)p)));
            }

            // Blocks without neighbours on that side keep their places; the others are sorted into the rest.
            var pulls = _rows[row].ToDictionary(b => b, b => downwards ? Mean(b.Spots.SelectMany(Above).Select(p => (double)p)) : Mean(b.Ties.SelectMany(Below).Select(p => (double)p)));
            var places = Enumerable.Range(0, _rows[row].Count).Where(i => !double.IsNaN(pulls[_rows[row][i]])).ToArray();
            var sorted = places.Select(i => _rows[row][i]).OrderBy(b => pulls[b]).ThenBy(b => b.Rank).ToArray();
            for (var i = 0; i < places.Length; i++)
            {
                _rows[row][places[i]] = sorted[i];
            }

            Number(row);
        }
    }

    private void ExchangeNeighbours()
    {
        for (var pass = 0; pass < MostPasses; pass++)
        {
            var hasChanged = false;
            for (var row = 0; row < _rows.Length; row++)
            {
                for (var i = 0; i + 1 < _rows[row].Count; i++)
                {
                    var (left, right) = (_rows[row][i], _rows[row][i + 1]);
                    var gain = Crossings(left, right) - Crossings(right, left);
                    if (gain > 0 || (gain == 0 && AreSiblingsOutOfOrder(left, right)))
                    {
                        (_rows[row][i], _rows[row][i + 1]) = (right, left);
                        hasChanged = true;
                        Number(row);
                    }
                }
            }

            if (!hasChanged)
            {
                return;
            }
        }
    }

    // The male stands on the left, unless fewer lines cross the other way round.
    private void MirrorPairs()
    {
        for (var row = 0; row < _rows.Length; row++)
        {
            foreach (var pair in _rows[row].Where(b => b.IsPair && b.Spots.All(s => s.Birth is not null)).ToArray())
            {
                var before = Crossings(row);
                pair.Mirror();
                Number(row);
                if (Crossings(row) >= before)
                {
                    pair.Mirror();
                    Number(row);
                }
            }
        }
    }

    private static bool AreSiblingsOutOfOrder(Block left, Block right) =>
        left.Rank > right.Rank && left.Spots.Any(l => l.Birth is not null && right.Spots.Any(r => ReferenceEquals(r.Birth, l.Birth)));

    private IEnumerable<int> Above(Spot spot) => spot.Birth is { } birth ? _drawing.Households[birth].Ties.Select(t => t.Order) : [];

    private IEnumerable<int> Below(Tie tie) => _drawing.Households[tie.Family].Young.Select(y => y.Order);

    // The crossings of two neighbouring blocks' lines, the first on the left.
    private int Crossings(Block left, Block right) =>
        Inversions([.. left.Spots.SelectMany(Above)], [.. right.Spots.SelectMany(Above)])
        + Inversions([.. left.Ties.SelectMany(Below)], [.. right.Ties.SelectMany(Below)]);

    private static int Inversions(int[] left, int[] right)
    {
        if (left.Length == 0 || right.Length == 0)
        {
            return 0;
        }

        Array.Sort(right);
        var count = 0;
        foreach (var place in left)
        {
            var found = Array.BinarySearch(right, place);
            var smaller = found < 0 ? ~found : found;
            while (smaller > 0 && right[smaller - 1] == place)
            {
                smaller--;
            }

            count += smaller;
        }

        return count;
    }

    private long Crossings() => Enumerable.Range(0, Math.Max(0, _rows.Length - 1)).Sum(Between);

    private long Crossings(int row) => (row > 0 ? Between(row - 1) : 0) + (row + 1 < _rows.Length ? Between(row) : 0);

    private long Between(int row)
    {
        var lines = _rows[row].SelectMany(b => b.Ties).SelectMany(t => Below(t).Select(y => (Above: t.Order, Below: y))).Order().ToArray();

        // Inversions by a Fenwick tree over the places below; lines from one point do not cross.
        var counts = new int[lines.Length == 0 ? 1 : lines.Max(l => l.Below) + 2];
        var crossings = 0L;
        var seen = 0;
        for (var start = 0; start < lines.Length;)
        {
            var end = start;
            while (end < lines.Length && lines[end].Above == lines[start].Above)
            {
                var upTo = 0;
                for (var i = lines[end].Below + 1; i > 0; i -= i & -i)
                {
                    upTo += counts[i];
                }

                crossings += seen - upTo;
                end++;
            }

            for (; start < end; start++, seen++)
            {
                for (var i = lines[start].Below + 1; i < counts.Length; i += i & -i)
                {
                    counts[i]++;
                }
            }
        }

        return crossings;
    }

    private void Number(int row)
    {
        var order = 0;
        foreach (var block in _rows[row])
        {
            foreach (var spot in block.Spots)
            {
                spot.Order = order;
                order += 2;
            }

            foreach (var tie in block.Ties)
            {
                tie.Order = tie.Outer.Order + (tie.Outer.Order < block.Root.Order ? 1 : -1);
            }
        }
    }

    private static double Mean(IEnumerable<double> values)
    {
        var (sum, count) = (0.0, 0);
        foreach (var value in values)
        {
            sum += value;
            count++;
        }

        return count == 0 ? double.NaN : sum / count;
    }
}
