namespace Clutchwright.Pedigrees.Charts;

/// <summary>Gives the sibship lines below one row their heights, so that no two run into each other and few cross.</summary>
internal static class SibshipTracks
{
    private const int Collinear = 50;
    private const double SameX = 4;

    /// <param name="lines">Where the lines down to each sibship line come from, and where those to its young go.</param>
    /// <param name="clearance">The least space between two lines at one height.</param>
    /// <returns>For each the height, from 0 at the top.</returns>
    public static int[] Of(IReadOnlyList<(double[] Above, double[] Below)> lines, double clearance)
    {
        var spans = lines.Select(l => (From: l.Above.Concat(l.Below).Min(), To: l.Above.Concat(l.Below).Max())).ToArray();
        var order = Enumerable.Range(0, lines.Count).OrderBy(i => spans[i].From).ThenBy(i => i).ToArray();
        for (var pass = 0; pass < order.Length; pass++)
        {
            var hasChanged = false;
            for (var i = 0; i + 1 < order.Length; i++)
            {
                var (upper, lower) = (order[i], order[i + 1]);
                if (Overlap(upper, lower) && Cost(upper, lower) > Cost(lower, upper))
                {
                    (order[i], order[i + 1]) = (lower, upper);
                    hasChanged = true;
                }
                else if (!Overlap(upper, lower) && i + 2 < order.Length && Overlap(upper, order[i + 2]) && Cost(upper, order[i + 2]) > Cost(order[i + 2], upper))
                {
                    // Those that do not meet may pass each other, so that the next two can be compared.
                    (order[i], order[i + 1]) = (lower, upper);
                    hasChanged = true;
                }
            }

            if (!hasChanged)
            {
                break;
            }
        }

        var heights = new int[lines.Count];
        for (var i = 0; i < order.Length; i++)
        {
            for (var j = 0; j < i; j++)
            {
                if (Overlap(order[i], order[j]))
                {
                    heights[order[i]] = Math.Max(heights[order[i]], heights[order[j]] + 1);
                }
            }
        }

        return heights;

        bool Overlap(int a, int b) => spans[a].From < spans[b].To + clearance && spans[b].From < spans[a].To + clearance;

        int Cost(int upper, int lower)
        {
            var cost = lines[lower].Above.Count(x => x > spans[upper].From && x < spans[upper].To)
                + lines[upper].Below.Count(x => x > spans[lower].From && x < spans[lower].To);
            return cost + (lines[lower].Above.Any(a => Array.Exists(lines[upper].Below, b => Math.Abs(a - b) < SameX)) ? Collinear : 0);
        }
    }
}
