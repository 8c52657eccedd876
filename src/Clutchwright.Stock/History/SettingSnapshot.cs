using System.Text.Json;
using Clutchwright.Stock.Settings;
using Microsoft.EntityFrameworkCore.ChangeTracking;

namespace Clutchwright.Stock.History;

/// <summary>A setting as the history keeps it. A new field must have a default, so that old history can still be read.</summary>
internal sealed record SettingSnapshot(Guid Id, string Name, JsonElement Value)
{
    public static SettingSnapshot Of(KeptSetting setting) => new(setting.SettingId.Value, setting.Name, Snapshots.Element(setting.Value));

    /// <summary>The setting as it was loaded.</summary>
    public static SettingSnapshot Original(EntityEntry<KeptSetting> entry) => new(
        entry.Entity.SettingId.Value, entry.Property(s => s.Name).OriginalValue, Snapshots.Element(entry.Property(s => s.Value).OriginalValue));
}
