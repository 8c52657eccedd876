using System.Globalization;
using System.Text;
using Clutchwright.Genetics.Loci;
using Clutchwright.Reference.Tests.Cases;
using Clutchwright.Testing.Pedigrees;

namespace Clutchwright.Reference.Tests.Fastlink;

/// <summary>A case in the files that FASTLINK reads.</summary>
internal static class FastlinkFiles
{
    /// <summary>The description of the loci, <c>datafile.dat</c>.</summary>
    /// <param name="genetic">The case; one locus gets an empty marker beside it.</param>
    /// <param name="risk">The locus and allele whose risk is asked for; <c>null</c>: likelihoods only.</param>
    /// <param name="thetas">The first recombination fraction, the step, and the last.</param>
    public static string Data(GeneticCase genetic, (int Locus, int Allele)? risk, (double First, double Step, double Last) thetas)
    {
        var text = new StringBuilder();
        Line(text, $"2 {(risk is { } r ? r.Locus + 1 : 0)} {(genetic.IsSexLinked ? 1 : 0)} 5");
        Line(text, $"0 0.0 0.0 0");
        Line(text, $"1 2");
        for (var i = 0; i < genetic.Loci.Count; i++)
        {
            Write(text, genetic, genetic.Loci[i], risk is { } asked && asked.Locus == i ? asked.Allele : null);
        }

        if (genetic.Loci.Count == 1)
        {
            // FASTLINK checks allele numbers against the count of the next locus. With loops, frequencies of the marker's alleles get into the
            // likelihood's scale: powers of two keep it a power of two.
            var alleles = genetic.Loci[0].AlleleCount;
            Line(text, $"3 {alleles}");
            Line(text, $"{string.Join(' ', Enumerable.Range(0, alleles).Select(a => Say(Math.Pow(0.5, Math.Min(a + 1, alleles - 1)))))}");
        }

        Line(text, $"0 0");
        Line(text, $"{Say(thetas.First)}");
        Line(text, $"1 {Say(thetas.Step)} {Say(thetas.Last)}");
        return text.ToString();
    }

    /// <summary>The pedigrees, <c>pedfile.dat</c>: the case once for each proband.</summary>
    public static string Pedigrees(GeneticCase genetic, IReadOnlyList<int> probands)
    {
        var family = genetic.Family;
        var text = new StringBuilder();
        for (var p = 0; p < probands.Count; p++)
        {
            for (var i = 0; i < family.Count; i++)
            {
                var seen = string.Join(' ', genetic.Seen.Select(s => s[i] is { } look ? $"2 {look + 1}" : "0 1"));
                var marker = genetic.Loci.Count == 1 ? " 0 0" : "";
                Line(text, $"{p + 1} {i + 1} {family.Sires[i] + 1} {family.Dams[i] + 1} {FirstChild(family, i)} {NextChild(family, family.Sires, i)} {NextChild(family, family.Dams, i)} {(family.Sexes[i] == Sex.Male ? 1 : 2)} {(probands[p] == i ? 1 : 0)} {seen}{marker}");
            }
        }

        return text.ToString();
    }

    private static void Write(StringBuilder text, GeneticCase genetic, LocusModel locus, int? riskAllele)
    {
        Line(text, $"1 {locus.AlleleCount}");
        Line(text, $"{string.Join(' ', locus.Frequencies.Select(Say))}");
        Line(text, $"{locus.LookCount}");
        for (var look = 0; look < locus.LookCount; look++)
        {
            Line(text, $"{string.Join(' ', locus.Genotypes.Select(g => Say(locus.Chance(g.First, g.Second, look))))}");
            if (genetic.IsSexLinked)
            {
                Line(text, $"{string.Join(' ', Enumerable.Range(0, locus.AlleleCount).Select(a => Say(locus.Chance(0, a, look))))}");
            }
        }

        if (riskAllele is { } allele)
        {
            Line(text, $"{allele + 1}");
        }
    }

    private static int FirstChild(SamplePedigree family, int parent) =>
        Enumerable.Range(0, family.Count).FirstOrDefault(i => family.Sires[i] == parent || family.Dams[i] == parent, -1) + 1;

    private static int NextChild(SamplePedigree family, IReadOnlyList<int> parents, int child) =>
        parents[child] < 0 ? 0 : Enumerable.Range(child + 1, family.Count - child - 1).FirstOrDefault(i => parents[i] == parents[child], -1) + 1;

    private static string Say(double value) => value.ToString("0.0###############", CultureInfo.InvariantCulture);

    private static void Line(StringBuilder text, FormattableString line) => text.Append(line.ToString(CultureInfo.InvariantCulture)).Append('\n');
}
