namespace Clutchwright.Stock.Clutches;

/// <summary>The identity of a clutch. The default is no clutch.</summary>
public readonly record struct ClutchId(Guid Value)
{
    public static ClutchId New() => new(Guid.CreateVersion7());

    public override string ToString() => Value.ToString();
}
