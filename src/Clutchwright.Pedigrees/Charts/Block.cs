namespace Clutchwright.Pedigrees.Charts;

/// <summary>Spots of one row that stay together: one alone, a pair, or an animal with its several mates and theirs.</summary>
/// <remarks>The matings of a block form a tree. Its root stands in the middle; of the root's mates the first half stand on its left,
/// the others on its right, and whoever is mated to a mate stands beyond it. So every mating has a gap of its own.</remarks>
internal sealed class Block
{
    private readonly ChartMeasures _measures;
    private readonly List<Tie> _rootTies;
    private bool _isMirrored;

    public Block(IReadOnlyList<Spot> spots, ChartMeasures measures)
    {
        _measures = measures;
        Root = spots
            .OrderByDescending(s => s.Ties.Count)
            .ThenByDescending(s => s.Ties.Count > 0 && ReferenceEquals(s.Ties[0].Sire, s))
            .ThenBy(s => s.Rank)
            .First();
        Rank = spots.Where(s => s.Birth is not null).Select(s => s.Rank).DefaultIfEmpty(spots.Min(s => s.Rank)).Min();
        foreach (var spot in spots)
        {
            spot.Block = this;
        }

        _rootTies = [.. Root.Ties];
        Turn(Root, null);
        Ties = [.. spots.SelectMany(s => s.Ties).Distinct()];
        Arrange();
    }

    public Spot Root { get; }

    /// <summary>The earliest rank among those that hang under parents.</summary>
    public int Rank { get; }

    /// <summary>From left to right.</summary>
    public IReadOnlyList<Spot> Spots { get; private set; } = [];

    public IReadOnlyList<Tie> Ties { get; }

    /// <summary>The middle of the first spot.</summary>
    public double X { get; set; }

    /// <summary>Gets or sets the order of the root's mates, from left to right.</summary>
    public IReadOnlyList<Tie> MateOrder
    {
        get => [.. _rootTies];
        set
        {
            _rootTies.Clear();
            _rootTies.AddRange(value);
            Arrange();
        }
    }

    public double LeftReach => Spots[0].Width / 2;

    public double RightReach => Spots[^1].Offset + (Spots[^1].Width / 2);

    /// <summary>Whether the two of a pair can change sides.</summary>
    public bool IsPair => Spots.Count == 2;

    /// <summary>Exchanges the sides of a pair.</summary>
    public void Mirror()
    {
        _isMirrored = !_isMirrored;
        Arrange();
    }

    /// <summary>Orders the root's mates by where they are drawn to; those that are drawn nowhere keep their place.</summary>
    public void Sort(Func<Tie, double> pull)
    {
        if (_rootTies.Count < 2)
        {
            return;
        }

        var pulls = _rootTies.ToDictionary(t => t, pull);
        var free = Enumerable.Range(0, _rootTies.Count).Where(i => !double.IsNaN(pulls[_rootTies[i]])).ToArray();
        var sorted = free.Select(i => _rootTies[i]).OrderBy(t => pulls[t]).ToArray();
        for (var i = 0; i < free.Length; i++)
        {
            _rootTies[free[i]] = sorted[i];
        }

        Arrange();
    }

    /// <summary>The spots beyond a tie, seen from the root.</summary>
    public static IEnumerable<Spot> Beyond(Tie tie)
    {
        yield return tie.Outer;
        foreach (var further in tie.Outer.Ties.Where(t => !ReferenceEquals(t, tie)).SelectMany(Beyond))
        {
            yield return further;
        }
    }

    private static void Turn(Spot spot, Tie? from)
    {
        foreach (var tie in spot.Ties.Where(t => !ReferenceEquals(t, from)))
        {
            tie.Inner = spot;
            Turn(tie.Outer, tie);
        }
    }

    private void Arrange()
    {
        var onLeft = _rootTies.Count == 1 ? (_isMirrored ? 1 : 0) : _rootTies.Count / 2;

        // A single mate stands where its sex bids: the male on the left.
        if (_rootTies.Count == 1 && ReferenceEquals(_rootTies[0].Sire, _rootTies[0].Outer))
        {
            onLeft = 1 - onLeft;
        }

        var left = _rootTies.Take(onLeft).Reverse().SelectMany(Beyond).Reverse();
        var right = _rootTies.Skip(onLeft).SelectMany(Beyond);
        Spots = [.. left, Root, .. right];
        var offset = 0.0;
        for (var i = 0; i < Spots.Count; i++)
        {
            if (i > 0)
            {
                offset += (Spots[i - 1].Width / 2) + _measures.Gap + (Spots[i].Width / 2);
            }

            Spots[i].Offset = offset;
        }

        var rootIndex = onLeft == 0 ? 0 : Spots.ToList().IndexOf(Root);
        for (var i = 0; i < Spots.Count; i++)
        {
            if (i == rootIndex)
            {
                continue;
            }

            var spot = Spots[i];
            var tie = spot.Ties.First(t => ReferenceEquals(t.Outer, spot));
            var towards = i < rootIndex ? 1 : -1;
            tie.IsAdjacent = ReferenceEquals(Spots[i + towards], tie.Inner);
            tie.GapOffset = spot.Offset + (towards * ((spot.Width / 2) + (_measures.Gap / 2)));
        }
    }
}
