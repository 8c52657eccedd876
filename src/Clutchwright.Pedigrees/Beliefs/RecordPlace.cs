namespace Clutchwright.Pedigrees.Beliefs;

/// <summary>One record of one animal.</summary>
/// <param name="Key">The animal's key.</param>
/// <param name="Index">The place in its list of observations, from 0.</param>
public readonly record struct RecordPlace(string Key, int Index);
