using Clutchwright.Genetics.Loci;
using Clutchwright.Pedigrees;

namespace Clutchwright.Stock.Animals;

/// <summary>The rules that hold between animals: tags are unique, parents exist, are of the right sex and older, and nobody is
/// their own ancestor. The deeds, the import and undo all ask here.</summary>
internal sealed class AnimalRules
{
    private readonly IReadOnlyDictionary<AnimalId, AnimalFacts> _all;
    private readonly ILookup<string, AnimalFacts> _byTag;
    private readonly ILookup<AnimalId, AnimalFacts> _bySire;
    private readonly ILookup<AnimalId, AnimalFacts> _byDam;

    /// <param name="all">Every animal out of the bin, the ones to be checked in the state wanted for them.</param>
    public AnimalRules(IReadOnlyDictionary<AnimalId, AnimalFacts> all)
    {
        _all = all;
        _byTag = all.Values.ToLookup(animal => Tags.Key(animal.Tag), StringComparer.Ordinal);
        _bySire = all.Values.SelectMany(animal => SiresOf(animal).Select(sire => (sire, animal))).ToLookup(p => p.sire, p => p.animal);
        _byDam = all.Values.Where(animal => animal.Dam is not null).ToLookup(animal => animal.Dam!.Value);
    }

    /// <summary>What is wrong with these animals, in their order.</summary>
    public IEnumerable<(AnimalId Animal, FieldProblem Problem)> WhyNot(IReadOnlyCollection<AnimalId> checkedIds)
    {
        var inLoop = Loop(checkedIds);
        foreach (var id in checkedIds)
        {
            var animal = _all[id];
            foreach (var problem in WhyNot(animal))
            {
                yield return (id, problem);
            }

            if (inLoop.Contains(animal.Id))
            {
                yield return (id, new(ParentInLoop(animal, inLoop), new AnimalProblem.OwnAncestor(From(animal.Id, inLoop))));
            }
        }
    }

    private static IEnumerable<AnimalId> SiresOf(AnimalFacts animal) =>
        animal.Sire is { } sire ? [sire] : animal.PossibleSires;

    private static bool CanBeParent(DateRange? parent, DateRange? offspring) =>
        parent is null || offspring is null || parent.Earliest < offspring.Latest;

    private IEnumerable<FieldProblem> WhyNot(AnimalFacts animal)
    {
        if (_byTag[Tags.Key(animal.Tag)].Any(other => other.Id != animal.Id))
        {
            yield return new(AnimalField.Tag, new AnimalProblem.TagTaken(animal.Tag));
        }

        foreach (var sire in SiresOf(animal))
        {
            foreach (var problem in WhyNotParent(animal, sire, Sex.Male))
            {
                yield return new(AnimalField.Sire, problem);
            }
        }

        if (animal.Dam is { } dam)
        {
            foreach (var problem in WhyNotParent(animal, dam, Sex.Female))
            {
                yield return new(AnimalField.Dam, problem);
            }
        }

        foreach (var problem in WhyNotOffspring(animal))
        {
            yield return problem;
        }
    }

    private IEnumerable<Problem> WhyNotParent(AnimalFacts animal, AnimalId parentId, Sex role)
    {
        if (!_all.TryGetValue(parentId, out var parent))
        {
            yield return new AnimalProblem.ParentNotFound(parentId);
            yield break;
        }

        if (parent.Sex is { } sex && sex != role)
        {
            yield return new AnimalProblem.ParentOfWrongSex(parent.Tag, sex);
        }

        if (parent.Sex is null && _bySire.Contains(parentId) && _byDam.Contains(parentId))
        {
            yield return new AnimalProblem.BothSireAndDam(parent.Tag);
        }

        if (parentId != animal.Id && !CanBeParent(parent.Hatched, animal.Hatched))
        {
            yield return new AnimalProblem.ParentNotOlder(parent.Tag, parent.Hatched!, animal.Tag, animal.Hatched!);
        }
    }

    /// <summary>A change of an animal can also make it wrong as the parent that it already is.</summary>
    private IEnumerable<FieldProblem> WhyNotOffspring(AnimalFacts animal)
    {
        var wrong = animal.Sex switch
        {
            Sex.Female => _bySire[animal.Id].FirstOrDefault(),
            Sex.Male => _byDam[animal.Id].FirstOrDefault(),
            _ => null,
        };
        if (wrong is not null && wrong.Id != animal.Id)
        {
            yield return new(AnimalField.Sex, new AnimalProblem.SexContradictsOffspring(animal.Sex!.Value, wrong.Tag));
        }

        var tooOld = _bySire[animal.Id].Concat(_byDam[animal.Id])
            .FirstOrDefault(offspring => offspring.Id != animal.Id && !CanBeParent(animal.Hatched, offspring.Hatched));
        if (tooOld is not null)
        {
            yield return new(AnimalField.Hatched, new AnimalProblem.ParentNotOlder(animal.Tag, animal.Hatched!, tooOld.Tag, tooOld.Hatched!));
        }
    }

    private List<AnimalId> Loop(IReadOnlyCollection<AnimalId> checkedIds)
    {
        // Starting from the checked animals finds a loop through them before any other.
        var ordered = checkedIds.Select(id => _all[id]).Concat(_all.Values);
        return Pedigree
            .FindLoop(ordered.Select(animal => new PedigreeAnimal(
                animal.Id.ToString(),
                animal.Sire?.ToString(),
                animal.Dam?.ToString(),
                animal.Sire is null ? [.. animal.PossibleSires.Select(sire => sire.ToString())] : null)))
            .Select(key => new AnimalId(Guid.Parse(key)))
            .ToList();
    }

    private List<string> From(AnimalId first, List<AnimalId> loop)
    {
        var start = loop.IndexOf(first);
        return [.. loop.Skip(start).Concat(loop.Take(start)).Select(id => _all[id].Tag)];
    }

    private static AnimalField ParentInLoop(AnimalFacts animal, List<AnimalId> loop) =>
        animal.Dam == loop[(loop.IndexOf(animal.Id) + 1) % loop.Count] ? AnimalField.Dam : AnimalField.Sire;
}
