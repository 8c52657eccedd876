namespace Clutchwright.Stock.Statements;

/// <summary>The result of a DNA test for what the statement's text names, and how far the test can be trusted.</summary>
/// <param name="Found">Whether the test found it.</param>
/// <param name="Sensitivity">The chance that the test finds it where it is, above 0 and at most 1.</param>
/// <param name="Specificity">The chance that the test finds nothing where it is not, above 0 and at most 1.</param>
public sealed record DnaTest(bool Found, double Sensitivity, double Specificity);
