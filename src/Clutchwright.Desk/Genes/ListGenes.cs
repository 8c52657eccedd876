using Clutchwright.Desk.Opened;

namespace Clutchwright.Desk.Genes;

/// <summary>What does the catalogue hold?</summary>
public sealed class ListGenes
{
    private readonly Lazy<(GeneLine Line, string Words)[]> _all;

    internal ListGenes(OpenCatalogue catalogue) => _all = new(() =>
    {
        var wording = new GeneWording(catalogue);
        var also = catalogue.Catalogue.Alleles.ToDictionary(a => a.Allele.Id, a => string.Join(' ', a.Also), StringComparer.Ordinal);
        return [.. wording.All().Select(l => (l, $"{l.Name} {l.Inheritance} {l.Locus} {l.Summary} {also.GetValueOrDefault(l.Id)}"))];
    });

    /// <summary>Lists entries by name.</summary>
    /// <param name="find">Words that must all be found in an entry's names, inheritance, locus or look; <c>null</c>: all.</param>
    /// <param name="kind"><c>allele</c>, <c>form</c> or <c>combination</c>; <c>null</c> or another word: all.</param>
    public IReadOnlyList<GeneLine> Run(string? find, string? kind)
    {
        var words = (find ?? string.Empty).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries);
        var kinds = kind is GeneWording.Allele or GeneWording.Form or GeneWording.Combination ? kind : null;
        return _all.Value
            .Where(e => kinds is null || string.Equals(e.Line.Kind, kinds, StringComparison.Ordinal))
            .Where(e => words.All(w => e.Words.Contains(w, StringComparison.OrdinalIgnoreCase)))
            .OrderByDescending(e => words.Length > 0 && e.Line.Name.StartsWith(words[0], StringComparison.OrdinalIgnoreCase))
            .Select(e => e.Line)
            .ToArray();
    }
}
