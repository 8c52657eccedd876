namespace Clutchwright.Desk.Words;

/// <summary>A file that a keeper hands over with a question.</summary>
/// <param name="Name">What it is called, for what is said about it.</param>
/// <param name="Content">Its bytes.</param>
public sealed record NamedFile(string Name, ReadOnlyMemory<byte> Content);
