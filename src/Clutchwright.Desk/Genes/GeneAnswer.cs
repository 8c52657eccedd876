using Clutchwright.Desk.Words;

namespace Clutchwright.Desk.Genes;

/// <summary>One line of the catalogue's list.</summary>
/// <param name="Id">Opens the entry.</param>
/// <param name="Name">As the trade writes it.</param>
/// <param name="Kind"><c>allele</c>, <c>form</c> or <c>combination</c>.</param>
/// <param name="Inheritance">In words, for example <c>recessive</c>, <c>sex-linked, incomplete dominant</c>; empty for combinations.</param>
/// <param name="Locus">The locus' name; <c>null</c> for combinations.</param>
/// <param name="Summary">What it looks like, in a few words.</param>
/// <param name="Severity">The gravest danger: <c>lethal</c>, <c>suffering</c>, <c>watch</c>, or <c>null</c>.</param>
/// <param name="Stages">For a small tone strip; may be empty.</param>
public sealed record GeneLine(
    string Id, string Name, string Kind, string Inheritance, string? Locus, string Summary, string? Severity, IReadOnlyList<StageWords> Stages);

/// <summary>A statement with its grade and sources.</summary>
/// <param name="Heading">For example <c>One copy</c>.</param>
/// <param name="Text">In a sentence or two.</param>
/// <param name="Grade">How well it is known, in words; <c>null</c> where that stands elsewhere.</param>
/// <param name="Sources">Citations.</param>
public sealed record Claim(string Heading, string Text, string? Grade, IReadOnlyList<string> Sources);

/// <summary>One entry of the catalogue, whole.</summary>
/// <param name="Line">The entry's line.</param>
/// <param name="Also">Other names.</param>
/// <param name="Claims">What is known: inheritance, locus, looks of one and two copies, change with age.</param>
/// <param name="Neighbours">Other alleles of its locus and the pair each makes with it: name, gene id, what the pair shows.</param>
/// <param name="Looks">Tone strips of its makings.</param>
/// <param name="PartOf">Combinations that it is part of (for a combination: what it is made of).</param>
/// <param name="Hides">What it hides and what hides it, in sentences.</param>
/// <param name="Dangers">Its dangers.</param>
public sealed record GeneAnswer(
    GeneLine Line,
    IReadOnlyList<string> Also,
    IReadOnlyList<Claim> Claims,
    IReadOnlyList<Neighbour> Neighbours,
    IReadOnlyList<LookWords> Looks,
    IReadOnlyList<GeneLine> PartOf,
    IReadOnlyList<string> Hides,
    IReadOnlyList<Warning> Dangers);

/// <summary>Another allele of the same locus.</summary>
/// <param name="Id">Its entry.</param>
/// <param name="Name">Its name.</param>
/// <param name="PairName">What the two make together.</param>
/// <param name="Shows">What that looks like, if known.</param>
public sealed record Neighbour(string Id, string Name, string PairName, string? Shows);
