using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Desk.Pairs;

/// <summary>Which pairs of the stock give a want.</summary>
/// <param name="Want">Trade text.</param>
public sealed record PairsQuestion(string Want)
{
    /// <summary>Gets how many pairs are wanted at most.</summary>
    public int Most { get; init; } = 50;

    /// <summary>Gets the good eggs a clutch has; <c>null</c>: from the species' biology.</summary>
    public int? Eggs { get; init; }

    /// <summary>Gets recombination fractions that replace the catalogue's.</summary>
    public IReadOnlyDictionary<string, double> Recombination { get; init; } = new Dictionary<string, double>();
}

/// <summary>One animal of a pair.</summary>
/// <param name="Tag">Its tag.</param>
/// <param name="Name">Its name, if it has one.</param>
/// <param name="Words">Its genotype as believed.</param>
public sealed record PairAnimal(string Tag, string? Name, AnimalWords Words);

/// <summary>One pair that can give the want.</summary>
/// <param name="Sire">The male.</param>
/// <param name="Dam">The female.</param>
/// <param name="PerEgg">Of good eggs laid.</param>
/// <param name="ThisSeason">The chance of at least one wanted hatchling this season, the chance that she lays included.</param>
/// <param name="Ceiling">What it can never pass, however many eggs.</param>
/// <param name="Watch">Dangers that are told but do not leave the pair out, and, if the two are kin, what that means for their young.</param>
/// <param name="Kin">How related the two are.</param>
public sealed record PairLine(
    PairAnimal Sire, PairAnimal Dam, Probability PerEgg, Probability ThisSeason, Probability Ceiling, IReadOnlyList<Warning> Watch, PairKin Kin);

/// <summary>A pair that was left out.</summary>
/// <param name="Sire">The male.</param>
/// <param name="Dam">The female.</param>
/// <param name="ThisSeason">What its chance would have been.</param>
/// <param name="Why">The dangers, gravest first.</param>
public sealed record LeftOutPair(PairAnimal Sire, PairAnimal Dam, Probability ThisSeason, IReadOnlyList<Warning> Why);

/// <summary>The pairs that give a want, best first.</summary>
/// <param name="Want">The want, as understood.</param>
/// <param name="Pairs">Pairs, best first.</param>
/// <param name="PairsThatCan">How many pairs can give it, those left out not counted.</param>
/// <param name="LeftOut">Pairs that could give it but can also give a lethal or suffering genotype, best first; at most as many as asked.</param>
/// <param name="LeftOutCount">How many these are in all.</param>
/// <param name="MalesLooked">How many males were looked at.</param>
/// <param name="FemalesLooked">How many females were looked at.</param>
/// <param name="ClutchText">The clutch that was reckoned with, in a sentence.</param>
/// <param name="Notes">Remarks in sentences, for example what no animal of the stock carries.</param>
public sealed record PairsAnswer(
    string Want,
    IReadOnlyList<PairLine> Pairs,
    int PairsThatCan,
    IReadOnlyList<LeftOutPair> LeftOut,
    int LeftOutCount,
    int MalesLooked,
    int FemalesLooked,
    string ClutchText,
    IReadOnlyList<string> Notes);
