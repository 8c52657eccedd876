using Clutchwright.Genetics.Dangers;
using Clutchwright.Genetics.Loci;

namespace Clutchwright.Pedigrees.Beliefs;

/// <summary>All that depends only on the species, on the settings and on which alleles are in play at one linkage group.</summary>
internal sealed class GroupModel
{
    private readonly double[] _ofFemales;
    private readonly double[] _ofMales;
    private readonly double[] _ofUnsexed;

    /// <summary>Counts the states and reads the rates.</summary>
    public GroupModel(Species species, LinkageGroup group, IReadOnlyList<int[]> alleles, BeliefSettings settings)
    {
        Space = new StateSpace(species, group, alleles);
        Weights = new RecordWeights(species, Space, settings.Misreading);
        Danger[] dangers = [.. species.Dangers.Where(d => !d.Viability.ToHatchling.IsCertain && d.Groups is [var only] && only == group)];
        _ofFemales = SurvivalIn(dangers, Sex.Female);
        _ofMales = SurvivalIn(dangers, Sex.Male);
        _ofUnsexed = [.. _ofFemales.Select((f, s) => Space.Sexes[s] is { } sex ? SurvivalOf(sex)[s] : 0.5 * (f + _ofMales[s]))];
        Prior = new FounderPrior(species, this, settings);
        IsSurvivalEven = Array.TrueForAll(_ofFemales, v => v == 1.0) && Array.TrueForAll(_ofMales, v => v == 1.0);
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

    /// <summary>Gets whether every state lives alike.</summary>
    public bool IsSurvivalEven { get; }

    /// <summary>Gets whether everything here is a ratio known exactly.</summary>
    public bool IsExact { get; }

    /// <summary>The chance, by state, to live to hatch.</summary>
    /// <param name="sex">The animal's sex; <c>null</c>: not known, then the mean of both where the group does not tell it.</param>
    public double[] SurvivalOf(Sex? sex) => sex switch
    {
        null => _ofUnsexed,
        Sex.Female => _ofFemales,
        _ => _ofMales,
    };

    /// <summary>Whether words leave it open whether the animal carries anything here.</summary>
    public bool IsChance(Observation.Said said) => said.Reading[Space.Group].Any(w => w.Value.IsWild) && Weights.Speaks(said);

    private double[] SurvivalIn(Danger[] dangers, Sex sex)
    {
        var survival = new double[Space.Count];
        Array.Fill(survival, 1.0);
        for (var s = 0; s < survival.Length; s++)
        {
            foreach (var danger in dangers)
            {
                if ((danger.Sex ?? sex) == sex && danger.IsMetAt(Space.Group, Space.Diplotypes[s]))
                {
                    survival[s] *= danger.Viability.ToHatchling.Value;
                }
            }
        }

        return survival;
    }
}
