using Clutchwright.Genetics.Loci;
using Clutchwright.Proofs.Distributions;

namespace Clutchwright.Proofs.Modes;

/// <summary>The chance of the clutches under a hypothesis, its unknown numbers and the parents' genotypes summed over.</summary>
internal sealed class TraitLikelihood
{
    // Gauss's rule is exact for polynomials of twice the order less one: in r, for up to 95 young.
    private static readonly (double At, double Weight)[] Recombinations = GaussLegendre.On(0.0, 0.5, 48);
    private static readonly (double At, double Weight)[] Frequencies = GaussLegendre.On(0.0, 0.5, 12);

    private readonly IReadOnlyList<TraitClutch> _clutches;
    private readonly SexSystem _system;
    private readonly List<TraitFamily> _families;

    public TraitLikelihood(IReadOnlyList<TraitClutch> clutches, SexSystem system)
    {
        _clutches = clutches;
        _system = system;
        _families = TraitFamily.Of(clutches);
    }

    public double Log(TraitHypothesis hypothesis)
    {
        if (hypothesis.Placement == TraitPlacement.NotInherited)
        {
            return NotInherited();
        }

        var isSexLinked = hypothesis.Placement != TraitPlacement.Autosomal;
        var fractions = hypothesis.Placement switch
        {
            TraitPlacement.Autosomal => [(0.5, 1.0)],
            TraitPlacement.FullySexLinked => [(0.0, 1.0)],
            _ => Recombinations,
        };
        var meiosis = fractions.Select(f => (new TraitMeiosis(hypothesis, _system, isSexLinked, f.Item1), Weight: Math.Log(f.Item2))).ToArray();
        var logs = new List<double>();
        foreach (var (cross, weight) in meiosis)
        {
            var tables = _families.Select(f => f.Tables(cross)).ToArray();
            foreach (var (q, share) in Frequencies)
            {
                logs.Add(weight + Math.Log(share) + _families.Select((f, i) => f.Log(cross, tables[i], q)).Sum());
            }
        }

        return LogSum(logs);
    }

    /// <summary>ln of the sum of exponentials.</summary>
    internal static double LogSum(IReadOnlyCollection<double> logs)
    {
        var most = logs.Max();
        return double.IsNegativeInfinity(most) ? most : most + Math.Log(logs.Sum(l => Math.Exp(l - most)));
    }

    // One unknown chance a look, every value equally likely before.
    private double NotInherited()
    {
        var counts = _clutches.SelectMany(c => new[] { c.Males, c.Females, c.Unsexed }).ToArray();
        long[] looks = [counts.Sum(c => (long)c.Normal), counts.Sum(c => (long)c.Shows), counts.Sum(c => (long)c.Super)];
        var hasSuper = looks[2] > 0 || _clutches.Any(c => c.SireLook == TraitLook.Super || c.DamLook == TraitLook.Super);
        return LogOfChance(looks, hasSuper);
    }

    /// <summary>ln of the mean chance of looks that come by unknown chances, every value equally likely before.</summary>
    internal static double LogOfChance(IReadOnlyCollection<long> looks, bool hasSuper)
    {
        var free = hasSuper ? 3 : 2;
        return LogFactorial(free - 1) + looks.Sum(LogFactorial) - LogFactorial(looks.Sum() + free - 1);
    }

    private static double LogFactorial(long n) => n < 2
        ? 0.0
        : SaddlePoint.StirlingError(n) + ((n + 0.5) * Math.Log(n)) - n + (0.5 * Math.Log(2.0 * Math.PI));
}
