namespace Clutchwright.Pedigrees.Charts;

/// <summary>The rows of a chart, as blocks from left to right.</summary>
internal sealed class ChartDrawing(List<Block>[] rows, IReadOnlyDictionary<ChartFamily, ChartDrawing.Household> households)
{
    public List<Block>[] Rows { get; } = rows;

    public IReadOnlyDictionary<ChartFamily, Household> Households { get; } = households;

    public IEnumerable<Spot> Spots => Rows.SelectMany(r => r).SelectMany(b => b.Spots);

    /// <summary>What a family has on the chart: its matings above, its young below.</summary>
    public sealed class Household
    {
        public List<Tie> Ties { get; } = [];

        public List<Spot> Young { get; } = [];
    }
}

/// <summary>Makes the symbols of a chart and joins those that must stand together.</summary>
internal sealed class BlockAssembly
{
    // Mates of one animal in one row, and symbols in one block: beyond, lines over the row grow harder to follow than a second symbol.
    private const int MostMates = 6;
    private const int MostInBlock = 12;

    private readonly ChartKin _kin;
    private readonly ChartMeasures _measures;
    private readonly Dictionary<(int Animal, int Row), List<Spot>> _spots = [];
    private readonly List<Spot> _all = [];
    private readonly Dictionary<ChartFamily, ChartDrawing.Household> _households = [];
    private readonly Dictionary<Spot, Spot> _group = [];
    private readonly Dictionary<Spot, int> _size = [];

    private BlockAssembly(ChartKin kin, ChartMeasures measures)
    {
        _kin = kin;
        _measures = measures;
    }

    public static ChartDrawing Of(ChartKin kin, ChartCut cut, IReadOnlyList<ChartFamily> families, ChartMeasures measures)
    {
        var assembly = new BlockAssembly(kin, measures);
        assembly.AddSpots(cut, families);

        // Certain matings take their places before possible ones, and those that need no second symbol before the others.
        foreach (var family in families.OrderBy(f => f.IsPossible).ThenBy(f => f.Parents.Count(p => assembly.At(p, f.Row).Count == 0)))
        {
            assembly.Join(family);
        }

        return assembly.Finish(families);
    }

    private void AddSpots(ChartCut cut, IReadOnlyList<ChartFamily> families)
    {
        var birth = new Dictionary<int, ChartFamily>();
        var highest = new Dictionary<int, int>();
        foreach (var family in families)
        {
            _households.Add(family, new());
            family.Young.ForEach(y => birth.Add(y, family));
            foreach (var parent in family.Parents)
            {
                highest[parent] = Math.Min(highest.GetValueOrDefault(parent, int.MaxValue), family.Row);
            }
        }

        foreach (var animal in cut.Animals.OrderBy(_kin.RankOf))
        {
            var family = birth.GetValueOrDefault(animal);
            var row = family is null ? highest.GetValueOrDefault(animal) : family.Row + 1;
            var spot = Add(new(ChartSymbolKind.Animal, animal, row, _measures.LabelWidth, _kin.RankOf(animal)) { Birth = family });
            if (family is not null)
            {
                _households[family].Young.Add(spot);
            }
        }

        foreach (var family in families.Where(f => f.Uncounted > 0))
        {
            _households[family].Young.Add(Add(
                new(ChartSymbolKind.SeveralYoung, Spot.NoAnimal, family.Row + 1, _measures.Symbol, int.MaxValue) { Birth = family, Young = family.Uncounted }));
        }
    }

    private void Join(ChartFamily family)
    {
        Spot? ghost = family.Dam is null || family.Sires.Length == 0
            ? Add(new(ChartSymbolKind.NotRecorded, Spot.NoAnimal, family.Row, _measures.Symbol, int.MaxValue))
            : null;
        if (family.Sires.Length == 0)
        {
            Tie(ghost!, Here(family.Dam!.Value, family.Row, ghost!), family);
        }

        foreach (var sire in family.Sires)
        {
            if (ghost is not null)
            {
                Tie(Here(sire, family.Row, ghost), ghost, family);
            }
            else
            {
                TieTwo(sire, family.Dam!.Value, family);
            }
        }
    }

    private void TieTwo(int sire, int dam, ChartFamily family)
    {
        var row = family.Row;
        foreach (var his in At(sire, row))
        {
            foreach (var hers in At(dam, row))
            {
                if (MayJoin(his, hers))
                {
                    Tie(his, hers, family);
                    return;
                }
            }
        }

        // Whoever has no place in this row gets one; else the male stands here a second time.
        if (At(sire, row).Count > 0 && At(dam, row).Count == 0 && At(sire, row).Find(HasRoom) is { } free)
        {
            Tie(free, Again(dam, row), family);
        }
        else
        {
            Tie(Again(sire, row), At(dam, row).Find(HasRoom) ?? Again(dam, row), family);
        }
    }

    private Spot Here(int animal, int row, Spot mate) => At(animal, row).Find(s => MayJoin(s, mate)) ?? Again(animal, row);

    private static bool HasRoom(Spot spot) => spot.Ties.Count < MostMates;

    private bool MayJoin(Spot first, Spot second) =>
        HasRoom(first) && HasRoom(second) && GroupOf(first) is var one && GroupOf(second) is var two
        && !ReferenceEquals(one, two) && _size[one] + _size[two] <= MostInBlock;

    private Spot Again(int animal, int row) => Add(new(ChartSymbolKind.Again, animal, row, _measures.LabelWidth, _kin.RankOf(animal)));

    private List<Spot> At(int animal, int row) => _spots.GetValueOrDefault((animal, row)) ?? [];

    private Spot Add(Spot spot)
    {
        _all.Add(spot);
        _group.Add(spot, spot);
        _size.Add(spot, 1);
        if (spot.Animal != Spot.NoAnimal)
        {
            if (!_spots.TryGetValue((spot.Animal, spot.Row), out var here))
            {
                _spots.Add((spot.Animal, spot.Row), here = []);
            }

            here.Add(spot);
        }

        return spot;
    }

    private void Tie(Spot sire, Spot dam, ChartFamily family)
    {
        var tie = new Tie(sire, dam, family);
        sire.Ties.Add(tie);
        dam.Ties.Add(tie);
        _households[family].Ties.Add(tie);
        var (one, two) = (GroupOf(sire), GroupOf(dam));
        _group[two] = one;
        _size[one] += _size[two];
    }

    private Spot GroupOf(Spot spot)
    {
        while (!ReferenceEquals(_group[spot], spot))
        {
            spot = _group[spot];
        }

        return spot;
    }

    private ChartDrawing Finish(IReadOnlyList<ChartFamily> families)
    {
        // A pair's children in order of hatching give the order of its mates.
        var order = families.Select((f, i) => (f, i)).ToDictionary(p => p.f, p => p.i);
        _all.ForEach(s => s.Ties.Sort((a, b) => order[a.Family].CompareTo(order[b.Family])));
        var rows = new List<Block>[_all.Select(s => s.Row + 1).DefaultIfEmpty(0).Max()];
        for (var row = 0; row < rows.Length; row++)
        {
            rows[row] = [.. _all.Where(s => s.Row == row).GroupBy(GroupOf).Select(g => new Block([.. g], _measures)).OrderBy(b => b.Rank)];
        }

        return new(rows, _households);
    }
}
