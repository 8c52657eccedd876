namespace Clutchwright.Pedigrees.Charts;

/// <summary>What a symbol stands for.</summary>
public enum ChartSymbolKind
{
    /// <summary>An animal.</summary>
    Animal = 1,

    /// <summary>An animal that stands elsewhere too; a dotted arc joins the two.</summary>
    Again = 2,

    /// <summary>A parent that is not recorded.</summary>
    NotRecorded = 3,

    /// <summary>Several young that are not drawn one by one; a diamond with their number.</summary>
    SeveralYoung = 4,
}

/// <summary>A symbol of a chart.</summary>
/// <param name="Kind">What it stands for.</param>
/// <param name="Animal">The animal; <c>null</c> for a parent that is not recorded and for several young.</param>
/// <param name="Row">The generation, from 0 at the top.</param>
/// <param name="X">The middle, from the left edge of the chart.</param>
/// <param name="Y">The middle, from the upper edge of the chart.</param>
public sealed record ChartSymbol(ChartSymbolKind Kind, ChartAnimal? Animal, int Row, double X, double Y)
{
    /// <summary>Gets how many young it stands for, 1 or more; 0 for every other kind.</summary>
    public int Young { get; init; }

    /// <summary>Gets whether this is the animal asked about.</summary>
    public bool IsAskedAbout { get; init; }

    /// <summary>Gets whether parents are recorded that this chart does not draw.</summary>
    public bool HasMoreParents { get; init; }

    /// <summary>Gets how many young are recorded that this chart neither draws nor counts in a diamond.</summary>
    public int MoreYoung { get; init; }
}

/// <summary>A point of a chart.</summary>
/// <param name="X">From the left edge.</param>
/// <param name="Y">From the upper edge, downwards.</param>
public readonly record struct ChartPoint(double X, double Y);
