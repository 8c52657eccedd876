namespace Clutchwright.Stock.Seasons;

/// <summary>The identity of a season that is kept in the book. The default is no season.</summary>
public readonly record struct KeptSeasonId(Guid Value)
{
    public static KeptSeasonId New() => new(Guid.CreateVersion7());

    public override string ToString() => Value.ToString();
}
