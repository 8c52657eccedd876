namespace Clutchwright.Pedigrees.Charts;

/// <summary>A pedigree as the chart reads it: young of each animal, and an order that does not depend on how it was listed.</summary>
internal sealed class ChartKin
{
    private readonly List<int>[] _young;
    private readonly int[] _rank;

    public ChartKin(Pedigree pedigree, IReadOnlyDictionary<string, ChartAnimal> animals)
    {
        Pedigree = pedigree;
        Animals = [.. pedigree.Animals.Select(a => animals.GetValueOrDefault(a.Key) ?? new ChartAnimal(a.Key, Sex: null))];
        Sires = [.. Enumerable.Range(0, pedigree.Count).Select(SiresOf)];
        _rank = new int[pedigree.Count];
        var byAge = Enumerable.Range(0, pedigree.Count)
            .OrderBy(a => Animals[a].Hatched ?? DateOnly.MaxValue)
            .ThenBy(a => Animals[a].Key, StringComparer.Ordinal)
            .ToArray();
        for (var i = 0; i < byAge.Length; i++)
        {
            _rank[byAge[i]] = i;
        }

        _young = [.. Enumerable.Range(0, pedigree.Count).Select(_ => new List<int>())];
        foreach (var animal in byAge)
        {
            foreach (var parent in ParentsOf(animal))
            {
                _young[parent].Add(animal);
            }
        }
    }

    public Pedigree Pedigree { get; }

    public int Count => Animals.Length;

    public ChartAnimal[] Animals { get; }

    /// <summary>The certain sire, or the possible ones; in the order of ranks.</summary>
    public int[][] Sires { get; }

    /// <summary>The place in the order of hatching, then of keys.</summary>
    public int RankOf(int animal) => _rank[animal];

    /// <summary>The young, certain or possible, in the order of ranks.</summary>
    public IReadOnlyList<int> YoungOf(int animal) => _young[animal];

    /// <summary>Every parent named, possible sires included.</summary>
    public IEnumerable<int> ParentsOf(int animal)
    {
        foreach (var sire in Sires[animal])
        {
            yield return sire;
        }

        if (Pedigree.DamOf(animal) is not Pedigree.NotKnown and var dam)
        {
            yield return dam;
        }
    }

    /// <summary>Whether two animals have an ancestor in common, themselves and possible ancestors included: their kinship may be above 0.</summary>
    public bool AreKin(int first, int second)
    {
        var hers = Ancestors(second);
        return Ancestors(first).Overlaps(hers);
    }

    private HashSet<int> Ancestors(int animal)
    {
        var found = new HashSet<int> { animal };
        var open = new Stack<int>(found);
        while (open.TryPop(out var next))
        {
            foreach (var parent in ParentsOf(next))
            {
                if (found.Add(parent))
                {
                    open.Push(parent);
                }
            }
        }

        return found;
    }

    private int[] SiresOf(int animal) => Pedigree.SireOf(animal) is not Pedigree.NotKnown and var sire
        ? [sire]
        : [.. Pedigree.PossibleSiresOf(animal).Distinct().OrderBy(s => Pedigree.Animals[s].Key, StringComparer.Ordinal)];
}
