using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Desk.Looks;

/// <summary>A look that is looked for.</summary>
/// <param name="Query">What is to be seen, in words: docs/how-to/looks.md.</param>
public sealed record LooksQuestion(string Query)
{
    /// <summary>The difference by CIEDE2000 within which a tone counts as the one asked for, where the query does not say.</summary>
    public const double UsualWithin = 12.0;

    /// <summary>Gets the stage of life; <c>null</c>: as the query says, or else adult.</summary>
    public string? At { get; init; }

    /// <summary>Gets the greatest difference where the query does not say, above 0; <c>null</c>: <see cref="UsualWithin"/>.</summary>
    public double? Within { get; init; }

    /// <summary>Gets the most genes of a composed making, 1 to 3; <c>null</c>: as the query says, or else 2.</summary>
    public int? Genes { get; init; }

    /// <summary>Gets whether only makings of alleles that the stock carries are wanted.</summary>
    public bool FromStock { get; init; }

    /// <summary>Gets whether makings that suffer or die are left out.</summary>
    public bool WithoutHarm { get; init; }

    /// <summary>Gets how many makings are wanted at most.</summary>
    public int Most { get; init; } = 20;
}

/// <summary>One visible form of a making.</summary>
/// <param name="Locus">The locus' id.</param>
/// <param name="Form">The form's name.</param>
/// <param name="GeneId">Opens its entry in the catalogue.</param>
/// <param name="Ways">The pairs of alleles that show it, by name; the one reckoned with first.</param>
public sealed record MadeLocus(string Locus, string Form, string GeneId, IReadOnlyList<string> Ways);

/// <summary>How near a stock is to a making.</summary>
/// <param name="Missing">Alleles that no animal kept is known to carry, by name; empty: all are there.</param>
/// <param name="BestChance">The best pair's chance of at least one this season; <c>null</c>: no pair that may be made can give it.</param>
/// <param name="BestPair">The tags of that pair, sire first.</param>
/// <param name="IsOnlyByLeftOutPairs">Whether only pairs can give it that could also give a lethal or suffering genotype.</param>
public sealed record Nearness(
    IReadOnlyList<string> Missing, Probability? BestChance, (string Sire, string Dam)? BestPair, bool IsOnlyByLeftOutPairs);

/// <summary>What a making's place in the list comes from, in steps of CIEDE2000; the least sum stands first.</summary>
/// <param name="Distance">Of its tones from those asked for.</param>
/// <param name="Doubt">Of the look: grade, composed or recorded, variability.</param>
/// <param name="Alleles">One for each copy it takes.</param>
/// <param name="Stock">How far the stock is from it.</param>
/// <param name="Harm">What the animal suffers.</param>
public sealed record PlaceSteps(double Distance, double Doubt, double Alleles, double Stock, double Harm)
{
    /// <summary>Gets the sum.</summary>
    public double Sum => Distance + Doubt + Alleles + Stock + Harm;
}

/// <summary>A making that shows a look.</summary>
/// <param name="Genotype">In the trade's words; a want as it stands.</param>
/// <param name="Notation">One genotype that shows it, in genetics' notation.</param>
/// <param name="Label">The trade's names for it together; <c>null</c>: none.</param>
/// <param name="Loci">What it is made of.</param>
/// <param name="Look">How it looks over life, and on what ground.</param>
/// <param name="At">Its colours at the stage looked at.</param>
/// <param name="Alleles">How many copies of mutant alleles it takes.</param>
/// <param name="Warnings">Its dangers, gravest first.</param>
public sealed record Making(
    string Genotype,
    string Notation,
    string? Label,
    IReadOnlyList<MadeLocus> Loci,
    LookWords Look,
    StageWords? At,
    int Alleles,
    IReadOnlyList<Warning> Warnings)
{
    /// <summary>Gets the greatest difference by CIEDE2000 from the tones asked for; <c>null</c>: no tone was asked for.</summary>
    public double? Distance { get; init; }

    /// <summary>Gets what its place comes from; <c>null</c> outside a list.</summary>
    public PlaceSteps? Steps { get; init; }

    /// <summary>Gets how near the stock is; <c>null</c>: there is no stock to speak of.</summary>
    public Nearness? Nearness { get; init; }

    /// <summary>Gets the seasons a route from the stock to it takes; <c>null</c>: not known.</summary>
    public int? SeasonsNeeded { get; init; }
}

/// <summary>The makings that show a look, best first.</summary>
/// <param name="Query">What was asked, as it was written.</param>
/// <param name="Understood">What was understood, in a sentence.</param>
/// <param name="Stage">The stage of life that colours are told of.</param>
/// <param name="Makings">Best first.</param>
/// <param name="IsMore">Whether there are more than were wanted.</param>
/// <param name="Notes">Remarks in sentences.</param>
public sealed record LooksAnswer(
    string Query, string Understood, string Stage, IReadOnlyList<Making> Makings, bool IsMore, IReadOnlyList<string> Notes);
