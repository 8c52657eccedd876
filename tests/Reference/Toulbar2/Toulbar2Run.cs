using System.Globalization;
using System.Text.RegularExpressions;
using Clutchwright.Reference.Tests.Cases;
using Clutchwright.Reference.Tests.Programs;

namespace Clutchwright.Reference.Tests.Toulbar2;

/// <summary>What toulbar2 says of a case.</summary>
internal static partial class Toulbar2Run
{
    /// <summary>The natural logarithm of the likelihood, to 3 decimals; minus infinity of what cannot be.</summary>
    /// <param name="genetic">The case.</param>
    /// <param name="longest">How long it may take.</param>
    /// <param name="without">An animal known to have the wild allele alone, besides what was seen of it.</param>
    /// <exception cref="InvalidOperationException">It was found only within bounds.</exception>
    public static async Task<double> LogLikelihoodAsync(GeneticCase genetic, TimeSpan longest, int? without = null)
    {
        using var folder = new WorkFolder();
        folder.Write("net.uai", UaiNetwork.Of(genetic, without));

        // With -B=1 or -O=-3 version 1.1.1 prints -inf for a kennel.
        var output = await ReferenceProgram.Toulbar2.RunAsync(folder.FullPath, longest, "net.uai", "-logz", "-precision=12");
        var match = LogZ().Match(output);
        if (!match.Success || match.Groups["low"].Value != match.Groups["high"].Value)
        {
            throw new InvalidOperationException($"toulbar2 gave no exact answer: {output}");
        }

        return match.Groups["low"].Value == "-inf" ? double.NegativeInfinity : double.Parse(match.Groups["low"].Value, CultureInfo.InvariantCulture);
    }

    [GeneratedRegex(@"(?<low>\S+) <= Log\(Z\) <= (?<high>\S+)")]
    private static partial Regex LogZ();
}
