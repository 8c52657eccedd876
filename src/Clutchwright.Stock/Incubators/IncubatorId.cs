namespace Clutchwright.Stock.Incubators;

/// <summary>The identity of an incubator. The default is none.</summary>
public readonly record struct IncubatorId(Guid Value)
{
    public static IncubatorId New() => new(Guid.CreateVersion7());

    public override string ToString() => Value.ToString();
}
