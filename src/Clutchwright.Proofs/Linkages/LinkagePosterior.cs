using Clutchwright.Genetics.Numbers;
using Clutchwright.Proofs.Distributions;
using Clutchwright.Proofs.Segregations;

namespace Clutchwright.Proofs.Linkages;

/// <summary>The posterior of the recombination fraction when every value from 0 to 0.5 was held equally likely before counting.</summary>
/// <remarks>One family, or all phases known: in closed form by the incomplete beta function. Several families of unknown phase: by
/// Simpson's rule on a fine grid, error below 1e-6.</remarks>
internal sealed class LinkagePosterior
{
    private const int Steps = 20_000;

    private readonly Func<double, double> _below;

    public LinkagePosterior(Func<double, double> lod, IReadOnlyList<LinkageFamily> families)
    {
        var n = families.Sum(f => f.Meioses);
        if (families.All(f => f.Phase == LinkagePhase.Known))
        {
            var k = families.Sum(f => f.Recombinants);
            var whole = BinomialDistribution.IncompleteBeta(k + 1.0, n - k + 1.0, 0.5, 0.5);
            _below = r => BinomialDistribution.IncompleteBeta(k + 1.0, n - k + 1.0, r, 1.0 - r) / whole;
        }
        else if (families.Count == 1)
        {
            // Both ways round, each folded at 1/2, make up one whole beta function.
            var k = families[0].Recombinants;
            _below = r => BinomialDistribution.IncompleteBeta(k + 1.0, n - k + 1.0, r, 1.0 - r)
                + BinomialDistribution.IncompleteBeta(n - k + 1.0, k + 1.0, r, 1.0 - r);
        }
        else
        {
            var sums = Integrate(lod);
            _below = r => At(sums, r);
        }
    }

    /// <summary>The chance that the fraction is at most r.</summary>
    public double Below(double r) => _below(r);

    public ShareInterval Interval(Probability confidence)
    {
        var doubt = ShareInterval.Doubt(confidence) / 2.0;
        return new(
            ShareInterval.Solve(0.0, 0.5, r => Below(r) >= doubt),
            ShareInterval.Solve(0.0, 0.5, r => Below(r) >= 1.0 - doubt));
    }

    private static double[] Integrate(Func<double, double> lod)
    {
        var logs = new double[(2 * Steps) + 1];
        var most = double.NegativeInfinity;
        for (var i = 0; i < logs.Length; i++)
        {
            logs[i] = lod(0.25 * i / Steps);
            most = Math.Max(most, logs[i]);
        }

        var density = Array.ConvertAll(logs, l => Math.Pow(10.0, l - most));
        var sums = new double[Steps + 1];
        for (var i = 1; i <= Steps; i++)
        {
            sums[i] = sums[i - 1] + density[(2 * i) - 2] + (4.0 * density[(2 * i) - 1]) + density[2 * i];
        }

        return Array.ConvertAll(sums, s => s / sums[^1]);
    }

    private static double At(double[] sums, double r)
    {
        var place = r * 2.0 * Steps;
        var i = Math.Min(Steps - 1, (int)place);
        return sums[i] + ((place - i) * (sums[i + 1] - sums[i]));
    }
}
