namespace Clutchwright.Pedigrees;

/// <summary>One animal of a pedigree and the parents that are named for it.</summary>
/// <remarks>Compared by reference. Keys are compared ordinally, so <c>a1</c> and <c>A1</c> are two animals.</remarks>
public sealed class PedigreeAnimal
{
    /// <summary>Names an animal and its parents.</summary>
    /// <param name="key">What the animal is known by; not empty.</param>
    /// <param name="sire">The key of its father, or null if he is not known.</param>
    /// <param name="dam">The key of its mother, or null if she is not known.</param>
    /// <param name="possibleSires">The keys of the males of which one is the father, if it is not known which.</param>
    /// <exception cref="ArgumentException">A key is empty, or both a sire and possible sires are given.</exception>
    public PedigreeAnimal(string key, string? sire = null, string? dam = null, IReadOnlyList<string>? possibleSires = null)
    {
        ArgumentException.ThrowIfNullOrEmpty(key);
        if (sire is { Length: 0 } || dam is { Length: 0 })
        {
            throw new ArgumentException("A parent that is not known is null, not empty.", sire is { Length: 0 } ? nameof(sire) : nameof(dam));
        }

        PossibleSires = possibleSires is null ? [] : [.. possibleSires];
        if (sire is not null && PossibleSires.Count > 0)
        {
            throw new ArgumentException("An animal has a known sire or possible sires, not both.", nameof(possibleSires));
        }

        Key = key;
        Sire = sire;
        Dam = dam;
    }

    /// <summary>What the animal is known by.</summary>
    public string Key { get; }

    /// <summary>The key of the father; null if not known.</summary>
    public string? Sire { get; }

    /// <summary>The key of the mother; null if not known.</summary>
    public string? Dam { get; }

    /// <summary>The keys of the males of which one is the father; empty if the sire is known or nothing is known of him.</summary>
    public IReadOnlyList<string> PossibleSires { get; }

    /// <summary>Whether no parent is known, not even a possible one.</summary>
    public bool IsFounder => Sire is null && Dam is null && PossibleSires.Count == 0;

    /// <summary>Every parent named, certain or possible: sire, possible sires, dam.</summary>
    public IEnumerable<string> NamedParents()
    {
        if (Sire is not null)
        {
            yield return Sire;
        }

        foreach (var possible in PossibleSires)
        {
            yield return possible;
        }

        if (Dam is not null)
        {
            yield return Dam;
        }
    }

    /// <inheritdoc/>
    public override string ToString() =>
        $"{Key} ({Sire ?? (PossibleSires.Count > 0 ? string.Join('|', PossibleSires) : "?")} x {Dam ?? "?"})";
}
