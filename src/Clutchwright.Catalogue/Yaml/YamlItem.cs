using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;

namespace Clutchwright.Catalogue.Yaml;

/// <summary>A value of a YAML file with its place, lines and columns from 1.</summary>
internal abstract class YamlItem(int line, int column)
{
    public int Line { get; } = line;

    public int Column { get; } = column;

    public abstract void WriteTo(Utf8JsonWriter writer);
}

/// <summary>A scalar. Plain ones take the types of YAML 1.2's core schema; quoted and block ones are text.</summary>
internal sealed partial class YamlScalar(string text, bool isPlain, int line, int column) : YamlItem(line, column)
{
    public string Text { get; } = text;

    public bool IsPlain { get; } = isPlain;

    public bool IsNull => IsPlain && Text is "" or "~" or "null" or "Null" or "NULL";

    public bool? Truth => !IsPlain
        ? null
        : Text switch
        {
            "true" or "True" or "TRUE" => true,
            "false" or "False" or "FALSE" => false,
            _ => null,
        };

    public double? Number => IsPlain
        && NumberPattern().IsMatch(Text)
        && double.TryParse(Text, NumberStyles.Float, CultureInfo.InvariantCulture, out var value)
        && double.IsFinite(value)
            ? value
            : null;

    public override void WriteTo(Utf8JsonWriter writer)
    {
        if (IsNull)
        {
            writer.WriteNullValue();
        }
        else if (Truth is { } truth)
        {
            writer.WriteBooleanValue(truth);
        }
        else if (Number is { } number)
        {
            writer.WriteNumberValue(number);
        }
        else
        {
            writer.WriteStringValue(Text);
        }
    }

    [GeneratedRegex(@"^[-+]?(\.[0-9]+|[0-9]+(\.[0-9]*)?)([eE][-+]?[0-9]+)?$", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture)]
    private static partial Regex NumberPattern();
}

/// <summary>A sequence.</summary>
internal sealed class YamlList(IReadOnlyList<YamlItem> items, int line, int column) : YamlItem(line, column)
{
    public IReadOnlyList<YamlItem> Items { get; } = items;

    public override void WriteTo(Utf8JsonWriter writer)
    {
        writer.WriteStartArray();
        foreach (var item in Items)
        {
            item.WriteTo(writer);
        }

        writer.WriteEndArray();
    }
}

/// <summary>A mapping; keys are unique.</summary>
internal sealed class YamlMap(IReadOnlyList<YamlEntry> entries, int line, int column) : YamlItem(line, column)
{
    public IReadOnlyList<YamlEntry> Entries { get; } = entries;

    public YamlItem? this[string key] => Find(key)?.Value;

    public YamlEntry? Find(string key)
    {
        foreach (var entry in Entries)
        {
            if (string.Equals(entry.Key.Text, key, StringComparison.Ordinal))
            {
                return entry;
            }
        }

        return null;
    }

    public override void WriteTo(Utf8JsonWriter writer)
    {
        writer.WriteStartObject();
        foreach (var entry in Entries)
        {
            writer.WritePropertyName(entry.Key.Text);
            entry.Value.WriteTo(writer);
        }

        writer.WriteEndObject();
    }
}

/// <summary>A key of a mapping and its value.</summary>
internal sealed record YamlEntry(YamlScalar Key, YamlItem Value);
