using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Desk.Carry;

/// <summary>Where the belief that an animal carries an allele comes from.</summary>
/// <param name="Tag">The animal.</param>
/// <param name="Locus">The locus' name.</param>
/// <param name="Allele">The allele's name.</param>
/// <param name="Prior">The chance before any record but what founders start with.</param>
/// <param name="Chance">The chance by all records.</param>
/// <param name="Steps">The records that change something, in order.</param>
/// <param name="Why">All of it in sentences, start and end among them.</param>
/// <param name="Settles">What is not recorded yet and would tell most, the most telling first.</param>
public sealed record ExplainedBelief(
    string Tag,
    string Locus,
    string Allele,
    Probability Prior,
    Probability Chance,
    IReadOnlyList<ExplainedStep> Steps,
    IReadOnlyList<WhyStep> Why,
    IReadOnlyList<SettlingLine> Settles);

/// <summary>One step of it.</summary>
/// <param name="Kind">As text: <c>Own</c>, <c>Kin</c>, <c>Clutch</c>, <c>Several</c>.</param>
/// <param name="Animals">The tags of the animals whose records these are.</param>
/// <param name="Text">In a sentence.</param>
/// <param name="Factor">How many times the odds grow; 0: rules it out, infinity: makes it certain.</param>
/// <param name="Chance">The chance after it.</param>
/// <param name="RestsOn">The same given all other records; 1: without it the belief would be the same; NaN: not reckoned.</param>
public sealed record ExplainedStep(string Kind, IReadOnlyList<string> Animals, string Text, double Factor, Probability Chance, double RestsOn);

/// <summary>Something that is not recorded yet and would tell.</summary>
/// <param name="Kind">As text: <c>Look</c>, <c>DnaTest</c>, <c>TestPairing</c>.</param>
/// <param name="Text">In a sentence.</param>
/// <param name="Bits">The expected drop in entropy, in bits.</param>
/// <param name="Chance">The chance that it leaves less than 1 % or more than 99 %.</param>
public sealed record SettlingLine(string Kind, string Text, double Bits, Probability Chance);
