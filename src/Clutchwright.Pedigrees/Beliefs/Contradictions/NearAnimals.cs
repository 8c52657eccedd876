using Clutchwright.Genetics.Loci;

namespace Clutchwright.Pedigrees.Beliefs.Contradictions;

/// <summary>Of a large book the animals nearest to a clash, so that a story of it can be told again and again.</summary>
internal static class NearAnimals
{
    private const int Kept = 200;

    /// <summary>The animals reached first from the clash over parents and young, and the males with the most young; a parent left out counts as unknown.</summary>
    /// <param name="animals">All.</param>
    /// <param name="keys">The animals of the clash.</param>
    /// <param name="sires">How many males are taken in any case.</param>
    public static IReadOnlyList<RecordedAnimal> Of(IReadOnlyList<RecordedAnimal> animals, IReadOnlyList<string> keys, int sires)
    {
        if (animals.Count <= ClashCauses.WholeBook)
        {
            return animals;
        }

        var byKey = animals.ToDictionary(a => a.Key, StringComparer.Ordinal);
        var young = animals.SelectMany(a => ParentsOf(a), (a, parent) => (Parent: parent, a.Key)).ToLookup(p => p.Parent, p => p.Key, StringComparer.Ordinal);
        var near = new HashSet<string>(keys, StringComparer.Ordinal);
        var open = new Queue<string>(keys);
        while (near.Count < Kept && open.TryDequeue(out var key))
        {
            // Parents first: what an animal can be follows from them.
            foreach (var next in ParentsOf(byKey[key]).Concat(young[key]))
            {
                if (near.Count < Kept && byKey.ContainsKey(next) && near.Add(next))
                {
                    open.Enqueue(next);
                }
            }
        }

        near.UnionWith(animals
            .Where(a => a.Sex == Sex.Male && young.Contains(a.Key))
            .OrderByDescending(a => young[a.Key].Count())
            .ThenBy(a => a.Key, StringComparer.Ordinal)
            .Take(sires)
            .Select(a => a.Key));
        return [.. animals.Where(a => near.Contains(a.Key)).Select(a => Within(a, near))];
    }

    private static IEnumerable<string> ParentsOf(RecordedAnimal animal) => animal.PossibleSires.Append(animal.Sire).Append(animal.Dam).OfType<string>();

    // With one of several possible sires left out, who it is counts as unknown.
    private static RecordedAnimal Within(RecordedAnimal animal, HashSet<string> near)
    {
        var sires = animal.PossibleSires.All(near.Contains);
        return animal with
        {
            Sire = animal.Sire is { } sire && near.Contains(sire) ? sire : null,
            Dam = animal.Dam is { } dam && near.Contains(dam) ? dam : null,
            PossibleSires = sires ? animal.PossibleSires : [],
            SireWeights = sires ? animal.SireWeights : [],
        };
    }
}
