namespace Clutchwright.Stock.Statements;

/// <summary>Asks the reader of trade text whether it understands a text. The book does not know the genes itself.</summary>
/// <param name="column">What the text is: <c>seen</c>, <c>told</c>, <c>ruled_out</c>, <c>dna_test</c> or <c>proven</c>.</param>
/// <param name="text">The text, trimmed and not empty.</param>
/// <returns>What is wrong with it; null if it can be read.</returns>
public delegate TradeTextProblem? CheckTradeText(string column, string text);

/// <summary>Why a trade text cannot be read.</summary>
/// <param name="What">What is wrong, for the keeper.</param>
/// <param name="WouldBeRight">The nearest that would be right, if there is one.</param>
/// <param name="Position">Where in the text, from 0; null if the whole text is meant.</param>
public sealed record TradeTextProblem(string What, string? WouldBeRight = null, int? Position = null);
