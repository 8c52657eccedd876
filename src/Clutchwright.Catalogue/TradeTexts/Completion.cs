namespace Clutchwright.Catalogue.TradeTexts;

/// <summary>A way to go on with a trade text that is being typed.</summary>
/// <param name="Text">What to put in place of the replaced stretch.</param>
/// <param name="Start">The first character replaced, from 0.</param>
/// <param name="Length">How many characters are replaced; 0: none, the text is put in.</param>
/// <param name="For">The catalogue's name, where <paramref name="Text"/> was found by another spelling of it; else <c>null</c>.</param>
public sealed record Completion(string Text, int Start, int Length, string? For);
