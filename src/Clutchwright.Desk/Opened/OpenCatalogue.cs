using System.Collections.Concurrent;
using System.Globalization;
using Clutchwright.Catalogue;
using Clutchwright.Catalogue.TradeTexts;
using Clutchwright.Desk.Crosses;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Loci;
using Clutchwright.Pedigrees.Beliefs;

namespace Clutchwright.Desk.Opened;

/// <summary>The catalogue a desk works with, with the wording that goes with it.</summary>
internal sealed class OpenCatalogue
{
    private const int MostRemembered = 20_000;

    private readonly string _folder;
    private readonly ConcurrentDictionary<string, TextOutcome<ReadAnimal>> _read = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<string, OpenCatalogue> _changed = new(StringComparer.Ordinal);

    public OpenCatalogue(SpeciesCatalogue catalogue, string folder)
    {
        _folder = folder;
        Catalogue = catalogue;
        Wording = new(catalogue);
        Clutches = new(catalogue.Biology);
        BeliefSettings = BeliefSettings.Default with
        {
            Frequencies = catalogue.Alleles.Where(a => a.Frequency is not null).ToDictionary(a => a.Allele, a => a.Frequency!.Value),
        };
    }

    public SpeciesCatalogue Catalogue { get; }

    public Wording Wording { get; }

    /// <summary>Reads trade text as <see cref="Catalogue"/> does, and remembers: in a stock the same words stand on many animals.</summary>
    public TextOutcome<ReadAnimal> Read(string text)
    {
        if (_read.TryGetValue(text, out var known))
        {
            return known;
        }

        var read = Catalogue.Trade.Read(text);
        if (_read.Count < MostRemembered)
        {
            _read.TryAdd(text, read);
        }

        return read;
    }

    public ClutchReckoning Clutches { get; }

    public Species Species => Catalogue.Species;

    /// <summary>What beliefs are reckoned with: how common alleles are among founders, where the species data say so.</summary>
    public BeliefSettings BeliefSettings { get; }

    /// <summary>The same catalogue with recombination fractions that the keeper says.</summary>
    /// <param name="recombination">By locus id or the name of an allele.</param>
    /// <param name="problems">What cannot be.</param>
    public OpenCatalogue With(IReadOnlyDictionary<string, double> recombination, List<AskedWrongly> problems)
    {
        var changed = new SortedDictionary<string, RecombinationFraction>(StringComparer.Ordinal);
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
                changed[locus.Id] = RecombinationFraction.From(value);
            }
        }

        // Read afresh: trade text and species belong together. What was asked once is likely asked again.
        return changed.Count == 0
            ? this
            : _changed.GetOrAdd(
                string.Join(' ', changed.Select(c => string.Create(CultureInfo.InvariantCulture, $"{c.Key}={c.Value.Value:R}"))),
                _ => new(CatalogueFolder.Read(_folder, changed).Catalogue ?? throw new DeskClosedException($"The catalogue in {_folder} has changed and cannot be used."), _folder));
    }
}
