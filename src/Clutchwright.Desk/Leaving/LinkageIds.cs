using System.Globalization;
using Clutchwright.Genetics.Loci;
using Clutchwright.Stock.Animals;

namespace Clutchwright.Desk.Leaving;

/// <summary>Ids and parents as linkage format has them: an id is one word, and an animal has both parents or none. Where one is known, somebody
/// stands for the other.</summary>
internal sealed class LinkageIds
{
    private const char Filler = '_';

    private readonly Dictionary<AnimalId, string> _ids = [];
    private readonly Dictionary<AnimalId, (string Father, string Mother)> _parents = [];
    private readonly Dictionary<AnimalId, Sex> _parentSex = [];
    private readonly List<(string Id, Sex Sex)> _placeholders = [];

    public LinkageIds(IReadOnlyList<Animal> animals)
    {
        // "0" stands for nobody.
        var taken = new HashSet<string>(StringComparer.OrdinalIgnoreCase) { "0" };
        foreach (var animal in animals)
        {
            _ids.Add(animal.AnimalId, Free(taken, string.Concat(animal.Tag.Select(c => char.IsWhiteSpace(c) || c == '#' ? Filler : c))));
        }

        foreach (var animal in animals)
        {
            var father = animal.SireId is { } sire ? Known(sire, Sex.Male) : null;
            var mother = animal.DamId is { } dam ? Known(dam, Sex.Female) : null;
            if (father is not null || mother is not null)
            {
                father ??= Stand(taken, $"sire_of_{_ids[animal.AnimalId]}", Sex.Male);
                mother ??= Stand(taken, $"dam_of_{_ids[animal.AnimalId]}", Sex.Female);
            }

            _parents.Add(animal.AnimalId, (father ?? "0", mother ?? "0"));
        }
    }

    /// <summary>Gets those who stand for a parent that is not known.</summary>
    public IReadOnlyList<(string Id, Sex Sex)> Placeholders => _placeholders;

    public string Of(Animal animal) => _ids[animal.AnimalId];

    public string Of(AnimalId animal) => _ids.GetValueOrDefault(animal) ?? "0";

    public (string Father, string Mother) ParentsOf(Animal animal) => _parents[animal.AnimalId];

    /// <summary>The sex; of an unsexed parent the one it is named for.</summary>
    public Sex? SexOf(Animal animal) => animal.Sex ?? (_parentSex.TryGetValue(animal.AnimalId, out var sex) ? sex : null);

    private string? Known(AnimalId parent, Sex sex)
    {
        _parentSex[parent] = sex;
        return _ids.GetValueOrDefault(parent);
    }

    private string Stand(HashSet<string> taken, string name, Sex sex)
    {
        var id = Free(taken, name);
        _placeholders.Add((id, sex));
        return id;
    }

    private static string Free(HashSet<string> taken, string wanted)
    {
        var id = wanted;
        for (var number = 2; !taken.Add(id); number++)
        {
            id = string.Create(CultureInfo.InvariantCulture, $"{wanted}{Filler}{number}");
        }

        return id;
    }
}
