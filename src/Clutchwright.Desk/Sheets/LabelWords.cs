using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Desk.Sheets;

/// <summary>On what a part of a label rests.</summary>
public enum LabelBasis
{
    /// <summary>Someone looked at the animal.</summary>
    Seen = 1,

    /// <summary>Certain by what was seen of it and of its kin, or proven by breeding, whatever anyone told.</summary>
    Proven = 2,

    /// <summary>Reckoned from what was seen of it and of its kin, whatever anyone told.</summary>
    Computed = 3,

    /// <summary>Someone told so, or it follows from what someone told.</summary>
    Told = 4,
}

/// <summary>A part of what a label says of a genotype.</summary>
/// <param name="Text">In the trade's words: <c>Pastel</c>, <c>66% het Clown</c>, <c>100% het Pied</c>.</param>
/// <param name="IsSeen">Whether it can be seen: set bold and upright; else italic.</param>
/// <param name="Note">The exact chance and on what it rests: <c>2 in 3, computed</c>, <c>told by A. Keeper, 2024</c>; empty: it was seen.</param>
/// <param name="ShortNote">The same in fewest letters: <c>2/3</c>, <c>told</c>.</param>
/// <param name="Chance">How likely it holds.</param>
/// <param name="Figure">The percentage in the text; <c>null</c>: it holds none.</param>
/// <param name="Basis">On what it rests.</param>
/// <param name="GeneId">The allele or form in the catalogue; <c>null</c> where it is about several.</param>
public sealed record LabelPart(
    string Text, bool IsSeen, string Note, string ShortNote, Probability Chance, int? Figure, LabelBasis Basis, string? GeneId);

/// <summary>What a label says of a genotype.</summary>
/// <param name="Parts">What can be seen first.</param>
/// <param name="NotTold">What is less likely than 1 % and stands on no label.</param>
/// <param name="AsOf">The day for which it holds.</param>
public sealed record LabelWords(IReadOnlyList<LabelPart> Parts, IReadOnlyList<string> NotTold, DateOnly AsOf)
{
    /// <summary>Gets what can be seen.</summary>
    public IEnumerable<LabelPart> Seen => Parts.Where(p => p.IsSeen);

    /// <summary>Gets what is or may be carried.</summary>
    public IEnumerable<LabelPart> Carried => Parts.Where(p => !p.IsSeen);

    /// <summary>Gets all of it in one line.</summary>
    public string Text => string.Join(", ", new[] { string.Join(' ', Seen.Select(With)) }.Concat(Carried.Select(With)).Where(t => t.Length > 0));

    private static string With(LabelPart part) => part.Note.Length == 0 ? part.Text : $"{part.Text} ({part.Note})";
}
