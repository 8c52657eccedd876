using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Desk.Words;

/// <summary>One word group of an animal's trade text: something seen (faces set it bold and upright) or carried (italic).</summary>
/// <param name="Text">For example <c>Super Pastel</c> or <c>66% het Pied</c>.</param>
/// <param name="IsSeen">Whether it can be seen; false: carried, or hidden by something seen.</param>
/// <param name="Chance">The exact chance behind a possible het; <c>null</c> where it is certain.</param>
/// <param name="GeneId">The id of the catalogue entry to open, or <c>null</c>.</param>
public sealed record WordPart(string Text, bool IsSeen, Probability? Chance, string? GeneId);

/// <summary>How an animal's genotype is written.</summary>
/// <param name="Parts">In the trade's words, seen first; one part "Normal" where there is nothing to say.</param>
/// <param name="Notation">In genetics' notation.</param>
public sealed record AnimalWords(IReadOnlyList<WordPart> Parts, string Notation)
{
    /// <summary>Gets the trade text in one line.</summary>
    public string Text => string.Join(' ', Parts.Select(p => p.Text));
}

/// <summary>A warning shown where a genotype is chosen.</summary>
/// <param name="Code">A stable code for programs.</param>
/// <param name="Severity"><c>lethal</c>, <c>suffering</c> or <c>watch</c>; <c>note</c> for what is no danger.</param>
/// <param name="Text">One plain sentence.</param>
/// <param name="Grade">How well it is known, in words; <c>null</c> where that does not apply.</param>
/// <param name="Sources">Citations.</param>
public sealed record Warning(string Code, string Severity, string Text, string? Grade, IReadOnlyList<string> Sources);

/// <summary>One step of an explanation.</summary>
/// <param name="Text">What was reckoned, in words.</param>
/// <param name="Value">The number it gave, or <c>null</c>.</param>
public sealed record WhyStep(string Text, Probability? Value);
