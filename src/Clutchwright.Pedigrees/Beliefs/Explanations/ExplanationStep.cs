using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Pedigrees.Beliefs.Explanations;

/// <summary>Records heard in one go, and what they make of a chance.</summary>
/// <param name="Kind">Whose records they are.</param>
/// <param name="Records">The records, in the order of the pedigree.</param>
/// <param name="Factor">The Bayes factor given all steps before: how many times the odds grow; 0: it rules the claim out; infinity: it makes it certain.</param>
/// <param name="Chance">The chance after it.</param>
/// <param name="RestsOn">The Bayes factor given all other records, those after it too: how much the belief rests on it; 1: without it the belief would be the
/// same. NaN where that takes more than the budget.</param>
public sealed record ExplanationStep(StepKind Kind, IReadOnlyList<RecordPlace> Records, double Factor, Probability Chance, double RestsOn)
{
    /// <summary>The factor above which a claim counts as made certain, and below whose inverse as ruled out: what is left comes from alleles let in or from
    /// records that clash.</summary>
    public const double Decisive = 1e9;
}

/// <summary>Whose records a step is made of.</summary>
public enum StepKind
{
    /// <summary>One record of the animal itself.</summary>
    Own = 1,

    /// <summary>The records of one ancestor, mate or other relative without recorded parents.</summary>
    Kin = 2,

    /// <summary>The records of the young of one clutch.</summary>
    Clutch = 3,

    /// <summary>Several of these, which could only be reckoned together.</summary>
    Several = 4,
}
