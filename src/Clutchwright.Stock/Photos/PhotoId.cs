namespace Clutchwright.Stock.Photos;

/// <summary>The identity of a photo. The default is none.</summary>
public readonly record struct PhotoId(Guid Value)
{
    public static PhotoId New() => new(Guid.CreateVersion7());

    public override string ToString() => Value.ToString();
}
