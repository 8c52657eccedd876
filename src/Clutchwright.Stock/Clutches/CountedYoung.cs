using Clutchwright.Genetics.Loci;

namespace Clutchwright.Stock.Clutches;

/// <summary>Young of a clutch that look alike and of which only the number was kept.</summary>
/// <param name="Seen">Trade text of what they show; <c>normal</c>: they show nothing.</param>
/// <param name="Sex">Their sex; null: not told.</param>
/// <param name="Count">How many, at least one.</param>
public sealed record CountedYoung(string Seen, Sex? Sex, int Count);
