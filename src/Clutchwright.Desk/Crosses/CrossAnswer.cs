using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Desk.Crosses;

/// <summary>What a keeper asks of a pair.</summary>
/// <param name="Sire">A tag of the stock or trade text.</param>
/// <param name="Dam">A tag of the stock or trade text.</param>
public sealed record CrossQuestion(string Sire, string Dam)
{
    /// <summary>Gets the wants as trade text; any number.</summary>
    public IReadOnlyList<string> Wants { get; init; } = [];

    /// <summary>Gets the clutch.</summary>
    public ClutchSetting Clutch { get; init; } = new(null, null, null);

    /// <summary>Gets recombination fractions that replace the catalogue's, by locus id or allele name.</summary>
    public IReadOnlyDictionary<string, double> Recombination { get; init; } = new Dictionary<string, double>();

    /// <summary>Gets how many looks and genotypes are wanted at most.</summary>
    public int Most { get; init; } = 40;

    /// <summary>Gets how many wanted hatchlings the clutch should hold at least.</summary>
    public int AtLeast { get; init; } = 1;
}

/// <summary>What the keeper says of the clutch; what is <c>null</c> comes from the species' biology.</summary>
/// <param name="Eggs">Good eggs: this many fertile eggs that hatch unless their genotype forbids it. Given, it replaces all else.</param>
/// <param name="Fertility">The share of eggs that are fertile, in [0, 1].</param>
/// <param name="HatchRate">The share of fertile eggs that hatch, genotype aside, in [0, 1].</param>
public sealed record ClutchSetting(int? Eggs, double? Fertility, double? HatchRate)
{
    /// <summary>The most eggs that a clutch is taken to hold.</summary>
    public const int MostEggs = 200;

    /// <summary>Gets the eggs laid, good or not; not together with <see cref="Eggs"/>. <c>null</c>: as many as the species lays.</summary>
    public int? Laid { get; init; }
}

/// <summary>One parent as it was understood.</summary>
/// <param name="Asked">What was asked.</param>
/// <param name="Tag">The tag, where it is an animal of the stock.</param>
/// <param name="Sex">Its part in the pair.</param>
/// <param name="Words">Its genotype as believed.</param>
/// <param name="Notes">What was taken for granted, in sentences.</param>
public sealed record ParentAnswer(string Asked, string? Tag, Sex Sex, AnimalWords Words, IReadOnlyList<string> Notes)
{
    /// <summary>Gets its name, where it is an animal of the stock that has one.</summary>
    public string? Name { get; init; }
}

/// <summary>How many of a kind a clutch holds.</summary>
/// <param name="Mean">The mean number.</param>
/// <param name="Low">The 5th percentile.</param>
/// <param name="High">The 95th percentile.</param>
public sealed record CountRange(double Mean, int Low, int High);

/// <summary>A genotype that stays unseen within a look.</summary>
/// <param name="Carries">In the trade's words, for example <c>het Clown</c>.</param>
/// <param name="Chance">Among hatchlings of that look.</param>
public sealed record HiddenLine(string Carries, Probability Chance);

/// <summary>One look that can hatch: what can be told apart by eye on hatch day.</summary>
/// <param name="Name">All that is seen, in trade words; <c>Normal</c> where nothing is.</param>
/// <param name="Label">The trade's name of the combination, or <c>null</c>.</param>
/// <param name="Sex">The sex, where the odds differ by it; <c>null</c>: either.</param>
/// <param name="PerEgg">Of good eggs laid.</param>
/// <param name="PerHatchling">Of live hatchlings.</param>
/// <param name="Hidden">What hatchlings of this look may carry unseen.</param>
/// <param name="Faint">What may show faintly through a form that hides it.</param>
/// <param name="InClutch">How many in this clutch.</param>
/// <param name="AtLeastOne">The chance of one or more in this clutch.</param>
/// <param name="Look">How it looks by age.</param>
public sealed record OutcomeLine(
    string Name,
    string? Label,
    Sex? Sex,
    Probability PerEgg,
    Probability PerHatchling,
    IReadOnlyList<HiddenLine> Hidden,
    IReadOnlyList<string> Faint,
    CountRange InClutch,
    Probability AtLeastOne,
    LookWords Look);

/// <summary>One genotype that can be laid.</summary>
/// <param name="Text">In trade words.</param>
/// <param name="Notation">In genetics' notation.</param>
/// <param name="Sex">The sex, where the odds differ by it; <c>null</c>: either.</param>
/// <param name="PerEgg">Of good eggs laid.</param>
/// <param name="Survival">The share of these that become live hatchlings, relative to others.</param>
public sealed record GenotypeLine(string Text, string Notation, Sex? Sex, Probability PerEgg, Probability Survival);

