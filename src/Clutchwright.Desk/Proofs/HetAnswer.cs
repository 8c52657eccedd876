using Clutchwright.Genetics.Numbers;
using Clutchwright.Proofs.Hets;

namespace Clutchwright.Desk.Proofs;

/// <summary>Is this animal het?</summary>
/// <param name="Prior">The chance before its young: <c>2/3</c>, <c>66%</c>, <c>0.5</c>.</param>
/// <param name="Mates">The mates, each with its young.</param>
public sealed record HetQuestion(string Prior, IReadOnlyList<HetMateQuestion> Mates)
{
    /// <summary>Gets the chance below which the animal counts as not het; <c>null</c> for 1 %.</summary>
    public string? Below { get; init; }
}

/// <summary>A mate with its young.</summary>
/// <param name="Mate"><c>visual</c>, <c>het</c>, or a possible het: <c>66% het</c>.</param>
/// <param name="Normals">Young that do not show it.</param>
/// <param name="Visuals">Young that show it.</param>
public sealed record HetMateQuestion(string Mate, int Normals, int Visuals)
{
    /// <summary>Gets the chance that the mate carries, if it is not said in <see cref="Mate"/>.</summary>
    public string? Prior { get; init; }
}

/// <summary>What the young say.</summary>
/// <param name="Proof">The reckoning.</param>
/// <param name="Mates">One line a mate.</param>
/// <param name="Below">The bound for "not het".</param>
/// <param name="Verdict">What it means, in a sentence.</param>
/// <param name="Notes">What was taken so, and what to mind.</param>
public sealed record HetAnswer(
    HetProof Proof, IReadOnlyList<HetMateLine> Mates, Probability Below, string Verdict, IReadOnlyList<string> Notes);

/// <summary>One mate.</summary>
/// <param name="Text">What it is, in words.</param>
/// <param name="Mate">The mate with its young.</param>
/// <param name="Carries">The chance that it carries, everything counted.</param>
/// <param name="BayesFactor">What its young multiply the odds of het by; 0 or more, <c>null</c> where a visual has settled it.</param>
/// <param name="EggsFor">The eggs in which a true het would have shown itself, by percent of confidence; <c>null</c> where no number is enough.</param>
/// <param name="EggsUntilBelow">Further normal young of this mate until the posterior falls to the bound; <c>null</c> where none do.</param>
/// <param name="After">The posterior after each of the next normal young, from none on.</param>
public sealed record HetMateLine(
    string Text,
    TestMate Mate,
    Probability Carries,
    double? BayesFactor,
    IReadOnlyDictionary<int, int?> EggsFor,
    int? EggsUntilBelow,
    IReadOnlyList<Probability> After);
