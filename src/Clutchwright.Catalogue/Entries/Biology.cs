namespace Clutchwright.Catalogue.Entries;

/// <summary>The figures of a species' breeding. A property is <c>null</c> where the species folder does not state the figure.</summary>
public sealed class Biology
{
    private readonly IReadOnlyDictionary<string, Spread> _figures;

    internal Biology(IReadOnlyDictionary<string, Spread> figures) => _figures = figures;

    /// <summary>Gets all stated figures by their names in the folder.</summary>
    public IReadOnlyDictionary<string, Spread> Figures => _figures;

    /// <summary>Gets the eggs in a clutch.</summary>
    public Spread? Eggs => Find("eggs");

    /// <summary>Gets the chance that a paired, ready female lays at all in a season.</summary>
    public Spread? Laying => Find("laying");

    /// <summary>Gets the share of eggs laid that are fertile.</summary>
    public Spread? Fertility => Find("fertility");

    /// <summary>Gets the share of fertile eggs that hatch, genotype aside.</summary>
    public Spread? HatchRate => Find("hatch-rate");

    public Spread? MaleBreedingAgeMonths => Find("male-breeding-age-months");

    public Spread? FemaleBreedingAgeMonths => Find("female-breeding-age-months");

    /// <summary>The figure of a name, or <c>null</c>.</summary>
    public Spread? Find(string name) => _figures.GetValueOrDefault(name);
}
