using Clutchwright.Genetics.Loci;

namespace Clutchwright.Pedigrees.Beliefs;

/// <summary>What beliefs are reckoned with.</summary>
public sealed record BeliefSettings
{
    /// <summary>Gets the settings that hold where nothing else is said.</summary>
    public static BeliefSettings Default { get; } = new();

    /// <summary>Gets how common alleles are among founders, from 0 to 1, at each locus summing to 1 at most; an allele that is not listed is taken as
    /// absent until a record speaks of it.</summary>
    public IReadOnlyDictionary<Allele, double> Frequencies { get; init; } = new Dictionary<Allele, double>();

    /// <summary>Gets the chance, from 0 to 1/2, that the eye reads one locus wrongly, each wrong reading as likely as another. At 0 a record is taken as
    /// right unless it cannot be.</summary>
    public double Misreading { get; init; }

    /// <summary>Gets how many table entries may be held at once, 8 bytes each.</summary>
    public double TableBudget { get; init; } = 6e7;

    /// <summary>Gets how many table entries may be worked through for an exact answer; some hundred million take a second. Beyond that beliefs are sampled.</summary>
    public double WorkBudget { get; init; } = 2.5e8;

    /// <summary>Gets how many table entries one sweep of sampling may need.</summary>
    public double SweepBudget { get; init; } = 1e5;

    /// <summary>Gets how many sweeps sampling makes, at least 40.</summary>
    public int Sweeps { get; init; } = 1_200;

    /// <summary>Gets how much one explanation of a belief may take, in looks at an animal; records beyond that, those of the farthest kin, are heard in one step.
    /// The default takes some hundredth of a second.</summary>
    public double ExplanationBudget { get; init; } = 4e4;

    /// <summary>Gets the seed of sampling.</summary>
    public ulong Seed { get; init; } = 1;

    /// <summary>Gets the clock that sampling follows; <c>null</c>: none, so that the answer hangs on nothing but the record and these settings.</summary>
    /// <remarks>With a clock a reckoning that takes longer than <see cref="Patience"/> stops sampling with the sweeps it has, and its standard errors are those of so
    /// many. Answers that are exact, or that are ready in time, are the same with and without.</remarks>
    public TimeProvider? Clock { get; init; }

    /// <summary>Gets how long a reckoning may go on sampling by <see cref="Clock"/>, counted from its beginning. What has to be done before the first sweeps is not cut short.</summary>
    public TimeSpan Patience { get; init; } = TimeSpan.FromSeconds(7);

    /// <summary>Checks the settings.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A value lies outside its range.</exception>
    internal void Check()
    {
        if (Misreading is not (>= 0.0 and <= 0.5))
        {
            throw new ArgumentOutOfRangeException(nameof(Misreading), Misreading, "The chance of a misreading lies in [0, 1/2].");
        }

        foreach (var locus in Frequencies.GroupBy(f => f.Key.Locus))
        {
            if (locus.Any(f => f.Value is not (>= 0.0 and <= 1.0) || f.Key.Index == 0) || locus.Sum(f => f.Value) > 1.0 + 1e-12)
            {
                throw new ArgumentOutOfRangeException(
                    nameof(Frequencies), locus.Key.Id, "Frequencies of mutant alleles lie in [0, 1] and sum to 1 at most at a locus.");
            }
        }

        if (!(TableBudget >= 1.0) || !(WorkBudget >= 1.0) || !(SweepBudget >= 1.0) || !(ExplanationBudget >= 0.0) || Sweeps < 40)
        {
            throw new ArgumentOutOfRangeException(nameof(TableBudget), "Budgets are positive (that of an explanation may be 0), and there are at least 40 sweeps.");
        }

        if (Patience <= TimeSpan.Zero)
        {
            throw new ArgumentOutOfRangeException(nameof(Patience), Patience, "A reckoning takes some time.");
        }
    }
}
