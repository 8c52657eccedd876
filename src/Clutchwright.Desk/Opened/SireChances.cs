using Clutchwright.Genetics.Numbers;
using Clutchwright.Stock.Animals;

namespace Clutchwright.Desk.Opened;

/// <summary>The chances of possible sires that a pedigree file gives; the keeper's book holds none.</summary>
internal sealed class SireChances
{
    private readonly IReadOnlyDictionary<AnimalId, IReadOnlyDictionary<AnimalId, Fraction>> _chances;

    private SireChances(IReadOnlyDictionary<AnimalId, IReadOnlyDictionary<AnimalId, Fraction>> chances) => _chances = chances;

    /// <summary>Gets that nothing is said.</summary>
    public static SireChances None { get; } = new(new Dictionary<AnimalId, IReadOnlyDictionary<AnimalId, Fraction>>());

    /// <summary>Gets of how many animals something is said.</summary>
    public int Count => _chances.Count;

    public static SireChances Of(IReadOnlyDictionary<AnimalId, IReadOnlyDictionary<AnimalId, Fraction>> chances) => chances.Count == 0 ? None : new(chances);

    /// <summary>The chances of some possible sires of an animal, in their order; empty where each is as likely as another.</summary>
    public IReadOnlyList<Probability> Of(AnimalId animal, IReadOnlyList<AnimalId> sires) =>
        _chances.GetValueOrDefault(animal) is { } known && sires.All(known.ContainsKey) ? [.. sires.Select(s => Probability.From(known[s]))] : [];
}
