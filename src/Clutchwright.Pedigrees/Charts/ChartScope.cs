namespace Clutchwright.Pedigrees.Charts;

/// <summary>Which part of a pedigree a chart draws.</summary>
/// <param name="AskedAbout">The key of the animal asked about, which gets the arrow; <c>null</c>: none, and the whole
/// pedigree is drawn but for animals of which neither a parent nor young are recorded.</param>
public sealed record ChartScope(string? AskedAbout)
{
    /// <summary>Gets how many generations of ancestors are drawn; 0 or more.</summary>
    public int GenerationsUp { get; init; } = 3;

    /// <summary>Gets how many generations of young are drawn; 0 or more.</summary>
    public int GenerationsDown { get; init; } = 2;

    /// <summary>Gets whether everyone is drawn who is kin to the animal asked about by blood or by young in common, however far.</summary>
    public bool IsWhole { get; init; }

    /// <summary>Gets how many animals are drawn, the nearest kin first; at least 1. The other parent of a drawn animal is drawn beyond it.</summary>
    public int Most { get; init; } = 150;

    /// <summary>Gets how many young of one pair are drawn one by one where they have no young themselves; the others are counted in one
    /// diamond. 0 or more.</summary>
    public int MostYoung { get; init; } = 12;
}
