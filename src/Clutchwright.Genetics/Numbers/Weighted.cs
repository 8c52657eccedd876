namespace Clutchwright.Genetics.Numbers;

/// <summary>One of several alternatives with its probability.</summary>
/// <param name="Value">The alternative.</param>
/// <param name="Weight">Its probability among the alternatives it stands with.</param>
public readonly record struct Weighted<T>(T Value, Probability Weight);
