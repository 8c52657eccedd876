using Clutchwright.Desk.Opened;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Pedigrees;
using Clutchwright.Pedigrees.Kinship;
using Clutchwright.Stock.Animals;

namespace Clutchwright.Desk.Kin;

/// <summary>The kinship of the animals of a stock.</summary>
internal sealed class KinStock
{
    /// <summary>The most animals of a group whose mean kinship is worked out pair by pair.</summary>
    private const int MostInMatrix = 5000;

    private readonly IReadOnlyList<Animal> _animals;
    private readonly Dictionary<AnimalId, int> _indexOf = [];
    private readonly Dictionary<string, int> _indexOfTag = new(StringComparer.OrdinalIgnoreCase);
    private readonly Dictionary<string, string> _clutches;
    private readonly int[] _positions;
    private readonly int[] _indexes;
    private readonly Lazy<ExactKinship?> _exact;

    /// <param name="animals">The animals.</param>
    /// <param name="sireWeights">The chances of possible sires, where they are given.</param>
    /// <param name="founders">How related founders are; null: not at all.</param>
    /// <exception cref="ImpossibleKinshipException">No founders can be so related.</exception>
    public KinStock(IReadOnlyList<Animal> animals, SireChances? sireWeights = null, FounderKinshipFile? founders = null)
    {
        _animals = animals;
        for (var i = 0; i < animals.Count; i++)
        {
            _indexOf.Add(animals[i].AnimalId, i);
            _indexOfTag.TryAdd(animals[i].Tag.Trim(), i);
        }

        Pedigree = Pedigree.Of(animals.Select(a => new PedigreeAnimal(
            Key(a.AnimalId), Known(a.SireId), Known(a.DamId), [.. a.PossibleSireIds.Where(_indexOf.ContainsKey).Select(Key)])));
        _positions = [.. animals.Select(a => Pedigree.PositionOf(Key(a.AnimalId)))];
        _indexes = new int[animals.Count];
        for (var i = 0; i < _positions.Length; i++)
        {
            _indexes[_positions[i]] = i;
        }

        _clutches = Clutches();
        Settings = new KinshipSettings
        {
            Clutches = _clutches,
            SireWeights = Weights(sireWeights ?? SireChances.None),
            FounderInbreeding = founders?.Inbreeding.ToDictionary(f => Key(animals[f.Key].AnimalId), f => f.Value) ?? [],
            FounderKinships = [.. founders?.Kinships.Select(k => new FounderKinship(Key(animals[k.First].AnimalId), Key(animals[k.Second].AnimalId), k.Kinship)) ?? []],
        };
        Reckoner = KinshipReckoner.Of(Descent.Of(Pedigree, Settings));
        _exact = new(() => ExactKinship.Of(Reckoner.Descent, _positions));

        string? Known(AnimalId? id) => id is { } known && _indexOf.ContainsKey(known) ? Key(known) : null;
    }

    public Pedigree Pedigree { get; }

    /// <summary>What is known beyond the pedigree.</summary>
    public KinshipSettings Settings { get; }

    public KinshipReckoner Reckoner { get; }

    /// <summary>The kinships as fractions; null where the stock is too large.</summary>
    public ExactKinship? Exact => _exact.Value;

    /// <summary>The kinships of some animals, by their positions, as fractions; null where they have too many ancestors.</summary>
    public ExactKinship? ExactOf(IReadOnlyList<int> positions) => ExactKinship.Of(Reckoner.Descent, positions);

    /// <summary>The indexes of the animals in the keeper's room.</summary>
    public IEnumerable<int> Here => Enumerable.Range(0, _animals.Count).Where(i => _animals[i].Status.IsHere());

    public int? Find(string tag) => _indexOfTag.TryGetValue(tag.Trim(), out var index) ? index : null;

    public IEnumerable<string> Tags => _animals.Select(a => a.Tag);

    public Animal this[int index] => _animals[index];

    public int Count => _animals.Count;

    public int IndexOf(AnimalId id) => _indexOf[id];

    public int PositionOf(int index) => _positions[index];

    /// <summary>The animal at a position of the pedigree.</summary>
    public KinAnimal At(int position) => Animal(_indexes[position]);

    public KinAnimal Animal(int index) => new(_animals[index].Tag, _animals[index].Name, _animals[index].Sex, _animals[index].Status.IsHere());

