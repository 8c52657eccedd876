using System.Globalization;
using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Loci;
using Clutchwright.Pedigrees.Beliefs;

namespace Clutchwright.Desk.Carry;

/// <summary>Reads what a keeper says to reckon with.</summary>
internal static class CarrySettings
{
    /// <summary>The settings of the catalogue, changed as asked; the very same where nothing was.</summary>
    public static BeliefSettings Read(OpenCatalogue catalogue, CarryQuestion question, List<AskedWrongly> problems)
    {
        var settings = catalogue.BeliefSettings;
        if (question.Misreading is { } misreading)
        {
            if (misreading is >= 0.0 and <= 0.5)
            {
                settings = settings with { Misreading = misreading };
            }
            else
            {
                problems.Add(new("misreading", $"{Text(misreading)} is no chance of a misreading. Write a number from 0 to 0.5."));
            }
        }

        if (question.Frequencies.Count == 0)
        {
            return settings;
        }

        var frequencies = new Dictionary<Allele, double>(settings.Frequencies);
        foreach (var (name, value) in question.Frequencies)
        {
            if (catalogue.Catalogue.FindAllele(name)?.Allele is not { IsWild: false } allele)
            {
                problems.Add(new("frequency", $"'{name}' is no gene of the catalogue.", DidYouMean: catalogue.Catalogue.NearestNames(name)));
            }
            else if (value is not (>= 0.0 and <= 1.0))
            {
                problems.Add(new("frequency", $"{Text(value)} is no frequency of {allele.Name}. Write a number from 0 to 1."));
            }
            else
            {
                frequencies[allele] = value;
            }
        }

        foreach (var locus in frequencies.GroupBy(f => f.Key.Locus).Where(l => l.Sum(f => f.Value) > 1.0))
        {
            problems.Add(new(
                "frequency",
                $"The frequencies of {string.Join(" and ", locus.Select(f => f.Key.Name))}, alleles of one locus, sum to {Text(locus.Sum(f => f.Value))}; they share it, so 1 is the most."));
        }

        return problems.Count > 0 ? settings : settings with { Frequencies = frequencies };
    }

    private static string Text(double value) => value.ToString("0.######", CultureInfo.CurrentCulture);
}
