namespace Clutchwright.Pedigrees;

/// <summary>A pedigree in which an animal is its own ancestor; no order of generations exists for it.</summary>
public sealed class PedigreeLoopException : Exception
{
    /// <summary>Names the animals of the loop.</summary>
    /// <param name="animals">Each animal followed by one of its named parents; the last one's parent is the first.</param>
    public PedigreeLoopException(IReadOnlyList<string> animals)
        : base(Say(animals)) => Animals = [.. animals];

    /// <summary>The animals of the loop: each is followed by one of its named parents, and a named parent of the last is the first.</summary>
    public IReadOnlyList<string> Animals { get; }

    /// <summary>The first animal of the loop.</summary>
    public string Animal => Animals[0];

    private static string Say(IReadOnlyList<string> animals)
    {
        ArgumentNullException.ThrowIfNull(animals);
        ArgumentOutOfRangeException.ThrowIfZero(animals.Count);
        return animals.Count == 1
            ? $"{animals[0]} is named as its own parent."
            : $"{animals[0]} is its own ancestor: {string.Join(", child of ", animals)}, child of {animals[0]}.";
    }
}
