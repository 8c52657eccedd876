using Clutchwright.Reference.Tests.Truth;

namespace Clutchwright.Reference.Tests.Fastlink;

/// <summary>What FASTLINK says of one allele.</summary>
/// <param name="Copies">By animal, how likely it has each number of copies, to 5 decimals.</param>
/// <param name="ScaledLogLikelihood">The natural logarithm of the likelihood, but for a whole number of powers of two.</param>
internal sealed record FastlinkRisks(IReadOnlyDictionary<int, AlleleCopies> Copies, double ScaledLogLikelihood)
{
    /// <summary>How far a likelihood is from FASTLINK's, in powers of two, the whole ones left out.</summary>
    public double DistanceTo(double logLikelihood)
    {
        var powers = (ScaledLogLikelihood - logLikelihood) / Math.Log(2);
        return Math.Abs(powers - Math.Round(powers));
    }
}
