using System.Globalization;
using System.Text.RegularExpressions;
using Clutchwright.Reference.Tests.Cases;
using Clutchwright.Reference.Tests.Programs;
using Clutchwright.Reference.Tests.Truth;

namespace Clutchwright.Reference.Tests.Fastlink;

/// <summary>What FASTLINK says of a case.</summary>
internal static partial class FastlinkRun
{
    private static readonly TimeSpan Longest = TimeSpan.FromSeconds(60);

    /// <summary>How likely animals have each number of copies of an allele.</summary>
    /// <param name="genetic">The case.</param>
    /// <param name="locus">The locus.</param>
    /// <param name="allele">The allele.</param>
    /// <param name="probands">The animals asked for. Where FASTLINK breaks a loop at one, it answers for another and that one is missing.</param>
    /// <returns>The answers by animal, to 5 decimals, and the likelihood.</returns>
    public static async Task<FastlinkRisks> RisksAsync(
        GeneticCase genetic, int locus, int allele, IReadOnlyList<int> probands)
    {
        // The risks of a run are printed only if the recombination fraction reaches a half.
        var first = genetic.Loci.Count == 1 ? 0.5 : genetic.Recombination;
        var step = genetic.Loci.Count == 1 ? 0.1 : 0.5 - genetic.Recombination;
        var (pedigrees, output) = await RunAsync(FastlinkFiles.Data(genetic, (locus, allele), (first, step, 0.5)), FastlinkFiles.Pedigrees(genetic, probands));
        var rows = pedigrees.Split('\n', StringSplitOptions.RemoveEmptyEntries)
            .Select(line => line.Split(' ', StringSplitOptions.RemoveEmptyEntries))
            .Select(fields => (Pedigree: Whole(fields[0]), Animal: Whole(fields[1]) - 1))
            .ToArray();

        // A run of two loci prints every recombination fraction; the first is the case's own.
        var answers = new Dictionary<int, AlleleCopies>();
        foreach (var match in Risk().Matches(FirstTheta(output)).Cast<Match>())
        {
            var (pedigree, animal) = rows[Whole(match.Groups["person"].Value) - 1];
            if (pedigree != Whole(match.Groups["pedigree"].Value))
            {
                throw new InvalidOperationException($"FASTLINK's person is of another pedigree: {match.Value}");
            }

            if (animal < genetic.Family.Count)
            {
                var none = Number(match.Groups["none"].Value);
                answers[animal] = match.Groups["male"].Success
                    ? new(0, Number(match.Groups["male"].Value), none)
                    : new(Number(match.Groups["two"].Value), Number(match.Groups["one"].Value), none);
            }
        }

        return new(answers, Number(Lod().Match(output).Groups["ln"].Value));
    }

    /// <summary>The LOD score of two loci at recombination fractions from 0 to 0.45.</summary>
    public static async Task<IReadOnlyList<(double Theta, double Lod)>> LodsAsync(GeneticCase genetic)
    {
        var (_, output) = await RunAsync(FastlinkFiles.Data(genetic, null, (0.0, 0.05, 0.45)), FastlinkFiles.Pedigrees(genetic, [0]));
        return [.. Lod().Matches(output).Select(m => (Number(m.Groups["theta"].Value), Number(m.Groups["lod"].Value)))];
    }

    private static async Task<(string Pedigrees, string Output)> RunAsync(string data, string pedigrees)
    {
        using var folder = new WorkFolder();
        folder.Write("datafile.dat", data);
        folder.Write("pedfile.dat", pedigrees);

        // First the loops are broken, then genotypes ruled out.
        await ReferenceProgram.Unknown.RunAsync(folder.FullPath, Longest, "-l");
        folder.Copy("lpedfile.dat", "pedfile.dat");
        await ReferenceProgram.Unknown.RunAsync(folder.FullPath, Longest);
        var said = await ReferenceProgram.Mlink.RunAsync(folder.FullPath, Longest);
        var output = folder.Read("outfile.dat");
        return output.Contains("TOTALS", StringComparison.Ordinal)
            ? (folder.Read("lpedfile.dat"), output)
            : throw new InvalidOperationException($"FASTLINK gave no answer: {said}");
    }

    private static string FirstTheta(string output)
    {
        var second = output.IndexOf("THETAS", output.IndexOf("THETAS", StringComparison.Ordinal) + 1, StringComparison.Ordinal);
        return second < 0 ? output : output[..second];
    }

    private static int Whole(string text) => int.Parse(text, CultureInfo.InvariantCulture);

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"RISK FOR PERSON\s+(?<person>\d+) IN PEDIGREE\s+(?<pedigree>\d+)\s+(?:HOMOZYGOTE CARRIER\s*:\s*(?<two>\S+)\s+HETEROZYGOTE CARRIER\s*:\s*(?<one>\S+)|MALE CARRIER\s*:\s*(?<male>\S+))\s+NORMAL\s*:\s*(?<none>\S+)")]
    private static partial Regex Risk();

    [GeneratedRegex(@"THETAS\s+(?<theta>\S+)\s[^|]*?PEDIGREE \|[^\n]*\n-+\s+(?:RISK[^|]*?NORMAL\s*:\s*\S+\s+)?\d+\s+(?<ln>-?\d\S*)\s+-?\d\S*\s+LOD=\s*(?<lod>\S+)")]
    private static partial Regex Lod();
}
