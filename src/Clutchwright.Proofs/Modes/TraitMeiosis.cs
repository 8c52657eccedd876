using Clutchwright.Genetics.Loci;

namespace Clutchwright.Proofs.Modes;

/// <summary>What parents can be and pass on under a hypothesis with its numbers fixed.</summary>
/// <remarks>A state is an ordered pair of strands as a number: bit 0 the strand from the side of the X (or Z) of the sex that has two
/// different ones, bit 1 its Y (or W). Where the two strands are alike the order means nothing.</remarks>
internal sealed class TraitMeiosis(TraitHypothesis hypothesis, SexSystem system, bool isSexLinked, double r)
{
    /// <summary>The number of ordered pairs of strands.</summary>
    public const int States = 4;

    public static int Copies(int state) => (state & 1) + (state >> 1);

    public TraitLook Look(int state) => hypothesis.Look(Copies(state));

    /// <summary>The chance of a founder's state, given what it shows; all 0 where nothing shows that.</summary>
    public double[] Founder(TraitLook look, double q)
    {
        var chances = new double[States];
        for (var state = 0; state < States; state++)
        {
            chances[state] = Look(state) == look ? Strand(state & 1) * Strand(state >> 1) : 0.0;
        }

        var total = chances.Sum();
        return total == 0.0 ? chances : Array.ConvertAll(chances, c => c / total);

        double Strand(int allele) => allele == 1 ? q : 1.0 - q;
    }

    /// <summary>The chances of the three looks in young of a sex.</summary>
    public double[] Young(int sire, int dam, Sex sex)
    {
        var (fromSire, fromDam) = (Passes(sire, Sex.Male, sex), Passes(dam, Sex.Female, sex));
        var looks = new double[3];
        looks[(int)hypothesis.Look(0)] += (1.0 - fromSire) * (1.0 - fromDam);
        looks[(int)hypothesis.Look(1)] += (fromSire * (1.0 - fromDam)) + ((1.0 - fromSire) * fromDam);
        looks[(int)hypothesis.Look(2)] += fromSire * fromDam;
        return looks;
    }

    // The chance that a parent passes the allele on to young of a sex.
    private double Passes(int state, Sex parent, Sex young)
    {
        var differs = system == SexSystem.XY ? Sex.Male : Sex.Female;
        var (x, y) = (state & 1, state >> 1);
        if (!isSexLinked || parent != differs)
        {
            return (x + y) / 2.0;
        }

        // The strand that makes the sex, but for recombination.
        return young == differs ? ((1.0 - r) * y) + (r * x) : ((1.0 - r) * x) + (r * y);
    }
}
