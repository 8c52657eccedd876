namespace Clutchwright.Genetics.Meiosis;

/// <summary>What one parent passes on at one linkage group.</summary>
/// <param name="Haplotype">The haplotype's code in its group.</param>
/// <param name="CarriesUnshared">Whether it comes with Y or W; always false outside the sex chromosomes of the sex that has two different ones.</param>
public readonly record struct Gamete(int Haplotype, bool CarriesUnshared);
