using Clutchwright.Desk.Opened;

namespace Clutchwright.Desk.Words;

/// <summary>How may this trade text go on?</summary>
public sealed class CompleteText
{
    private readonly OpenCatalogue _catalogue;

    internal CompleteText(OpenCatalogue catalogue) => _catalogue = catalogue;

    /// <summary>Completes the word at the caret.</summary>
    /// <param name="text">The text so far.</param>
    /// <param name="caret">How many characters stand before the caret; a value outside the text is set to its nearer end.</param>
    public IReadOnlyList<Completion> Run(string text, int caret) => _catalogue.Catalogue.Trade
        .Suggest(text, Math.Clamp(caret, 0, text.Length))
        .Select(c => new Completion(c.Text, c.Start, c.Length, Hint(c.Text, c.For)))
        .ToArray();

    private string Hint(string text, string? of) =>
        _catalogue.Catalogue.FindAllele(of ?? text) is { } allele
            ? of is null ? Wording.Inheritance(allele.Allele) : $"{of}, {Wording.Inheritance(allele.Allele)}"
            : of ?? string.Empty;
}
