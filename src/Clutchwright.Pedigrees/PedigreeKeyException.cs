namespace Clutchwright.Pedigrees;

/// <summary>A pedigree that lists an animal twice, or names a parent that it does not list.</summary>
public sealed class PedigreeKeyException : Exception
{
    private PedigreeKeyException(string message, string animal, string? parent)
        : base(message)
    {
        Animal = animal;
        Parent = parent;
    }

    /// <summary>The animal listed twice, or whose parent is missing.</summary>
    public string Animal { get; }

    /// <summary>The parent that is not listed; null if the animal is listed twice.</summary>
    public string? Parent { get; }

    internal static PedigreeKeyException Twice(string animal) => new($"{animal} is listed twice.", animal, null);

    internal static PedigreeKeyException Missing(string animal, string parent) =>
        new($"{parent}, named as a parent of {animal}, is not listed.", animal, parent);
}
