using Clutchwright.Genetics.Loci;
using Clutchwright.Testing.Pedigrees;

namespace Clutchwright.Reference.Tests.Cases;

/// <summary>A family put together animal by animal, with what is seen of each.</summary>
internal sealed class FamilyBuilder(IReadOnlyList<LocusModel> loci)
{
    private readonly List<int?[]> _seen = [];

    /// <summary>Gets the animals so far.</summary>
    public SamplePedigree Family { get; } = new();

    /// <summary>Adds an animal without known parents.</summary>
    /// <param name="sex">Its sex.</param>
    /// <param name="looks">Its look at each locus; none: it was not looked at.</param>
    public int Founder(Sex sex, params int[] looks) => Add(sex, -1, -1, looks);

    /// <summary>Adds a hatchling.</summary>
    public int Young(Sex sex, int sire, int dam, params int[] looks) => Add(sex, sire, dam, looks);

    /// <summary>Ends the family.</summary>
    public GeneticCase Build(string name, bool isSexLinked = false) => new(
        name, Family, loci, isSexLinked, 0.5, [.. loci.Select((_, l) => (IReadOnlyList<int?>)_seen.Select(s => s[l]).ToArray())]);

    private int Add(Sex sex, int sire, int dam, int[] looks)
    {
        _seen.Add([.. loci.Select((_, l) => looks.Length == 0 ? (int?)null : looks[l])]);
        return Family.Add(sex, sire, dam);
    }
}
