namespace Clutchwright.Stock.Incubators;

/// <summary>The identity of a reading. The default is none.</summary>
public readonly record struct ReadingId(Guid Value)
{
    public static ReadingId New() => new(Guid.CreateVersion7());

    public override string ToString() => Value.ToString();
}
