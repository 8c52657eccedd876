using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Desk.Animals;

/// <summary>Which animals to list, and how.</summary>
public sealed record AnimalsQuestion
{
    /// <summary>The status that asks for the animals in the bin.</summary>
    public const string Bin = "Bin";

    /// <summary>Gets text to look for in tag, name, statements and notes; <c>null</c>: all.</summary>
    public string? Find { get; init; }

    /// <summary>Gets the sex; <c>null</c>: all.</summary>
    public Sex? Sex { get; init; }

    /// <summary>Gets whether only animals that are not sexed are wanted.</summary>
    public bool IsUnsexed { get; init; }

    /// <summary>Gets the status as text (<c>Kept</c>, <c>HeldBack</c>, ...), or <see cref="Bin"/>; <c>null</c>: all that are not in the bin.</summary>
    public string? Status { get; init; }

    /// <summary>Gets the order: <c>tag</c>, <c>name</c>, <c>hatched</c> (youngest first) or <c>added</c> (lately added first).</summary>
    public string Order { get; init; } = "tag";

    /// <summary>Gets the page, from 1.</summary>
    public int Page { get; init; } = 1;

    /// <summary>Gets the number of animals a page.</summary>
    public int PageSize { get; init; } = 50;
}

/// <summary>One animal of a list.</summary>
/// <param name="Tag">The keeper's id of it.</param>
/// <param name="Name">Its name, if any.</param>
/// <param name="Sex">Its sex; <c>null</c>: not known.</param>
/// <param name="Hatched">When it hatched, in words; <c>null</c>: not known.</param>
/// <param name="Status">As text.</param>
/// <param name="Words">Its genotype as believed.</param>
/// <param name="HasProblem">Whether a statement of it cannot be read or contradicts another.</param>
public sealed record AnimalLine(
    string Tag, string? Name, Sex? Sex, string? Hatched, string Status, AnimalWords Words, bool HasProblem);

/// <summary>A page of animals.</summary>
/// <param name="Animals">The animals of this page.</param>
/// <param name="Total">How many there are in all.</param>
/// <param name="Page">The page, from 1.</param>
/// <param name="PageSize">Animals a page.</param>
public sealed record AnimalsAnswer(IReadOnlyList<AnimalLine> Animals, int Total, int Page, int PageSize);

/// <summary>What an animal carries at one locus, as believed.</summary>
/// <param name="Locus">The locus' name.</param>
/// <param name="Possibilities">Pairs of alleles in trade words, likeliest first, with their chances.</param>
/// <param name="Why">From what the belief comes, step by step.</param>
public sealed record BeliefLine(string Locus, IReadOnlyList<HiddenLineOfAnimal> Possibilities, IReadOnlyList<WhyStep> Why);

/// <summary>One possible pair of alleles at a locus.</summary>
/// <param name="Text">In trade words.</param>
/// <param name="Notation">In genetics' notation.</param>
/// <param name="Chance">Its chance.</param>
public sealed record HiddenLineOfAnimal(string Text, string Notation, Probability Chance);

/// <summary>One statement about an animal.</summary>
/// <param name="Id">For withdrawing it.</param>
/// <param name="Kind">As text, for example <c>Seen</c>.</param>
/// <param name="Text">Trade text.</param>
/// <param name="Who">By whom; <c>null</c>: not said.</param>
/// <param name="When">In words; <c>null</c>: not said.</param>
/// <param name="Confidence">How sure, in [0, 1].</param>
public sealed record StatementLine(Guid Id, string Kind, string Text, string? Who, string? When, double Confidence);

/// <summary>One deed of the book.</summary>
/// <param name="Id">For undoing it.</param>
/// <param name="When">The instant, UTC.</param>
/// <param name="Who">By whom.</param>
/// <param name="Words">What was done.</param>
/// <param name="IsUndone">Whether it has been undone.</param>
/// <param name="Changes">What changed: field, before, after.</param>
public sealed record DeedLine(
    long Id, DateTimeOffset When, string Who, string Words, bool IsUndone, IReadOnlyList<ChangeLine> Changes);

/// <summary>One field that a deed changed.</summary>
/// <param name="Record">The record, in words.</param>
/// <param name="Field">The field.</param>
/// <param name="Before">Before; <c>null</c>: empty.</param>
/// <param name="After">After; <c>null</c>: empty.</param>
public sealed record ChangeLine(string Record, string Field, string? Before, string? After);

/// <summary>One animal, whole.</summary>
/// <param name="Line">Its line.</param>
/// <param name="Sire">Its sire, if known.</param>
/// <param name="Dam">Its dam, if known.</param>
/// <param name="PossibleSires">Tags of several possible sires.</param>
/// <param name="Offspring">Its young.</param>
/// <param name="PossibleOffspring">Animals of which it is one of several possible sires.</param>
/// <param name="MassGrams">Its last mass in grams.</param>
/// <param name="Notes">The keeper's notes.</param>
/// <param name="Statements">What was said of it.</param>
/// <param name="Beliefs">What it carries, by locus.</param>
/// <param name="Look">How it looks by age.</param>
/// <param name="Dangers">Dangers of its own genotype.</param>
/// <param name="Problems">Statements that cannot be read or contradict each other, in sentences.</param>
/// <param name="History">The deeds that touched it, latest first.</param>
/// <param name="IsInBin">Whether it lies in the bin.</param>
/// <param name="Version">For noticing that someone else changed it meanwhile.</param>
public sealed record AnimalAnswer(
    AnimalLine Line,
    AnimalLine? Sire,
    AnimalLine? Dam,
    IReadOnlyList<string> PossibleSires,
    IReadOnlyList<AnimalLine> Offspring,
    IReadOnlyList<AnimalLine> PossibleOffspring,
    int? MassGrams,
    string? Notes,
    IReadOnlyList<StatementLine> Statements,
    IReadOnlyList<BeliefLine> Beliefs,
    LookWords Look,
    IReadOnlyList<Warning> Dangers,
    IReadOnlyList<string> Problems,
    IReadOnlyList<DeedLine> History,
    bool IsInBin,
    Guid Version);

/// <summary>An animal as a form holds it.</summary>
public sealed record AnimalForm
{
    /// <summary>Gets the keeper's id of it.</summary>
    public string Tag { get; init; } = string.Empty;

    /// <summary>Gets its name.</summary>
    public string? Name { get; init; }

    /// <summary>Gets <c>m</c>, <c>f</c> or <c>u</c>.</summary>
    public string Sex { get; init; } = "u";

    /// <summary>Gets when it hatched: a date, a year or words such as <c>about March 2024</c>.</summary>
    public string? Hatched { get; init; }

    /// <summary>Gets the sire's tag; several possible ones with <c>|</c> between.</summary>
    public string? Sire { get; init; }

    /// <summary>Gets the dam's tag.</summary>
    public string? Dam { get; init; }

    /// <summary>Gets what is seen, as trade text; <c>normal</c>: looked at, shows nothing; empty: not looked at.</summary>
    public string? Seen { get; init; }

    /// <summary>Gets what a seller or breeder said, as trade text.</summary>
    public string? Told { get; init; }

    /// <summary>Gets what was ruled out, as trade text.</summary>
    public string? RuledOut { get; init; }

    /// <summary>Gets the status as text.</summary>
    public string Status { get; init; } = "Kept";

    /// <summary>Gets the mass in grams.</summary>
    public string? MassGrams { get; init; }

    /// <summary>Gets notes.</summary>
    public string? Notes { get; init; }

    /// <summary>Gets the version the form was opened with; <c>null</c> for a new animal.</summary>
    public Guid? Version { get; init; }
}
