namespace Clutchwright.Stock.Animals;

/// <summary>Which animals are in the keeper's room.</summary>
public static class AnimalPlaces
{
    /// <summary>The statuses of animals in the keeper's room.</summary>
    public static IReadOnlyList<AnimalStatus> Here { get; } = [AnimalStatus.Kept, AnimalStatus.HeldBack, AnimalStatus.ForSale];

    /// <summary>Says whether an animal of this status is in the keeper's room.</summary>
    public static bool IsHere(this AnimalStatus status) => Here.Contains(status);
}
