namespace Clutchwright.Stock.Animals;

/// <summary>The identity of an animal in the book; not shown to the keeper, whose own id is the <see cref="Animal.Tag"/>.
/// The default is no animal.</summary>
public readonly record struct AnimalId(Guid Value)
{
    public static AnimalId New() => new(Guid.CreateVersion7());

    public override string ToString() => Value.ToString();
}
