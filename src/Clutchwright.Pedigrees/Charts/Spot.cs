namespace Clutchwright.Pedigrees.Charts;

/// <summary>A symbol before it has its place.</summary>
internal sealed class Spot(ChartSymbolKind kind, int animal, int row, double width, int rank)
{
    public const int NoAnimal = -1;

    public ChartSymbolKind Kind { get; } = kind;

    /// <summary>The animal's position in the pedigree, or <see cref="NoAnimal"/>.</summary>
    public int Animal { get; } = animal;

    public int Row { get; } = row;

    public double Width { get; } = width;

    /// <summary>The place in the order of hatching among its siblings.</summary>
    public int Rank { get; } = rank;

    public int Young { get; init; }

    /// <summary>The family under which it hangs.</summary>
    public ChartFamily? Birth { get; init; }

    public List<Tie> Ties { get; } = [];

    public Block Block { get; set; } = default!;

    /// <summary>The middle, from the middle of the block's first spot.</summary>
    public double Offset { get; set; }

    /// <summary>The place in its row, counted in steps of two from 0; odd numbers are the gaps.</summary>
    public int Order { get; set; }

    public double X => Block.X + Offset;
}

/// <summary>A mating that joins two spots of one row.</summary>
internal sealed class Tie(Spot sire, Spot dam, ChartFamily family)
{
    public Spot Sire { get; } = sire;

    public Spot Dam { get; } = dam;

    public ChartFamily Family { get; } = family;

    /// <summary>The one of the two that stands nearer to the middle of the block.</summary>
    public Spot Inner { get; set; } = sire;

    public Spot Outer => ReferenceEquals(Inner, Sire) ? Dam : Sire;

    /// <summary>Whether the two stand side by side.</summary>
    public bool IsAdjacent { get; set; }

    /// <summary>The middle of the gap beside the outer one, from the middle of the block's first spot.</summary>
    public double GapOffset { get; set; }

    /// <summary>The place of that gap in its row, an odd number.</summary>
    public int Order { get; set; }

    public Spot Left => Sire.Order < Dam.Order ? Sire : Dam;

    public Spot Right => Sire.Order < Dam.Order ? Dam : Sire;

    public double GapX => Sire.Block.X + GapOffset;

    public Spot Other(Spot spot) => ReferenceEquals(spot, Sire) ? Dam : Sire;
}
