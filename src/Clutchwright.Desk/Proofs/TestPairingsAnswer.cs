using Clutchwright.Desk.Crosses;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Proofs.TestPairings;

namespace Clutchwright.Desk.Proofs;

/// <summary>Which mate settles a doubt soonest?</summary>
public sealed record TestPairingsQuestion
{
    /// <summary>Gets the doubt: <c>het</c>, <c>allelism</c> or <c>linkage</c>.</summary>
    public string About { get; init; } = "het";

    /// <summary>Gets the animal in doubt, a tag or trade text; <c>null</c> where <see cref="Mates"/> are given. Only for <c>het</c>.</summary>
    public string? Animal { get; init; }

    /// <summary>Gets the gene it may carry, with <see cref="Animal"/>.</summary>
    public string? Gene { get; init; }

    /// <summary>Gets the chance of the claim before; <c>null</c> for what the stock says, or 1/2.</summary>
    public string? Prior { get; init; }

    /// <summary>Gets the mates or crosses to compare: <c>visual</c>, <c>het</c>, <c>66% het</c>; for allelism <c>visual-visual</c> and so on; for
    /// linkage <c>known</c> or <c>unknown</c>. With an animal, none: every possible mate of the stock.</summary>
    public IReadOnlyList<string> Mates { get; init; } = [];

    /// <summary>Gets the recombination fraction that linkage would have; only for <c>linkage</c>.</summary>
    public double Recombination { get; init; }

    /// <summary>Gets what counts as an answer; <c>null</c> for 95 %.</summary>
    public string? Sure { get; init; }

    /// <summary>Gets the clutch.</summary>
    public ClutchSetting Clutch { get; init; } = new(null, null, null);

    /// <summary>Gets how many pairings are listed at most.</summary>
    public int Most { get; init; } = 20;
}

/// <summary>Pairings ranked.</summary>
/// <param name="Claim">What is in doubt, as a sentence.</param>
/// <param name="Prior">Its chance before.</param>
/// <param name="Sure">What counts as an answer.</param>
/// <param name="Pairings">Best first.</param>
/// <param name="Looked">How many were compared.</param>
/// <param name="ClutchText">The clutch reckoned with.</param>
/// <param name="Verdict">What it means, in a sentence.</param>
/// <param name="Notes">What to mind.</param>
public sealed record TestPairingsAnswer(
    string Claim,
    Probability Prior,
    Probability Sure,
    IReadOnlyList<TestPairingLine> Pairings,
    int Looked,
    string ClutchText,
    string Verdict,
    IReadOnlyList<string> Notes);

/// <summary>One pairing.</summary>
/// <param name="Name">The mate's tag, or what it is.</param>
/// <param name="Words">What the mate is, in words; empty where the name says it.</param>
/// <param name="Worth">What it is worth.</param>
/// <param name="EggsFor">Eggs, one after the other, after which the doubt is settled with 50, 90 and 95 %; <c>null</c> where no number up to
/// the limit does.</param>
public sealed record TestPairingLine(string Name, string Words, PairingWorth Worth, IReadOnlyDictionary<int, int?> EggsFor);
