using System.Text.Json;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.History;

namespace Clutchwright.Stock.Settings;

/// <summary>Something the keeper has set for the whole book: how hatchlings are called, the size of a label. It changes only through the deeds.</summary>
public sealed class KeptSetting
{
    public const int MaxNameLength = 60;
    public const int MaxValueLength = 100_000;

    internal KeptSetting(SettingId id, string name, string value) => (SettingId, Name, Value) = (id, name, value);

    internal KeptSetting(SettingSnapshot snapshot)
    {
        SettingId = new(snapshot.Id);
        Take(snapshot);
    }

    private KeptSetting()
    {
    }

    public SettingId SettingId { get; private set; }

    /// <summary>In lower-case letters and hyphens; unique.</summary>
    public string Name { get; private set; } = "";

    /// <summary>JSON of any kind.</summary>
    public string Value { get; private set; } = "null";

    public Guid Version { get; private set; }

    public override string ToString() => $"setting {Name}";

    internal static SettingProblem? WhyNot(string name, string value) =>
        name.Length is 0 or > MaxNameLength || !name.All(c => c is (>= 'a' and <= 'z') or '-') ? new SettingProblem.NameInvalid(name)
        : value.Length > MaxValueLength || !TextRules.IsStorable(value) || !IsJson(value) ? new SettingProblem.ValueInvalid(name, MaxValueLength)
        : null;

    internal void Change(string value) => Value = value;

    internal void Take(SettingSnapshot snapshot) => (Name, Value) = (snapshot.Name, snapshot.Value.GetRawText());

    internal void NewVersion() => Version = Guid.CreateVersion7();

    private static bool IsJson(string value)
    {
        try
        {
            using var _ = JsonDocument.Parse(value);
            return true;
        }
        catch (JsonException)
        {
            return false;
        }
    }
}
