namespace Clutchwright.Stock.Settings;

/// <summary>The identity of a kept setting. The default is none.</summary>
public readonly record struct SettingId(Guid Value)
{
    public static SettingId New() => new(Guid.CreateVersion7());

    public override string ToString() => Value.ToString();
}
