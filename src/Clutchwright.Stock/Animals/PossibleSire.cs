namespace Clutchwright.Stock.Animals;

/// <summary>One of the males of which one is the father of an animal.</summary>
internal sealed class PossibleSire
{
    public PossibleSire(AnimalId offspringId, AnimalId sireId)
    {
        OffspringId = offspringId;
        SireId = sireId;
    }

    public AnimalId OffspringId { get; private set; }

    public AnimalId SireId { get; private set; }

    public Animal? Sire { get; private set; }
}
