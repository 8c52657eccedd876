namespace Clutchwright.Pedigrees.Charts;

/// <summary>Draws the lines between symbols that have their places in the rows, and gives the rows their heights.</summary>
internal sealed class ChartRouting
{
    private readonly ChartKin _kin;
    private readonly ChartCut _cut;
    private readonly ChartDrawing _drawing;
    private readonly ChartMeasures _measures;
    private readonly ChartScope _scope;
    private readonly Spot[] _spots;
    private readonly Dictionary<Spot, int> _places = [];
    private readonly Dictionary<Tie, int> _over = [];
    private readonly Dictionary<ChartFamily, int> _tracks = [];
    private readonly HashSet<string> _counted;
    private readonly double[] _rowY;

    public ChartRouting(ChartKin kin, ChartCut cut, ChartDrawing drawing, ChartMeasures measures, ChartScope scope)
    {
        _kin = kin;
        _cut = cut;
        _drawing = drawing;
        _measures = measures;
        _scope = scope;
        _counted = [.. drawing.Households.Keys.Select(f => f.Key)];
        _spots = [.. drawing.Spots];
        for (var i = 0; i < _spots.Length; i++)
        {
            _places.Add(_spots[i], i);
        }

        _rowY = new double[drawing.Rows.Length];
    }

    private double Half => _measures.Symbol / 2;

    public PedigreeChart Draw()
    {
        var height = SetHeights();
        var matings = new List<ChartMating>();
        var sibships = new List<ChartSibship>();
        foreach (var (family, household) in _drawing.Households.OrderBy(h => h.Key.Row).ThenBy(h => h.Value.Ties[0].Order))
        {
            var areKin = family.Dam is { } dam ? family.Sires.ToDictionary(s => s, s => _kin.AreKin(s, dam)) : [];
            var descents = new List<ChartDescent>();
            foreach (var tie in household.Ties)
            {
                descents.Add(new(matings.Count, new(Length(tie.GapX), LineY(tie))));
                matings.Add(new(_places[tie.Sire], _places[tie.Dam], Path(tie), areKin.GetValueOrDefault(tie.Sire.Animal), family.IsPossible));
            }

            if (household.Young.Count > 0)
            {
                sibships.Add(Sibship(family, household, descents));
            }
        }

        var width = _spots.Select(s => s.X + (s.Width / 2)).DefaultIfEmpty(_measures.Margin).Max() + _measures.Margin;
        return new(Length(width), Length(height), [.. _spots.Select(Symbol)], matings, sibships, Arcs(), _cut.NotDrawn);
    }

    private double SetHeights()
    {
        var y = _measures.Margin;
        for (var row = 0; row < _drawing.Rows.Length; row++)
        {
            var head = SetLinesOver(_drawing.Rows[row]);
            y += (head * _measures.Track) + Half;
            _rowY[row] = Length(y);
            y += Half + _drawing.Rows[row].SelectMany(b => b.Spots).Max(s => s.Animal == Spot.NoAnimal ? 0 : _kin.Animals[s.Animal].LabelHeight);

            var here = _drawing.Households.Where(h => h.Key.Row == row && h.Value.Young.Count > 0).OrderBy(h => h.Value.Ties[0].Order).ToArray();
            if (here.Length > 0)
            {
                var tracks = SibshipTracks.Of(
                    [.. here.Select(h => (h.Value.Ties.Select(t => t.GapX).ToArray(), h.Value.Young.Select(s => s.X).ToArray()))], _measures.Gap / 2);
                for (var i = 0; i < here.Length; i++)
                {
                    _tracks.Add(here[i].Key, tracks[i]);
                }

                y += (2 * _measures.Air) + (tracks.Max() * _measures.Track);
            }
        }

        return y + _measures.Margin;
    }

    // Matings of those that do not stand side by side pass over the row, the longer above the shorter.
    private int SetLinesOver(List<Block> row)
    {
        var ties = row.SelectMany(b => b.Ties).Where(t => !t.IsAdjacent).OrderBy(t => t.Right.Order - t.Left.Order).ThenBy(t => t.Left.Order).ToArray();
        for (var i = 0; i < ties.Length; i++)
        {
            var below = ties.Take(i).Where(t => t.Left.Order <= ties[i].Right.Order && ties[i].Left.Order <= t.Right.Order);
            _over.Add(ties[i], 1 + below.Select(t => _over[t]).DefaultIfEmpty(0).Max());
        }

        return ties.Length == 0 ? 0 : ties.Max(t => _over[t]);
    }

