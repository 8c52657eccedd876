using System.Globalization;
using System.Text;
using Clutchwright.Reference.Tests.Cases;

namespace Clutchwright.Reference.Tests.Toulbar2;

/// <summary>A case of one locus as a Markov network in the UAI form: a variable for the genotype of every animal, a table for what it is by its
/// parents and by what was seen of it. The partition function of the network is the likelihood of the case.</summary>
internal static class UaiNetwork
{
    /// <summary>Writes a case down.</summary>
    /// <param name="genetic">The case.</param>
    /// <param name="without">An animal known to have the wild allele alone, besides what was seen of it.</param>
    public static string Of(GeneticCase genetic, int? without = null)
    {
        double Seen(int animal, (int First, int Second) state) =>
            animal == without && state != (0, 0) ? 0 : genetic.SeenChance(0, animal, state.First, state.Second);

        var family = genetic.Family;
        var states = Enumerable.Range(0, family.Count).Select(i => States(genetic, i)).ToArray();
        var text = new StringBuilder();
        Line(text, $"MARKOV");
        Line(text, $"{family.Count}");
        Line(text, $"{string.Join(' ', states.Select(s => s.Count))}");
        Line(text, $"{family.Count}");
        for (var i = 0; i < family.Count; i++)
        {
            Line(text, family.Sires[i] < 0 ? (FormattableString)$"1 {i}" : $"3 {family.Sires[i]} {family.Dams[i]} {i}");
        }

        // The last variable of a table runs fastest.
        for (var i = 0; i < family.Count; i++)
        {
            var table = family.Sires[i] < 0
                ? states[i].Select(s => Founding(genetic, i, s) * Seen(i, s))
                : from sire in states[family.Sires[i]]
                  from dam in states[family.Dams[i]]
                  from child in states[i]
                  select Transmission(genetic, i, sire, dam, child) * Seen(i, child);
            var values = table.Select(v => v.ToString("R", CultureInfo.InvariantCulture)).ToArray();
            Line(text, $"{values.Length}");
            Line(text, $"{string.Join(' ', values)}");
        }

        return text.ToString();
    }

    // The first allele not above the second; of a male whose locus lies on the X the first is the wild one of his Y.
    private static IReadOnlyList<(int First, int Second)> States(GeneticCase genetic, int animal) => genetic.IsHemizygous(animal)
        ? [.. Enumerable.Range(0, genetic.Loci[0].AlleleCount).Select(a => (0, a))]
        : [.. genetic.Loci[0].Genotypes];

    private static double Founding(GeneticCase genetic, int animal, (int First, int Second) state)
    {
        var frequencies = genetic.Loci[0].Frequencies;
        return genetic.IsHemizygous(animal) ? frequencies[state.Second]
            : (state.First == state.Second ? 1 : 2) * frequencies[state.First] * frequencies[state.Second];
    }

    private static double Transmission(
        GeneticCase genetic, int child, (int First, int Second) sire, (int First, int Second) dam, (int First, int Second) state)
    {
        if (genetic.IsHemizygous(child))
        {
            return Gives(dam, state.Second);
        }

        double FromSire(int allele) => genetic.IsSexLinked ? (sire.Second == allele ? 1 : 0) : Gives(sire, allele);
        var oneWay = FromSire(state.First) * Gives(dam, state.Second);
        return state.First == state.Second ? oneWay : oneWay + FromSire(state.Second) * Gives(dam, state.First);
    }

    private static double Gives((int First, int Second) parent, int allele) =>
        (parent.First == allele ? 0.5 : 0) + (parent.Second == allele ? 0.5 : 0);

    private static void Line(StringBuilder text, FormattableString line) => text.Append(line.ToString(CultureInfo.InvariantCulture)).Append('\n');
}
