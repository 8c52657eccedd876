namespace Clutchwright.Pedigrees.Beliefs.Contradictions;

/// <summary>How surprising what is seen of an animal is, given everything else recorded.</summary>
/// <param name="Key">The animal.</param>
/// <param name="Log10Probability">The base-10 logarithm of the probability of its own looks, given all other records.</param>
/// <param name="Log10Factor">The base-10 logarithm of how many times likelier the looks would be had this one come to the wrong animal: large where the record seems to belong elsewhere.
/// The mean of two ways: its look is that of an animal drawn from the stock; it was exchanged with one of the hatchlings that it could be taken for.</param>
public sealed record Suspect(string Key, double Log10Probability, double Log10Factor);

/// <summary>All animals that were looked at, the most surprising first.</summary>
/// <param name="Animals">The animals, by falling <see cref="Suspect.Log10Factor"/>.</param>
/// <param name="LogLikelihood">The natural logarithm of the probability of all records, each of which may be wrong at the stated rate; NaN where a part
/// had to be sampled.</param>
/// <param name="IsExact">Whether no part had to be sampled.</param>
public sealed record Suspects(IReadOnlyList<Suspect> Animals, double LogLikelihood, bool IsExact)
{
    /// <summary>Ranks the animals.</summary>
    /// <param name="beliefs">The beliefs of the whole record.</param>
    /// <param name="rates">How often records are wrong.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <exception cref="ArgumentOutOfRangeException">A rate is out of range.</exception>
    /// <remarks>One reckoning with all records fallible; an animal's own looks are then taken out of its posterior. Source: docs/model/contradictions.md.</remarks>
    public static Suspects Of(PedigreeBeliefs beliefs, CauseRates rates, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(beliefs);
        ArgumentNullException.ThrowIfNull(rates);
        var model = new FallibleModel(beliefs.Species, beliefs.Animals, beliefs.Settings, rates, cancel);
        var reckoning = new FallibleReckoning(model, beliefs.Animals);
        return new(new SuspectRanking(model, reckoning).Rank(), reckoning.LogLikelihood, reckoning.IsExact);
    }
}
