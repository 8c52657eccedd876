namespace Clutchwright.Pedigrees.Beliefs.Contradictions;

/// <summary>How often records are wrong, before any record is read.</summary>
/// <remarks>All are judgements of common practice, no source: docs/model/contradictions.md says for each why it is so large. What matters for the order of
/// causes is how they compare.</remarks>
public sealed record CauseRates
{
    /// <summary>Gets the rates that hold where nothing else is said.</summary>
    public static CauseRates Default { get; } = new();

    /// <summary>Gets the chance that the eye reads one locus wrongly, above 0 to 1/2.</summary>
    public double Misreading { get; init; } = 0.005;

    /// <summary>Gets the chance that what a seller or breeder said is worth nothing, above 0 to 1/2.</summary>
    public double WrongWords { get; init; } = 0.02;

    /// <summary>Gets the chance that a clutch has another sire than the one recorded, above 0 to 1/2.</summary>
    public double OtherSire { get; init; } = 0.01;

    /// <summary>Gets the chance that a clutch is of sperm kept from an earlier pairing, above 0 to 1/2.</summary>
    public double StoredSperm { get; init; } = 0.005;

    /// <summary>Gets the chance that a clutch is of the dam alone, above 0 to 1/2.</summary>
    public double Parthenogenesis { get; init; } = 0.001;

    /// <summary>Gets the chance that a hatchling was taken for another or came from elsewhere, above 0 to 1/2.</summary>
    public double Swapped { get; init; } = 0.004;

    /// <summary>Gets how common an allele without a frequency of its own is among animals from outside, above 0 to 0.3.</summary>
    public double AlleleFrequency { get; init; } = 0.05;

    /// <summary>Gets the chance that a young of the dam alone keeps both her alleles where she has two different ones, from 0 to 1.</summary>
    public double RetainedHeterozygosity { get; init; } = 0.05;

    /// <summary>Gets how many days may lie between the hatching of two that are taken for each other.</summary>
    public int SwapDays { get; init; } = 45;

    /// <summary>Gets how many days a sire is older than his young at least.</summary>
    public int LeastSireDays { get; init; } = 270;

    internal void Check()
    {
        foreach (var (name, rate) in new[]
        {
            (nameof(Misreading), Misreading), (nameof(WrongWords), WrongWords), (nameof(OtherSire), OtherSire), (nameof(StoredSperm), StoredSperm),
            (nameof(Parthenogenesis), Parthenogenesis), (nameof(Swapped), Swapped),
        })
        {
            if (rate is not (> 0.0 and <= 0.5))
            {
                throw new ArgumentOutOfRangeException(name, rate, "A rate lies above 0 and is 1/2 at most.");
            }
        }

        if (AlleleFrequency is not (> 0.0 and <= 0.3) || RetainedHeterozygosity is not (>= 0.0 and <= 1.0))
        {
            throw new ArgumentOutOfRangeException(nameof(AlleleFrequency), AlleleFrequency, "A frequency lies in (0, 0.3], a share in [0, 1].");
        }
    }
}
