namespace Clutchwright.Stock.Happenings;

/// <summary>A line of a round that cannot be written.</summary>
/// <param name="Index">Its place among those given, from 0.</param>
/// <param name="Tag">The animal; null: it is not in the book, or is in the bin.</param>
/// <param name="Problem">Why.</param>
public sealed record RoundRefused(int Index, string? Tag, Problem Problem);
