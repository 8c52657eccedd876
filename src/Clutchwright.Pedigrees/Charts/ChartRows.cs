namespace Clutchwright.Pedigrees.Charts;

/// <summary>Gives every family its row: young stand one row below the lowest of their parents.</summary>
internal static class ChartRows
{
    public static void Assign(ChartKin kin, ChartCut cut, IReadOnlyList<ChartFamily> families)
    {
        var birth = new ChartFamily?[kin.Count];
        var asParent = new List<ChartFamily>?[kin.Count];
        foreach (var family in families)
        {
            family.Young.ForEach(y => birth[y] = family);
            foreach (var parent in family.Parents)
            {
                (asParent[parent] ??= []).Add(family);
            }
        }

        // First as high as can be. A founder then comes down to the row of its highest mate; what lies below stays as it is.
        var rows = new int[kin.Count];
        Descend();
        var lowest = new int[kin.Count];
        for (var animal = kin.Count - 1; animal >= 0; animal--)
        {
            lowest[animal] = asParent[animal] is { } pairs ? pairs.Min(LowestRow) : -1;
        }

        foreach (var founder in cut.Animals.Where(a => birth[a] is null && lowest[a] >= 0))
        {
            rows[founder] = lowest[founder];
        }

        Descend();

        // No row is left empty at the top.
        var top = families.Count == 0 ? 0 : families.Min(f => f.Row);
        foreach (var family in families)
        {
            family.Row -= top;
        }

        int LowestRow(ChartFamily family)
        {
            var bounds = family.Young.Where(y => lowest[y] >= 0).Select(y => lowest[y] - 1).ToArray();
            return bounds.Length == 0 ? family.Row : Math.Max(family.Row, bounds.Min());
        }

        // Positions have parents before young, so that one pass is enough.
        void Descend()
        {
            for (var animal = 0; animal < kin.Count; animal++)
            {
                if (cut.Drawn[animal] && birth[animal] is { } family)
                {
                    family.Row = family.Parents.Max(p => rows[p]);
                    rows[animal] = family.Row + 1;
                }
            }

            foreach (var family in families.Where(f => f.Young.Count == 0))
            {
                family.Row = family.Parents.Max(p => rows[p]);
            }
        }
    }
}
