namespace Clutchwright.Desk.Words;

/// <summary>A way to go on with trade text.</summary>
/// <param name="Text">What to put in.</param>
/// <param name="From">Where the replaced part begins, from 0.</param>
/// <param name="Length">How long it is.</param>
/// <param name="Hint">What it is, in a few words.</param>
public sealed record Completion(string Text, int From, int Length, string Hint);
