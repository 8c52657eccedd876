namespace Clutchwright.Pedigrees.Beliefs;

/// <summary>A record that is in doubt as a whole, at one group.</summary>
/// <param name="Node">The animal's node.</param>
/// <param name="Index">The place in the list of observations.</param>
/// <param name="IfRight">The weights by state if it is right.</param>
/// <param name="IfWrong">The weights by state if it is not.</param>
/// <param name="Right">The weight of its being right.</param>
/// <param name="Wrong">The weight of its being wrong.</param>
/// <param name="IsStart">Whether a founder starts from it here: then both weights are those of the whole record.</param>
internal sealed record DoubtedRecord(int Node, int Index, double[] IfRight, double[] IfWrong, double Right, double Wrong, bool IsStart);
