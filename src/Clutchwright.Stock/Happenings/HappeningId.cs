namespace Clutchwright.Stock.Happenings;

/// <summary>The identity of something that happened. The default is nothing.</summary>
public readonly record struct HappeningId(Guid Value)
{
    public static HappeningId New() => new(Guid.CreateVersion7());

    public override string ToString() => Value.ToString();
}
