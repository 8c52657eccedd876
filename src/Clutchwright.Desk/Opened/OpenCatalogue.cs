using Clutchwright.Catalogue;
using Clutchwright.Desk.Crosses;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Loci;

namespace Clutchwright.Desk.Opened;

/// <summary>The catalogue a desk works with, with the wording that goes with it.</summary>
internal sealed class OpenCatalogue
{
    public OpenCatalogue(SpeciesCatalogue catalogue)
    {
        Catalogue = catalogue;
        Wording = new(catalogue);
        Clutches = new(catalogue.Biology);
    }

    public SpeciesCatalogue Catalogue { get; }

    public Wording Wording { get; }

    public ClutchReckoning Clutches { get; }

    public Species Species => Catalogue.Species;

    /// <summary>The same catalogue with recombination fractions that the keeper says.</summary>
    /// <param name="recombination">By locus id or the name of an allele.</param>
    /// <param name="problems">What cannot be.</param>
    public OpenCatalogue With(IReadOnlyDictionary<string, double> recombination, List<AskedWrongly> problems)
    {
        var changed = Catalogue;
        foreach (var (name, value) in recombination)
        {
            var locus = Species.FindLocus(name) ?? Catalogue.FindAllele(name)?.Allele.Locus;
            if (locus?.Placement is not Placement.SexLinked)
            {
                problems.Add(new(
                    "recombination",
                    locus is null ? $"'{name}' is no locus or gene of the catalogue." : $"{name} does not lie on the sex chromosomes.",
                    DidYouMean: [.. Species.SexGroup.Loci.Select(l => l.Id)]));
            }
            else if (value is not (>= 0.0 and <= 0.5))
            {
                problems.Add(new("recombination", $"{value} is no recombination fraction. Write a number from 0 (always together) to 0.5 (free)."));
            }
            else
            {
                changed = changed.WithRecombination(locus.Id, RecombinationFraction.From(value));
            }
        }

        return ReferenceEquals(changed, Catalogue) ? this : new(changed);
    }
}