    private double LineY(Tie tie) => Length(_rowY[tie.Sire.Row] - (_over.TryGetValue(tie, out var over) ? Half + ((over - 0.25) * _measures.Track) : 0));

    private List<ChartPoint> Path(Tie tie)
    {
        var y = _rowY[tie.Sire.Row];
        if (tie.IsAdjacent)
        {
            return [new(Length(tie.Left.X), y), new(Length(tie.Right.X), y)];
        }

        // From the inner one's head the longest line starts nearest to the middle, so that the lines nest.
        var side = tie.Outer.Order > tie.Inner.Order ? 1 : -1;
        var beside = tie.Inner.Ties.Where(t => _over.ContainsKey(t) && ReferenceEquals(t.Inner, tie.Inner) && t.Outer.Order.CompareTo(t.Inner.Order) == side)
            .OrderByDescending(t => Math.Abs(t.Outer.Order - t.Inner.Order)).ToList();
        var from = tie.Inner.X + (side * Half * (beside.IndexOf(tie) + 1) / (beside.Count + 1));
        var to = tie.Outer.X - (side * Half / 2);
        var (left, right) = (Math.Min(from, to), Math.Max(from, to));
        return [new(Length(left), y), new(Length(left), LineY(tie)), new(Length(right), LineY(tie)), new(Length(right), y)];
    }

    private ChartSibship Sibship(ChartFamily family, ChartDrawing.Household household, List<ChartDescent> descents)
    {
        var row = family.Row;
        var bottom = _rowY[row] + Half + _drawing.Rows[row].SelectMany(b => b.Spots).Max(s => s.Animal == Spot.NoAnimal ? 0 : _kin.Animals[s.Animal].LabelHeight);
        var y = bottom + _measures.Air + (_tracks[family] * _measures.Track);
        var drops = household.Young.OrderBy(s => s.X).Select(s => new ChartDrop(_places[s], new(Length(s.X), _rowY[row + 1] - Half))).ToArray();
        var ends = drops.Select(d => d.To.X).Concat(descents.Select(d => d.From.X)).ToArray();
        return new(descents, Length(y), ends.Min(), ends.Max(), drops);
    }

    private ChartSymbol Symbol(Spot spot)
    {
        var animal = spot.Animal == Spot.NoAnimal ? null : _kin.Animals[spot.Animal];
        var symbol = new ChartSymbol(spot.Kind, animal, spot.Row, Length(spot.X), _rowY[spot.Row]) { Young = spot.Young };
        return spot.Kind != ChartSymbolKind.Animal ? symbol : symbol with
        {
            IsAskedAbout = animal!.Key == _scope.AskedAbout,
            HasMoreParents = spot.Birth is null && _kin.ParentsOf(spot.Animal).Any(),
            MoreYoung = _kin.YoungOf(spot.Animal).Count(IsNowhere),
        };
    }

    private bool IsNowhere(int young) => !_cut.Drawn[young] && !_counted.Contains(ChartFamily.KeyOf(_kin, young));

    private List<ChartArc> Arcs()
    {
        var arcs = new List<ChartArc>();
        var own = _spots.Where(s => s.Kind == ChartSymbolKind.Animal).ToDictionary(s => s.Animal);
        foreach (var again in _spots.Where(s => s.Kind == ChartSymbolKind.Again))
        {
            var (from, to) = (own[again.Animal], again);
            var way = Math.Sign(to.X - from.X);
            var start = new ChartPoint(Length(from.X + (way * Half * 0.6)), Length(_rowY[from.Row] + (from.Row == to.Row ? -Half : Half) * 0.9));
            var end = new ChartPoint(Length(to.X - (way * Half * 0.6)), Length(_rowY[to.Row] - (Half * 0.9)));
            var lift = from.Row == to.Row ? -Math.Min(40, 12 + (Math.Abs(end.X - start.X) * 0.1)) : (end.Y - start.Y) * 0.45;
            arcs.Add(new(_places[from], _places[to],
            [
                start,
                new(Length(start.X + ((end.X - start.X) * 0.15)), Length(start.Y + lift)),
                new(Length(end.X - ((end.X - start.X) * 0.15)), Length(from.Row == to.Row ? end.Y + lift : end.Y - lift)),
                end,
            ]));
        }

        return arcs;
    }

    private static double Length(double length) => Math.Round(length, 1);
}
