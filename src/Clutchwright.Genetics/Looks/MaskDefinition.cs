namespace Clutchwright.Genetics.Looks;

/// <summary>A rule by which one visible form hides others, as it is described.</summary>
/// <param name="By">Ids of the forms that hide.</param>
/// <param name="Hides">Ids of the alleles or loci hidden; <c>null</c>: every other locus.</param>
public sealed record MaskDefinition(IReadOnlyList<string> By, IReadOnlyList<string>? Hides)
{
    /// <summary>Gets the ids of alleles that show through clearly.</summary>
    public IReadOnlyList<string> Through { get; init; } = [];

    /// <summary>Gets the ids of alleles that show through weakly, not enough to tell them by eye.</summary>
    public IReadOnlyList<string> Faintly { get; init; } = [];
}
