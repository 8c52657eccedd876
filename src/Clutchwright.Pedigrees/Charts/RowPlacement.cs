namespace Clutchwright.Pedigrees.Charts;

/// <summary>Gives every block its place from the left: as near as can be to above its young and below its parents, without an overlap.</summary>
internal sealed class RowPlacement
{
    private const int Rounds = 24;

    private readonly ChartDrawing _drawing;
    private readonly ChartMeasures _measures;

    private RowPlacement(ChartDrawing drawing, ChartMeasures measures)
    {
        _drawing = drawing;
        _measures = measures;
    }

    public static void Place(ChartDrawing drawing, ChartMeasures measures)
    {
        var placement = new RowPlacement(drawing, measures);
        foreach (var row in drawing.Rows)
        {
            placement.Fit(row, b => (b.X, 1));
        }

        for (var round = 0; round < Rounds; round++)
        {
            foreach (var row in drawing.Rows)
            {
                placement.Fit(row, b => placement.Pull(b, up: 1, down: 0.01));
            }

            foreach (var row in drawing.Rows.Reverse())
            {
                placement.Fit(row, b => placement.Pull(b, up: 0.01, down: 1));
            }
        }

        for (var round = 0; round < Rounds; round++)
        {
            foreach (var row in drawing.Rows)
            {
                placement.Fit(row, b => placement.Pull(b, up: 1, down: 1));
            }
        }

        placement.MoveTogether();

        // The whole begins at the left edge; lengths to a tenth, so that text written from them is short and repeats.
        var left = drawing.Rows.SelectMany(r => r).Select(b => b.X - b.LeftReach).DefaultIfEmpty(0).Min();
        foreach (var block in drawing.Rows.SelectMany(r => r))
        {
            block.X = Math.Round(block.X - left + measures.Margin, 1);
        }
    }

    // Where the block's lines would have it, and how strongly.
    private (double X, double Weight) Pull(Block block, double up, double down)
    {
        var (sum, weight) = (0.0, 0.0);
        foreach (var spot in block.Spots)
        {
            if (spot.Birth is { } birth)
            {
                // Each as near as can be below the pair: siblings then stand side by side, their middle under it.
                sum += up * (_drawing.Households[birth].Ties.Average(t => t.GapX) - spot.Offset);
                weight += up;
            }
        }

        foreach (var tie in block.Ties)
        {
            var household = _drawing.Households[tie.Family];
            if (household.Young.Count > 0)
            {
                var middle = (household.Young.Min(y => y.X) + household.Young.Max(y => y.X)) / 2;
                sum += down * (block.X + middle - household.Ties.Average(t => t.GapX));
                weight += down;
            }
        }

        return weight == 0 ? (block.X, 0.001) : (sum / weight, weight);
    }

    // Parts that no line joins, or only an arc, move up to those on their left.
    private void MoveTogether()
    {
        var parts = Parts();
        var neighbours = _drawing.Rows.SelectMany(r => r.Zip(r.Skip(1), (left, right) => (Left: left, Right: right))).ToArray();
        var edge = parts.Keys.Select(b => b.X - b.LeftReach).DefaultIfEmpty(0).Min();
        foreach (var part in parts.GroupBy(p => p.Value, p => p.Key).OrderBy(g => g.Min(b => b.X - b.LeftReach)).ThenBy(g => g.Key).ToArray())
        {
            var free = neighbours
                .Where(n => parts[n.Right] == part.Key && parts[n.Left] != part.Key)
                .Select(n => n.Right.X - n.Right.LeftReach - n.Left.X - n.Left.RightReach - (1.6 * _measures.Gap))
                .Append(part.Min(b => b.X - b.LeftReach) - edge)
                .Min();
            foreach (var block in part.Where(_ => free > 0))
            {
                block.X -= free;
            }
        }
    }

    private Dictionary<Block, int> Parts()
    {
        var parts = new Dictionary<Block, int>();
        var blocks = _drawing.Rows.SelectMany(r => r).ToArray();
        for (var i = 0; i < blocks.Length; i++)
        {
            var open = new Stack<Block>([blocks[i]]);
            while (open.TryPop(out var block))
            {
                if (parts.TryAdd(block, i))
                {
                    foreach (var near in block.Ties.SelectMany(t => _drawing.Households[t.Family].Young).Select(y => y.Block)
                        .Concat(block.Spots.Where(s => s.Birth is not null).SelectMany(s => _drawing.Households[s.Birth!].Ties).Select(t => t.Sire.Block)))
                    {
                        open.Push(near);
                    }
                }
            }
        }

        return parts;
    }

    // Least squares under least distances: pool adjacent violators on the places left after the distances are taken off.
    private void Fit(List<Block> row, Func<Block, (double X, double Weight)> pull)
    {
        var offsets = new double[row.Count];
        for (var i = 1; i < row.Count; i++)
        {
            offsets[i] = offsets[i - 1] + row[i - 1].RightReach + Between(row[i - 1], row[i]) + row[i].LeftReach;
        }

        var pools = new List<(double X, double Weight, int Count)>(row.Count);
        for (var i = 0; i < row.Count; i++)
        {
            var (x, weight) = pull(row[i]);
            var pool = (X: x - offsets[i], Weight: weight, Count: 1);
            while (pools.Count > 0 && pools[^1].X > pool.X)
            {
                var last = pools[^1];
                pools.RemoveAt(pools.Count - 1);
                var both = last.Weight + pool.Weight;
                pool = (((last.X * last.Weight) + (pool.X * pool.Weight)) / both, both, last.Count + pool.Count);
            }

            pools.Add(pool);
        }

        var block = 0;
        foreach (var (x, _, count) in pools)
        {
            for (var i = 0; i < count; i++, block++)
            {
                row[block].X = x + offsets[block];
            }
        }
    }

    // Strangers stand farther apart than siblings.
    private double Between(Block left, Block right) =>
        left.Spots[^1].Birth is { } birth && ReferenceEquals(birth, right.Spots[0].Birth) ? _measures.Gap : 1.6 * _measures.Gap;
}