    public KinLine Line(int index)
    {
        var animal = _animals[index];
        return new(
            Animal(index),
            Reckoner.Inbreeding[_positions[index]],
            Exact?.InbreedingOf(_positions[index]),
            animal.SireId is { } sire ? [TagOf(sire)] : [.. animal.PossibleSireIds.Select(TagOf)],
            animal.DamId is { } dam ? TagOf(dam) : null);
    }

    /// <summary>What the second is to the first, in a word or two; null where there is no short word.</summary>
    public string? Relation(int first, int second)
    {
        var (one, other) = (_animals[first], _animals[second]);
        if (first != second && one.PossibleSireIds.Count > 0 && one.PossibleSireIds.SequenceEqual(other.PossibleSireIds) && one.DamId == other.DamId)
        {
            var isClutch = _clutches.TryGetValue(Key(one.AnimalId), out var clutch) && clutch == _clutches.GetValueOrDefault(Key(other.AnimalId));
            return RelationWords.Sibling(isClutch, other.Sex);
        }

        return RelationWords.Of(Pedigree, _positions[first], _positions[second], other.Sex);
    }

    public KinDescent Routes(int first, int second, int most)
    {
        var found = DescentRoutes.Between(Reckoner, first, second, most);
        return new(
            [.. found.Routes.Select(route => new KinRoute(
                Path(route), TagAt(route.Ancestor), route.AncestorInbreeding, route.Chance, route.Contribution, route.FoundersKinship))],
            found.Count == ulong.MaxValue ? found.Count : found.Count - (ulong)found.Routes.Count,
            Math.Max(0.0, found.Count == (ulong)found.Routes.Count && found.IsComplete ? 0.0 : found.Kinship - found.Routes.Sum(r => r.Contribution)),
            [.. found.Ancestors.Select(a => new KinAncestor(At(a.Ancestor), a.Contribution, a.Routes))],
            found.IsComplete);

        IReadOnlyList<string> Path(DescentRoute route) => [.. route.First.Select(TagAt), .. route.Second.Reverse().Skip(route.FoundersKinship is null ? 1 : 0).Select(TagAt)];

        string TagAt(int position) => _animals[_indexes[position]].Tag;
    }

    public FoundersAnswer Founders()
    {
        int[] group = [.. Here.Select(PositionOf)];
        var shares = FounderContributions.Of(Reckoner.Descent, group);
        var (ancestors, effective) = shares.MajorAncestors();
        return new(
            group.Length,
            [.. shares.Founders.Select(Share)],
            shares.UnknownShare,
            shares.EffectiveFounders,
            [.. ancestors.Select(Share)],
            effective,
            group.Length is > 0 and <= MostInMatrix ? Reckoner.Matrix(group).Mean : null);

        KinShare Share(AncestorShare share) => new(At(share.Animal), share.Share);
    }

    /// <summary>Kinship at a locus on the sex chromosomes.</summary>
    public SexLinkedKinship SexLinked(SexSystem system, RecombinationFraction recombination)
    {
        var sexes = new Sex?[_animals.Count];
        for (var i = 0; i < sexes.Length; i++)
        {
            sexes[_positions[i]] = _animals[i].Sex;
        }

        return SexLinkedKinship.Of(Pedigree, sexes, system, recombination, Settings);
    }

    private Dictionary<string, IReadOnlyList<Probability>> Weights(SireChances given) => _animals
        .Select(a => (Key: Key(a.AnimalId), Weights: given.Of(a.AnimalId, [.. a.PossibleSireIds.Where(_indexOf.ContainsKey)])))
        .Where(a => a.Weights.Count > 0)
        .ToDictionary(a => a.Key, a => a.Weights, StringComparer.Ordinal);

    public static string Key(AnimalId id) => id.Value.ToString("N");

    private string TagOf(AnimalId id) => _indexOf.TryGetValue(id, out var index) ? _animals[index].Tag : id.ToString();

    /// <summary>Hatchlings of one dam and one date with the same possible sires are one clutch, and have one sire, whoever he is: a female
    /// lays once a year.</summary>
    private Dictionary<string, string> Clutches() => _animals
        .Where(a => a.PossibleSireIds.Count > 0 && a.DamId is not null && a.ClutchDate() is not null)
        .ToDictionary(a => Key(a.AnimalId), a => $"{Key(a.DamId!.Value)} {a.ClutchDate()}", StringComparer.Ordinal);
}