/// <summary>The odds of one want.</summary>
/// <param name="Text">The want, as asked.</param>
/// <param name="PerEgg">Of good eggs laid: wanted and alive.</param>
/// <param name="PerHatchling">Of live hatchlings.</param>
/// <param name="AtLeastOne">In one clutch.</param>
/// <param name="AtLeast">At least as many as asked, in one clutch.</param>
/// <param name="AtLeastCount">How many were asked.</param>
/// <param name="InClutch">How many in a clutch.</param>
/// <param name="Ceiling">What the chance of at least one can never pass, however many eggs: below 1 where a parent may not carry what is needed.</param>
/// <param name="EggsFor">For 50, 90, 95 and 99 (percent): the fewest good eggs that give at least one; <c>null</c>: no number does.</param>
/// <param name="ClutchesFor">The same in clutches of this pair.</param>
/// <param name="Why">How the figures come about, step by step.</param>
public sealed record WantAnswer(
    string Text,
    Probability PerEgg,
    Probability PerHatchling,
    Probability AtLeastOne,
    Probability AtLeast,
    int AtLeastCount,
    CountRange InClutch,
    Probability Ceiling,
    IReadOnlyDictionary<int, int?> EggsFor,
    IReadOnlyDictionary<int, int?> ClutchesFor,
    IReadOnlyList<WhyStep> Why);

/// <summary>Eggs of a genotype that do not live. An egg with two such genotypes is counted under each.</summary>
/// <param name="Text">The genotype in trade words.</param>
/// <param name="Stage"><c>egg</c>, <c>hatch</c> or <c>first months</c>.</param>
/// <param name="PerEgg">The share of good eggs lost so.</param>
public sealed record LossLine(string Text, string Stage, Probability PerEgg);

/// <summary>A Punnett square over one or two loci.</summary>
/// <param name="Loci">The names of the loci.</param>
/// <param name="SireGametes">What the sire can pass on, with its chances: the rows.</param>
/// <param name="DamGametes">What the dam can pass on: the columns.</param>
/// <param name="Cells">The offspring, row by row: <c>Cells[row][column]</c>.</param>
public sealed record PunnettAnswer(
    IReadOnlyList<string> Loci,
    IReadOnlyList<GameteWords> SireGametes,
    IReadOnlyList<GameteWords> DamGametes,
    IReadOnlyList<IReadOnlyList<PunnettCell>> Cells);

/// <summary>One gamete.</summary>
/// <param name="Text">Alleles in genetics' notation.</param>
/// <param name="Chance">How often the parent passes it on.</param>
public sealed record GameteWords(string Text, Probability Chance);

/// <summary>One cell of a Punnett square.</summary>
/// <param name="Notation">In genetics' notation.</param>
/// <param name="Look">What it shows, in trade words.</param>
/// <param name="Chance">Row times column.</param>
public sealed record PunnettCell(string Notation, string Look, Probability Chance);

/// <summary>What can hatch from a pair, with which odds.</summary>
/// <param name="Sire">The sire as understood.</param>
/// <param name="Dam">The dam as understood.</param>
/// <param name="Outcomes">Looks, likeliest first.</param>
/// <param name="HasMoreOutcomes">Whether there are more looks than were asked for.</param>
/// <param name="OutcomesShare">The share of good eggs that the listed looks make up.</param>
/// <param name="Genotypes">Genotypes, likeliest first.</param>
/// <param name="HasMoreGenotypes">Whether there are more.</param>
/// <param name="Wants">The odds of each want, in the order asked.</param>
/// <param name="Survival">The share of good eggs whose genotype lets them become live hatchlings.</param>
/// <param name="Losses">The genotypes that do not live.</param>
/// <param name="ClutchText">The clutch that was reckoned with, in a sentence, with its source.</param>
/// <param name="MeanGoodEggs">The mean number of eggs that hatch if their genotype lets them.</param>
/// <param name="Punnett">A Punnett square where one or two loci are in play and both parents are certain; else <c>null</c>.</param>
/// <param name="Warnings">Dangers and remarks.</param>
public sealed record CrossAnswer(
    ParentAnswer Sire,
    ParentAnswer Dam,
    IReadOnlyList<OutcomeLine> Outcomes,
    bool HasMoreOutcomes,
    Probability OutcomesShare,
    IReadOnlyList<GenotypeLine> Genotypes,
    bool HasMoreGenotypes,
    IReadOnlyList<WantAnswer> Wants,
    Probability Survival,
    IReadOnlyList<LossLine> Losses,
    string ClutchText,
    double MeanGoodEggs,
    PunnettAnswer? Punnett,
    IReadOnlyList<Warning> Warnings);
