using Clutchwright.Genetics.Loci;

namespace Clutchwright.Pedigrees.Beliefs;

/// <summary>All that depends only on the species, on the settings and on which alleles are in play at one linkage group.</summary>
internal sealed class GroupModel
{
    /// <summary>Counts the states and reads the rates.</summary>
    public GroupModel(Species species, LinkageGroup group, IReadOnlyList<int[]> alleles, BeliefSettings settings)
    {
        Space = new StateSpace(species, group, alleles);
        Weights = new RecordWeights(species, Space, settings.Misreading);
        Prior = new FounderPrior(species, Space, Weights, settings);
        Survival = [.. Enumerable.Repeat(1.0, Space.Count)];
        foreach (var danger in species.Dangers.Where(d => !d.Viability.ToHatchling.IsCertain && d.Groups is [var only] && only == group))
        {
            for (var s = 0; s < Space.Count; s++)
            {
                if (danger.IsMetAt(group, Space.Diplotypes[s]))
                {
                    Survival[s] *= danger.Sex is null || danger.Sex == Space.Sexes[s] ? danger.Viability.ToHatchling.Value
                        : Space.Sexes[s] is null ? 0.5 * (1.0 + danger.Viability.ToHatchling.Value) : 1.0;
                }
            }
        }

        IsSurvivalEven = Array.TrueForAll(Survival, v => v == 1.0);
        IsExact = Space.IsExact
            && !Prior.HasFrequencies
            && settings.Misreading == 0.0
            && species.Dangers.All(d => d.Viability.ToHatchling.Exact is not null)
            && group.Loci.All(l => alleles[l.IndexInGroup].All(a => alleles[l.IndexInGroup].All(b => l.ExpressionsOf(a, b).All(e => e.Weight.Exact is not null))));
    }

    /// <summary>Gets the states.</summary>
    public StateSpace Space { get; }

    /// <summary>Gets how records weigh.</summary>
    public RecordWeights Weights { get; }

    /// <summary>Gets how founders start.</summary>
    public FounderPrior Prior { get; }

    /// <summary>Gets the chance, by state, to live to hatch.</summary>
    public double[] Survival { get; }

    /// <summary>Gets whether every state lives alike.</summary>
    public bool IsSurvivalEven { get; }

    /// <summary>Gets whether everything here is a ratio known exactly.</summary>
    public bool IsExact { get; }

    /// <summary>Whether words leave it open whether the animal carries anything here.</summary>
    public bool IsChance(Observation.Said said) => said.Reading[Space.Group].Any(w => w.Value.IsWild) && Weights.Speaks(said);
}
