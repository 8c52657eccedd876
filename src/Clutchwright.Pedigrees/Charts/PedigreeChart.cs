namespace Clutchwright.Pedigrees.Charts;

/// <summary>A pedigree laid out to be drawn: symbols in rows by generation, and the lines between them.</summary>
/// <remarks>Symbols and lines follow the standard of human genetics (docs/references.md [Bennett1995], [Bennett2022]). Cannot change. The same
/// pedigree gives the same chart, whatever the order in which its animals were listed.</remarks>
public sealed class PedigreeChart
{
    internal PedigreeChart(
        double width,
        double height,
        IReadOnlyList<ChartSymbol> symbols,
        IReadOnlyList<ChartMating> matings,
        IReadOnlyList<ChartSibship> sibships,
        IReadOnlyList<ChartArc> arcs,
        int notDrawn)
    {
        Width = width;
        Height = height;
        Symbols = symbols;
        Matings = matings;
        Sibships = sibships;
        Arcs = arcs;
        NotDrawn = notDrawn;
    }

    /// <summary>Gets the width of the whole, in the unit of the measures.</summary>
    public double Width { get; }

    /// <summary>Gets the height of the whole, labels included.</summary>
    public double Height { get; }

    /// <summary>Gets the symbols, row by row and from left to right. Every drawn animal has exactly one of kind
    /// <see cref="ChartSymbolKind.Animal"/>.</summary>
    public IReadOnlyList<ChartSymbol> Symbols { get; }

    /// <summary>Gets the mating lines.</summary>
    public IReadOnlyList<ChartMating> Matings { get; }

    /// <summary>Gets the sibships. Every drawn animal with a drawn parent is in exactly one.</summary>
    public IReadOnlyList<ChartSibship> Sibships { get; }

    /// <summary>Gets the arcs between symbols of one animal.</summary>
    public IReadOnlyList<ChartArc> Arcs { get; }

    /// <summary>Gets how many animals within the scope were left out because there are more than it allows; those counted in diamonds
    /// included.</summary>
    public int NotDrawn { get; }

    /// <summary>Lays out a chart.</summary>
    /// <param name="pedigree">The whole pedigree; kin is looked for in all of it, drawn or not.</param>
    /// <param name="animals">What is known of the animals, by key; of one that is missing the sex is not known.</param>
    /// <param name="scope">Which part to draw.</param>
    /// <param name="measures">The sizes; <c>null</c>: as by default.</param>
    /// <exception cref="ArgumentException">The pedigree has no animal of the key asked about.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The scope has a number below its least.</exception>
    /// <remarks>Rows follow the longest line of descent; the order within rows lowers the number of crossings by barycentre sweeps and
    /// exchanges of neighbours, a heuristic: the number found need not be the least (the problem is NP-hard). A pair on two different rows,
    /// and a mating too far from another of the same animal, is drawn at a second symbol of that animal. Cost: about O(n log n) a sweep for
    /// n symbols, a fixed number of sweeps, and O(m²) for the m sibships of a row.</remarks>
    public static PedigreeChart Of(
        Pedigree pedigree, IReadOnlyDictionary<string, ChartAnimal> animals, ChartScope scope, ChartMeasures? measures = null)
    {
        ArgumentNullException.ThrowIfNull(pedigree);
        ArgumentNullException.ThrowIfNull(animals);
        ArgumentNullException.ThrowIfNull(scope);
        ArgumentOutOfRangeException.ThrowIfNegative(scope.GenerationsUp);
        ArgumentOutOfRangeException.ThrowIfNegative(scope.GenerationsDown);
        ArgumentOutOfRangeException.ThrowIfNegative(scope.MostYoung);
        ArgumentOutOfRangeException.ThrowIfLessThan(scope.Most, 1);
        var sizes = measures ?? new();
        var kin = new ChartKin(pedigree, animals);
        var cut = ChartCut.Of(kin, scope);
        var families = ChartFamily.Of(kin, cut);
        ChartRows.Assign(kin, cut, families);
        var drawing = BlockAssembly.Of(kin, cut, families, sizes);
        RowOrder.Improve(drawing);
        RowPlacement.Place(drawing, sizes);
        return new ChartRouting(kin, cut, drawing, sizes, scope).Draw();
    }
}
