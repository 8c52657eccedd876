using Clutchwright.Genetics.Loci;

namespace Clutchwright.Stock.Animals;

/// <summary>What a keeper enters of an animal. Text is trimmed when it is taken into the book.</summary>
public sealed class AnimalEntry
{
    /// <summary>The keeper's own id: 1 to 60 characters in one line, without <c>|</c>; unique whatever the case.</summary>
    public required string Tag { get; init; }

    public string? Name { get; init; }

    /// <summary>Null while unsexed.</summary>
    public Sex? Sex { get; init; }

    public DateRange? Hatched { get; init; }

    public AnimalId? SireId { get; init; }

    public AnimalId? DamId { get; init; }

    /// <summary>If it is not known which of several males is the father: two or more. Not together with <see cref="SireId"/>.</summary>
    public IReadOnlyList<AnimalId> PossibleSires { get; init; } = [];

    public AnimalStatus Status { get; init; } = AnimalStatus.Kept;

    public double? MassGrams { get; init; }

    public string Notes { get; init; } = "";
}
