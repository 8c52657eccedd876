using Clutchwright.Genetics.Loci;

namespace Clutchwright.Pedigrees.Beliefs;

/// <summary>What one reckoning leaves to the next: group models and solved parts, by content.</summary>
internal sealed class BeliefCache(Species species, BeliefSettings settings, BeliefCache? before)
{
    private BeliefCache? _before = before is not null && before.Fits(species, settings) ? before : null;
    private readonly Dictionary<string, GroupModel> _models = new(StringComparer.Ordinal);
    private readonly Dictionary<UInt128, PartSolution> _parts = [];
    private readonly WorkClock _clock = new(settings);

    /// <summary>The model of a group for some alleles.</summary>
    public GroupModel Model(LinkageGroup group, IReadOnlyList<int[]> alleles)
    {
        var key = $"{group.Index}:{string.Join(';', alleles.Select(a => string.Join(',', a)))}";
        if (!_models.TryGetValue(key, out var model))
        {
            model = _before is not null && _before._models.TryGetValue(key, out var old)
                ? old
                : new GroupModel(species, group, alleles, settings);
            _models.Add(key, model);
        }

        return model;
    }

    /// <summary>The solution of a part.</summary>
    public PartSolution Solve(NetworkPart part, CancellationToken cancel)
    {
        var digest = part.Digest();
        if (!_parts.TryGetValue(digest, out var solution))
        {
            solution = _before is not null && _before._parts.TryGetValue(digest, out var old)
                ? old
                : PartSolution.Of(part, settings, cancel, _clock);
            _parts.Add(digest, solution);
        }

        return solution;
    }

    /// <summary>The same, to be read by the next reckoning, without what came before.</summary>
    public BeliefCache Alone()
    {
        _before = null;
        return this;
    }

    private bool Fits(Species otherSpecies, BeliefSettings otherSettings) => species == otherSpecies && settings == otherSettings;
}
