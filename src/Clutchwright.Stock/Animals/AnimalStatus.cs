namespace Clutchwright.Stock.Animals;

/// <summary>Where an animal is now. Only the first three are in the keeper's room.</summary>
public enum AnimalStatus
{
    Kept = 1,

    /// <summary>Kept back from a clutch to see how it turns out.</summary>
    HeldBack = 2,

    ForSale = 3,
    Sold = 4,
    Given = 5,
    Died = 6,

    /// <summary>Never owned; recorded because it is a parent or relative.</summary>
    Reference = 7,
}
