using Clutchwright.Proofs.Allelisms;

namespace Clutchwright.Desk.Proofs;

/// <summary>Do two genes share a locus?</summary>
/// <param name="Prior">The chance of one locus before counting.</param>
/// <param name="Clutches">The pairs with their young.</param>
public sealed record AllelismQuestion(string Prior, IReadOnlyList<AllelismPairQuestion> Clutches)
{
    /// <summary>Gets the chance that an egg is read as the other kind; <c>null</c> for none.</summary>
    public string? Misread { get; init; }
}

/// <summary>A pair with its young.</summary>
/// <param name="Cross"><c>visual-visual</c>, <c>visual-het</c>, <c>het-het</c> or <c>both-neither</c>.</param>
/// <param name="Telling">Recessives: young that show; visible genes: young with both or neither.</param>
/// <param name="Others">The other young.</param>
public sealed record AllelismPairQuestion(string Cross, int Telling, int Others)
{
    /// <summary>Gets the chance that the parents are what the cross says; <c>null</c> for certain.</summary>
    public string? Carries { get; init; }
}

/// <summary>What the young say.</summary>
/// <param name="Test">The reckoning.</param>
/// <param name="Pairs">One line a pair.</param>
/// <param name="Verdict">What it means, in a sentence.</param>
/// <param name="Notes">What to mind.</param>
public sealed record AllelismAnswer(AllelismTest Test, IReadOnlyList<AllelismLine> Pairs, string Verdict, IReadOnlyList<string> Notes);

/// <summary>One pair.</summary>
/// <param name="Text">The cross in words.</param>
/// <param name="TellingText">What its telling egg is.</param>
/// <param name="Clutch">The pair with its young.</param>
/// <param name="PerTelling">What one telling egg multiplies the odds of one locus by; may be infinite or 0.</param>
/// <param name="PerOther">What one other egg multiplies them by.</param>
/// <param name="EggsFor">Eggs in which a telling one hatches if it can, by percent of confidence.</param>
public sealed record AllelismLine(
    string Text, string TellingText, AllelismClutch Clutch, double PerTelling, double PerOther, IReadOnlyDictionary<int, int?> EggsFor);
