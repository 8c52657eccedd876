using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Proofs.Allelisms;

/// <summary>The young of one pair in a test of allelism.</summary>
/// <param name="Pairing">The cross.</param>
/// <param name="Telling">Recessives: young that show; visible alleles: young with both or neither. 0 or more.</param>
/// <param name="Others">The other young. 0 or more.</param>
public sealed record AllelismClutch(AllelismPairing Pairing, int Telling, int Others)
{
    /// <summary>Gets the chance that the parents are what <see cref="Pairing"/> says: below 1 where a het is only possible. All eggs of
    /// the pair share it.</summary>
    public Probability Carries { get; init; } = Probability.Certain;

    /// <summary>The chance of a telling egg from parents that are what they are said to be.</summary>
    /// <param name="pairing">The cross.</param>
    /// <param name="isOneLocus">Whether the alleles lie at one locus; else at two free ones.</param>
    public static Probability TellingPerEgg(AllelismPairing pairing, bool isOneLocus) => (pairing, isOneLocus) switch
    {
        (AllelismPairing.VisualByVisual, true) => Probability.Certain,
        (AllelismPairing.VisualByHet, true) => Probability.Half,
        (AllelismPairing.HetByHet, true) => Probability.Ratio(1, 4),
        (AllelismPairing.BothByNeither, false) => Probability.Half,
        _ => Probability.Impossible,
    };

    /// <summary>The chance of these young, in this order.</summary>
    internal Probability Chance(bool isOneLocus, Probability misread) =>
        (Carries * Run(TellingPerEgg(Pairing, isOneLocus), misread))
        + (Carries.Complement * Run(Pairing == AllelismPairing.BothByNeither ? TellingPerEgg(Pairing, isOneLocus) : Probability.Impossible, misread));

    private Probability Run(Probability telling, Probability misread)
    {
        var read = (telling * misread.Complement) + (telling.Complement * misread);
        return read.Power(Telling) * read.Complement.Power(Others);
    }
}
