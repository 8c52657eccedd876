using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Pedigrees.Beliefs.Explanations;

/// <summary>Where a belief comes from: the chance before any record, then records one after the other with their Bayes factors.</summary>
/// <param name="Key">The animal.</param>
/// <param name="Claim">What is believed or not of it.</param>
/// <param name="BeforeStart">The chance of an animal of which nothing is recorded, where the animal starts with a record of its own; otherwise <c>null</c>.</param>
/// <param name="Start">The record the animal starts with; <c>null</c>: it starts from its parents, or from how common the allele is.</param>
/// <param name="ParentStarts">The records that its ancestors start with.</param>
/// <param name="Prior">The chance by these starts alone.</param>
/// <param name="PriorOdds">The same as odds, from 0 to infinity.</param>
/// <param name="Steps">The steps that change something: own records first, then those of ever farther kin.</param>
/// <param name="Silent">Records of the animal and of kin that may carry something here, which change nothing and on which nothing rests.</param>
/// <param name="NotCounted">Possible hets told of the animal that were not counted, because its kin's records already say what can be known.</param>
/// <param name="Chance">The chance by all records.</param>
/// <param name="Odds">The same as odds: <paramref name="PriorOdds"/> times the product of the factors.</param>
/// <param name="HasAllelesLetIn">Whether founders may carry here what nobody spoke of, since the records could not be true otherwise.</param>
public sealed record BeliefExplanation(
    string Key,
    GenotypeClaim Claim,
    Probability? BeforeStart,
    RecordPlace? Start,
    IReadOnlyList<RecordPlace> ParentStarts,
    Probability Prior,
    double PriorOdds,
    IReadOnlyList<ExplanationStep> Steps,
    IReadOnlyList<RecordPlace> Silent,
    IReadOnlyList<RecordPlace> NotCounted,
    Probability Chance,
    double Odds,
    bool HasAllelesLetIn)
{
    /// <summary>Explains a belief.</summary>
    /// <param name="beliefs">The beliefs of the whole record.</param>
    /// <param name="key">The animal.</param>
    /// <param name="claim">What is believed or not of it.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <exception cref="ArgumentException">There is no such animal.</exception>
    /// <remarks>All steps are reckoned in one model: which labels are starts, which records may be wrong and what founders may carry stays as the
    /// whole record made it. Cost: two reckonings of the part concerned for each step. Source: docs/model/explanations.md.</remarks>
    public static BeliefExplanation Of(PedigreeBeliefs beliefs, string key, GenotypeClaim claim, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(beliefs);
        ArgumentNullException.ThrowIfNull(claim);
        return new BeliefExplainer(beliefs, key, claim, cancel).Explain();
    }
}
