using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Desk.Carry;

/// <summary>What is new in the beliefs of the stock since a keeper last looked through them.</summary>
/// <param name="Contradictions">How many sets of records there are that cannot all be true.</param>
/// <param name="Moves">The beliefs that moved, the farthest first.</param>
/// <param name="Since">When the keeper last looked, UTC; <c>null</c>: never, so that nothing counts as new.</param>
/// <param name="Mark">Stands for the book as it is now: to be kept by whoever looked, and handed over the next time.</param>
public sealed record CarryNews(
    int Contradictions, IReadOnlyList<CarryMove> Moves, DateTimeOffset? Since, string Mark);

/// <summary>A belief that moved: the possibility whose chance changed most.</summary>
/// <param name="Tag">The animal.</param>
/// <param name="Name">Its name, if any.</param>
/// <param name="Sex">Its sex; <c>null</c>: not known.</param>
/// <param name="Locus">The locus' name.</param>
/// <param name="Words">The possibility, in trade words.</param>
/// <param name="Was">Its chance then.</param>
/// <param name="Now">Its chance now.</param>
public sealed record CarryMove(string Tag, string? Name, Sex? Sex, string Locus, string Words, Probability Was, Probability Now);
